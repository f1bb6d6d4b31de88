using Dripwright.Engine;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Printed;
using Dripwright.Engine.Scenes;
using Dripwright.Engine.Units;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;

namespace Dripwright.Sheets.Screen;

/// <summary>What the things of a scene are called.</summary>
public static class SceneLabels
{
    /// <summary>The label of every thing of a scene, in its order.</summary>
    /// <param name="plan">The plan, in the units to show.</param>
    /// <param name="scene">Its scene.</param>
    public static IReadOnlyList<string> Of(Plan plan, RigScene scene)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(scene);
        var words = new Wording(plan.Rig.Units);
        var known = ScreenParts.Of(plan).ToDictionary(part => part.Part, part => part.Label);
        var kinds = PrintedJoints.Of(plan.Layout.Stand).ToDictionary(part => part.Number, part => part.Kind);
        var tubes = new Queue<StandMember>(plan.Layout.Stand.Members);
        return
        [
            .. scene.Things.Select(thing =>
                thing.Kind switch
                {
                    SceneKind.Tube => Tube(tubes.Dequeue(), thing, words),
                    SceneKind.Joint => Words.Of(
                        "scene.joint",
                        thing.Code,
                        kinds.TryGetValue(thing.Code, out var kind)
                            ? Words.Of($"printed.{kind}")
                            : Words.Of("scene.clamp")
                    ),
                    SceneKind.Wire => Used(Words.Of("scene.wire", thing.Code), thing.Utilisation),
                    SceneKind.Emitter => Words.Of(
                        "scene.emitter",
                        thing.Row,
                        thing.Pot,
                        thing.Flow is > 0 and var flow ? words.Flow(flow) : Words.Of("screen.part.dry")
                    ),
                    _ => known[Tapped(thing)],
                }
            ),
        ];
    }

    /// <summary>The part of the drawings that is told of when a thing is tapped: of an emitter or a plant its pot.</summary>
    /// <param name="thing">The thing.</param>
    public static string Tapped(SceneThing thing)
    {
        ArgumentNullException.ThrowIfNull(thing);
        return thing.Kind is SceneKind.Plants or SceneKind.Emitter ? SceneNames.Pot(thing.Row, thing.Pot) : thing.Name;
    }

    private static string Tube(StandMember tube, SceneThing thing, Wording words) =>
        Used(
            Words.Of("scene.tube", tube.Label, Words.Of($"stands.role.{tube.Role}"), words.Length(tube.Length)),
            thing.Utilisation
        );

    private static string Used(string name, double? used) =>
        used is { } share ? Words.Of("scene.used", name, QuantityWords.Percent(share)) : name;
}
