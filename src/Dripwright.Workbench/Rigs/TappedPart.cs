using Dripwright.Engine;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Scenes;
using Dripwright.Sheets.Screen;

namespace Dripwright.Workbench.Rigs;

/// <summary>What was tapped in the drawing.</summary>
internal static class TappedPart
{
    /// <summary>The part of a name; null where the plan has none of it.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="name">Its name in the drawing.</param>
    public static ScreenPart? Of(Plan plan, string name) =>
        ScreenView.Parts(plan).FirstOrDefault(known => known.Part == name) ?? InTheRound(plan, name);

    /// <summary>Path of the field that decides a part; null for a pot, which has a panel of its own.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="part">The part.</param>
    public static string? Field(Plan plan, ScreenPart part) =>
        part.Kind switch
        {
            "pump" => "pump.model",
            "reservoir" => "reservoir.tank",
            "run" => plan.Layout.Runs.FirstOrDefault(run => run.Label == part.Run)?.Service switch
            {
                RunService.Feed => "feed.line",
                RunService.Drain or RunService.Return => "drain.pipe",
                RunService.Bypass => "feed.bypass",
                _ => "feed.header.pipe",
            },
            "tube" => "stand.tube",
            "joint" => "printing",
            "wire" => "cropWire.wire",
            _ => null,
        };

    // What no flat drawing names: tubes and joints of the stand, the wire.
    private static ScreenPart? InTheRound(Plan plan, string name)
    {
        var scene = RigScene.Of(plan);
        var labels = SceneLabels.Of(plan, scene);
        return scene
            .Things.Select((thing, i) => (thing, label: labels[i]))
            .Where(known => known.thing.Name == name)
            .Select(known => new ScreenPart(
                name,
                known.thing.Kind.ToString().ToLowerInvariant(),
                known.thing.Row,
                -1,
                0,
                known.thing.Code,
                known.label
            ))
            .FirstOrDefault();
    }
}
