using System.Globalization;

namespace Dripwright.Engine.Tests.Curing;

public sealed class CureCountTests
{
    // Each of these rigs is planned some hundred times; how many is said by whoever has the time.
    private static readonly int s_all = int.Parse(
        Environment.GetEnvironmentVariable("DRIPWRIGHT_CURE_RIGS") ?? "1000",
        CultureInfo.InvariantCulture
    );

    [Fact]
    public void Most_stops_and_mends_of_random_rigs_have_a_cure_that_is_proven_and_serves_when_all_is_planned_anew()
    {
        // A share of a few rigs says little, and each takes half a minute; that what is offered cures is held by the laws of cures.
        Assert.SkipUnless(Trials.AreLong, "Counted by ./test --long.");
        var counts = new CureCounts();
        var many = Trials.Times(3, s_all);
        foreach (var rig in CureCounts.Rigs(many))
        {
            counts.Add(rig);
            if (Trials.AreLong)
            {
                CuresPage.Write(many, counts);
            }
        }

        var (found, cured) = counts.Sum;
        Assert.True(cured >= 0.8 * found, $"{cured} of {found}\n{counts.Table()}");
    }
}
