using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Stands.Sections;

namespace Dripwright.Engine.Stands.Checks;

/// <summary>Tries what would cure the stands that do not hold.</summary>
/// <remarks>
/// Each trial changes the rig as the grower would, lays it out and computes the stand again, so that it costs as much as the
/// stand itself and what it promises is what the changed rig's plan says. Method page: docs/methods/stand-checks.md
/// </remarks>
public static class StandTrials
{
    /// <summary>The stands with what was tried for those that do not hold.</summary>
    /// <param name="rig">The rig.</param>
    /// <param name="layout">Its layout.</param>
    /// <param name="stands">Its stands, computed with what the rig says of them.</param>
    /// <param name="stop">Asks to stop; heard between trials and within them.</param>
    /// <exception cref="OperationCanceledException">A stop was asked for.</exception>
    public static StandPlan Of(Rig rig, RigLayout layout, StandPlan stands, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(rig);
        ArgumentNullException.ThrowIfNull(layout);
        ArgumentNullException.ThrowIfNull(stands);
        return stands with
        {
            Rows =
            [
                .. stands.Rows.Select(stand =>
                    stand.Holds ? stand : stand with { Trials = [.. Tried(rig, layout, stand, stop)] }
                ),
            ],
        };
    }

    private static List<StandTrial> Tried(Rig rig, RigLayout layout, RowStand stand, CancellationToken stop)
    {
        List<StandTrial> trials = [];
        if (Stiffer(layout.Parts.Catalogue, layout.Stand.Tube, stand) is { } tube)
        {
            Try(
                CureKind.ThickerTube,
                Phrase.Of("stand.trial.tube", tube.Name),
                [RigCure.Text("stand.tube", tube.Key), .. NewTube(rig)]
            );
        }

        var frame =
            rig.Stand.ExtraFrames < RigCure.Field("stand.extraFrames").Whole!.Max
                ? RigCure.Whole("stand.extraFrames", rig.Stand.ExtraFrames + 1)
                : null;
        var brace = rig.Stand.Bracing == Bracing.Both ? null : RigCure.Text("stand.bracing", "both");
        if (frame is not null)
        {
            Try(CureKind.ExtraFrame, Phrase.Of("stand.trial.frame"), [frame]);
        }

        if (brace is not null)
        {
            Try(CureKind.Brace, Phrase.Of("stand.trial.brace"), [brace]);
        }

        if (frame is not null && brace is not null && !trials.Any(t => t.Enough))
        {
            Try(CureKind.FrameAndBrace, Phrase.Of("stand.trial.frame-and-brace"), [frame, brace]);
        }

        return trials;

        void Try(CureKind kind, Phrase what, IReadOnlyList<FieldChange> changes)
        {
            stop.ThrowIfCancellationRequested();
            var cure = Cure.Of(changes);
            if (RigCure.Applied(rig, cure, layout.Parts.Catalogue).Resolved is not { } changed)
            {
                return;
            }

            var laid = RigLayout.Of(changed);
            var then = StandPlanner
                .Of(laid, StandOptions.Of(changed.Rig) with { Stop = stop })
                .Rows.FirstOrDefault(r => r.Frame.Row.SpecIndex == stand.Frame.Row.SpecIndex);
            if (then is not null)
            {
                trials.Add(
                    new StandTrial(kind, what, cure, then.Utilisation, then.Buckling, then.LowestSlope, then.Holds)
                );
            }
        }
    }

    // The next stiffer tube of the same shape.
    private static TubeSize? Stiffer(PartsCatalogue catalogue, TubeSize present, RowStand stand) =>
        catalogue
            .Tubes.Values.Where(t =>
                t.Shape == present.Shape
                && TubeSection.Of(t).Properties.ModulusY > 1.02 * stand.Frame.Tube.Properties.ModulusY
            )
            .OrderBy(t => TubeSection.Of(t).Properties.ModulusY)
            .ThenBy(t => t.Key, StringComparer.Ordinal)
            .FirstOrDefault();

    // A new tube has its whole wall, whatever the condition of the old one.
    private static IEnumerable<FieldChange> NewTube(Rig rig) =>
        rig.Stand.WallLeft < 1 ? [RigCure.Text("stand.wallLeft", "100 %")] : [];
}
