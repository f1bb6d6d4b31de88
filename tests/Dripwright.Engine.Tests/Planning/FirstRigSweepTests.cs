using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Tests.Planning;

/// <summary>The rig that the program makes by itself has nothing to stop or mend, whatever the count of plants.</summary>
public sealed class FirstRigSweepTests
{
    private static readonly PlanOptions s_waterOnly = new() { Draws = 0, Strength = false };

    [Theory]
    [InlineData(UnitSystem.Us, false)]
    [InlineData(UnitSystem.Metric, false)]
    [InlineData(UnitSystem.Us, true)]
    [InlineData(UnitSystem.Metric, true)]
    public void From_one_pot_to_sixty_the_first_rig_has_nothing_to_stop_or_mend(UnitSystem units, bool gravity)
    {
        List<string> said = [];
        for (var pots = 1; pots <= 60; pots++)
        {
            var first = RigStarter.Rig(
                new StarterAnswers(Units: units, Pots: pots, Gravity: gravity),
                PartsCatalogue.Default
            );
            var reading = RigReader.Read(RigWriter.Write(first), "first", PartsCatalogue.Default);
            var plan = Planner.Of(reading.Resolved!, reading.Assumed, s_waterOnly);
            Assert.Equal(pots, plan.Layout.Rows.Sum(r => r.Pots.Count));
            string[] wrong =
            [
                .. plan.Findings.Where(f => f.Level != FindingLevel.Note).Select(f => $"{f.Rule} ({f.Level})"),
            ];
            if (wrong.Length > 0)
            {
                said.Add($"{pots}: {string.Join(", ", wrong)}");
            }
        }

        Assert.True(said.Count == 0, string.Join(Environment.NewLine, said));
    }
}
