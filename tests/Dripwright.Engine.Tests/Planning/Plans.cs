using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Tests.Planning;

/// <summary>Plans from the text of a rig file, as a grower would write it.</summary>
internal static class Plans
{
    private static readonly PlanOptions _noDraws = new() { Draws = 0, Cures = false };

    /// <summary>Plans a rig; fails the test with the reader's faults when the text has any.</summary>
    public static Plan From(string json, int draws = 0)
    {
        RigReading reading = RigReader.Read(json, "test.rig.json", PartsCatalogue.Default);
        Assert.True(reading.Rig is not null, string.Join("\n", reading.Faults));
        return Of(reading.Rig, draws);
    }

    public static Plan Of(Rig rig, int draws = 0) =>
        Planner.Of(rig, [], PartsCatalogue.Default, draws == 0 ? _noDraws : new PlanOptions { Draws = draws });

    public static Finding? Said(this Plan plan, string rule) => plan.Findings.FirstOrDefault(f => f.Rule == rule);
}
