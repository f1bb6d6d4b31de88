using Dripwright.Engine;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Scenes;
using Dripwright.Engine.Water;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Views;

namespace Dripwright.Sheets.Screen;

/// <summary>Names what there is to see in a plan.</summary>
internal static class ScreenParts
{
    /// <summary>Every pot, run, the reservoir and the pump.</summary>
    public static IReadOnlyList<ScreenPart> Of(Plan plan)
    {
        var words = new Wording(plan.Rig.Units);
        var flows = plan.Feed.Pots.ToDictionary(p => (p.Row, p.Pot));
        var runs = RunFlows.Of(plan);
        return
        [
            .. plan.Layout.Rows.SelectMany(row => row.Pots.Select(pot => PotPart(row, pot, flows, words))),
            .. plan.Layout.Runs.Select(run => RunPart(plan, run, runs, words)),
            Reservoir(plan, words),
            Pump(plan, words),
        ];
    }

    private static ScreenPart PotPart(
        RowLayout row,
        PotPlace pot,
        Dictionary<(int Row, int Pot), PotFlow> flows,
        Wording words
    )
    {
        var water = flows.GetValueOrDefault((row.Number, pot.Number));
        List<string> says = [Words.Of("screen.part.row", row.Number), Words.Of("screen.part.pot", pot.Number)];
        says.Add(
            !pot.Planted ? Words.Of("screen.part.empty")
            : pot.Crop.Length > 0 ? Words.Of("screen.part.crop", pot.Crop)
            : Words.Of("screen.part.planted")
        );
        if (pot.Plants > 1)
        {
            says.Add(Words.Count("screen.part.plants", pot.Plants));
        }

        if (pot.Planted && pot.ValveOpen < 1)
        {
            says.Add(Words.Of("screen.part.valve", words.Share(pot.ValveOpen)));
        }

        if (water is not null)
        {
            says.Add(water.Flow > 0 ? words.Flow(water.Flow) : Words.Of("screen.part.dry"));
        }

        return new(SceneNames.Pot(row.Number, pot.Number), "pot", row.Number, row.SpecIndex, pot.Number, "", Said(says))
        {
            Flow = water?.Flow,
            Pressure = water?.Pressure,
        };
    }

    private static ScreenPart RunPart(Plan plan, PipeRun run, IReadOnlyDictionary<string, double> flows, Wording words)
    {
        double? flow = flows.TryGetValue(run.Label, out var known) ? known : null;
        List<string> says = [RunPainter.TitleOf(run), run.Pipe.Name];
        if (flow is { } carried)
        {
            says.Add(words.Flow(carried));
        }

        var spec = run.Row > 0 ? plan.Layout.Rows[run.Row - 1].SpecIndex : -1;
        return new(SceneNames.Run(run.Label), "run", run.Row, spec, 0, run.Label, Said(says)) { Flow = flow };
    }

    private static ScreenPart Reservoir(Plan plan, Wording words) =>
        new(
            SceneNames.Reservoir,
            "reservoir",
            0,
            -1,
            0,
            "",
            Said([
                Words.Of("screen.part.reservoir"),
                Words.Of("screen.part.full", words.Volume(plan.Reservoir.FullVolume)),
            ])
        );

    private static ScreenPart Pump(Plan plan, Wording words)
    {
        List<string> says = [Words.Of(plan.Layout.Parts.Pump is null ? "screen.part.outlet" : "screen.part.pump")];
        if (plan.Feed.OperatingPoint is { } point)
        {
            says.Add(words.Flow(point.Flow));
        }

        return new(SceneNames.Pump, "pump", 0, -1, 0, "", Said(says)) { Flow = plan.Feed.OperatingPoint?.Flow };
    }

    // What is read out needs no ties between numbers and units.
    private static string Said(IEnumerable<string> says) =>
        string.Join(", ", says).Replace('\u00a0', ' ').Replace('\u202f', ' ');
}
