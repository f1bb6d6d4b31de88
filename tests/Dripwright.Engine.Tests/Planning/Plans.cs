using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Rigs;
using Dripwright.Language;

namespace Dripwright.Engine.Tests.Planning;

/// <summary>Plans from the text of a rig file, as a grower would write it.</summary>
internal static class Plans
{
    private static readonly PlanOptions s_withStand = new() { Draws = 0 };
    private static readonly PlanOptions s_waterOnly = new() { Draws = 0, Strength = false };

    /// <summary>Plans a rig; fails the test with the reader's faults when the text has any.</summary>
    public static Plan From(string json, int draws = 0)
    {
        var reading = RigReader.Read(json, "test.rig.json", PartsCatalogue.Default);
        Assert.True(reading.Rig is not null, string.Join("\n", reading.Faults.Told()));
        var options = draws == 0 ? s_withStand : new PlanOptions { Draws = draws };
        return Planner.Of(reading.Rig, [], PartsCatalogue.Default, options);
    }

    /// <summary>Plans a rig without draws and without the strength of its stand, whose laws have tests of their own.</summary>
    public static Plan Of(Rig rig, PartsCatalogue? catalogue = null) =>
        Planner.Of(rig, [], catalogue ?? PartsCatalogue.Default, s_waterOnly);

    public static Finding? Said(this Plan plan, string rule) => plan.Findings.FirstOrDefault(f => f.Rule == rule);
}
