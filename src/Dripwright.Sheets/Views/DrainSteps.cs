using Dripwright.Engine;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Printed;
using Dripwright.Sheets.Drawing;

namespace Dripwright.Sheets.Views;

/// <summary>Steps for drains and pots: drill, join, hang to slope, set the pots.</summary>
internal sealed class DrainSteps(Plan plan)
{
    private readonly Wording words = new(plan.Rig.Units);

    /// <summary>Writes the steps.</summary>
    public void Write(Flow flow)
    {
        var rows = plan.Layout.Rows;
        var pipe = plan.Layout.Parts.Drain;
        var holes = rows.Sum(r => r.Drain.Holes.Count);
        flow.Heading("Drain");
        flow.Step(
            $"Draw one straight line along the top of each drain piece ({pipe.Name}): lay the pipe in an angle profile and run the pencil along it."
        );
        if (PrintedSteps.Of(plan, PrintedKind.DrillGuide) is { Length: > 0 } guides)
        {
            flow.Step(
                $"The drill guide ({guides}) sets the distance from hole to hole: drill the first pilot, pin the guide in it, drill the next through its other end. Check every fifth hole against the hole map, for small errors add up.",
                "Clamp the pipe; no hand beside the guide while the drill turns. Goggles on."
            );
        }

        flow.Step(
            $"Mark and drill {Wording.Counted(holes, "hole")} of {words.MarkWithUnit(plan.Layout.Parts.Outlet.PipeHole)} on that line by the hole map. Drill a small pilot hole first. Deburr every hole inside and out: a sharp edge cuts the seal.",
            Cautions.HoleSaw
        );
        foreach (var alike in rows.GroupBy(r => r.SpecIndex))
        {
            Hang(flow, [.. alike]);
        }

        Join(flow, pipe);
        Pots(flow);
    }

    private static string Labels(IEnumerable<string> labels)
    {
        var all = labels.ToList();
        // A list that nobody reads through is left to the drawing.
        return all.Count <= 10
            ? string.Join(", ", all)
            : $"{string.Join(", ", all.Take(8))} and so on, as on the plumbing sheets";
    }

    private void Join(Flow flow, PipeSize pipe)
    {
        var runs = plan.Layout.Runs.Where(r => r.Service is RunService.Drain or RunService.Return).ToList();
        var glued = pipe.Family is PipeFamily.PvcSchedule40 or PipeFamily.PvcMetric;
        flow.Step(
            $"Dry-fit the drain: pieces {Labels(runs.SelectMany(r => r.Pieces).Select(p => p.Label))}; fittings {Labels(runs.SelectMany(r => r.Fittings).Select(f => f.Label))}. All holes face up. Mark each joint across pipe and fitting with a pencil."
        );
        flow.Step(
            glued
                ? "Take the joints apart, prime, cement, push home on the pencil marks and hold for half a minute. Let it cure as the tin says before water comes."
                : "Push each pipe fully onto its barb and tighten a clamp over it.",
            glued ? Cautions.Cement : null
        );
        var vents = plan.Layout.Returns.Where(RunWays.IsVent).Select(r => r.Label).ToList();
        if (vents.Count > 0)
        {
            flow.Step(
                vents.Count == 1
                    ? $"Set the vent {vents[0]} upright at the drain's high end. Leave it open at the top."
                    : $"Set the vents {Labels(vents)} upright at the drains' high ends. Leave them open at the top."
            );
        }
    }

    private void Hang(Flow flow, IReadOnlyList<RowLayout> alike)
    {
        var row = alike[0];
        var held = HeldPlaces.Of(row);
        if (held.Count == 0)
        {
            return;
        }

        var slope = plan.Rig.Drain.Slope;
        flow.Step(
            $"{Holding(alike)} {(slope > 0
                ? $"so that the drain falls {words.Slope(slope)}, {words.MarkWithUnit(HeldPlaces.Fall(row))} in all, from {HeldPlaces.HighEnd(plan)}. Check with a level and a block under its low end."
                : "at the height below. This drain lies level: water will stand in it.")}"
        );
        flow.Figure(SlopeFigure.Height, box => SlopeFigure.Draw(box, plan, row));
        var hung = row.Hangers.Count > 0;
        var table = new Table([
            new("Frame", Align.Right),
            .. hung ? [new Column("Hanger", Align.Right)] : Array.Empty<Column>(),
            new("From left end", Align.Decimal),
            new("Rail top down to pipe top", Align.Decimal),
            new("Floor up to pipe bottom", Align.Decimal),
            new("Done", Align.Tick),
        ]);
        for (var i = 0; i < held.Count; i++)
        {
            var place = held[i];
            table.Row([
                Wording.Count(place.Frame),
                .. hung ? [Number(row.Hangers[i])] : Array.Empty<string>(),
                words.MarkWithUnit(place.Station),
                words.MarkWithUnit(place.Drop),
                words.MarkWithUnit(place.Height),
            ]);
        }

        flow.Table(table);
        if (row.Hangers.Any(h => h.Mount == HangerMount.Tie))
        {
            flow.Step(
                "Where the table says tied, the pipe lies too near under its tube for a hanger: tie it straight on, two ties crossed, the gap packed to its height with slices of pipe."
            );
        }

        var strapped = row.Hangers.Where(IsStrapped).Select(Number).Distinct().ToList();
        if (strapped.Count > 0)
        {
            flow.Step(
                $"{string.Join(", ", strapped)} cannot be printed as the rig asks: hang the pipe there by perforated strap. Lay the strap around pipe and tube, pull it tight with its screw, and pad the gap with slices of pipe so that the pipe keeps its height.{(row.Hangers.Any(h => h.Mount == HangerMount.Leg) ? " When every height is right, drive one screw through each strap into its leg." : "")}",
                "Cut strap is sharp: gloves on, and file its ends."
            );
        }

        if (IsStrappedAll(row))
        {
            return;
        }

        if (row.Hangers.Any(h => h.Mount == HangerMount.Leg))
        {
            flow.Step(
                $"Snap the pipe into the rings.{(plan.Layout.Stand.HasClampAtHanger(row.Number) ? " The legs are too short for clamp and hanger: where they meet, move the clamp aside by its width." : "")} When every height is right, drive one screw through each hanger's foot into its leg.",
                "A full drain that slides down its legs pours over the floor: cable ties alone slacken in time."
            );
        }
        else if (row.Hangers.Any(h => h.Mount != HangerMount.Tie))
        {
            flow.Step(
                "Snap the pipe into the rings from the front. Cut off what is left of the ties.",
                "The ties carry the pipe: use none twice, and look at them once a year."
            );
        }
    }

    /// <summary>What holds the drain, and how: a sentence that the heights go on with.</summary>
    private string Holding(IReadOnlyList<RowLayout> alike)
    {
        var row = alike[0];
        if (row.Hangers.Count == 0)
        {
            return $"Hold the drain of {StandSteps.Named(alike)} at each module joint, with blocks or brackets of your own, at the heights below,";
        }

        var numbers = string.Join(", ", row.Hangers.Where(h => h.Mount != HangerMount.Tie).Select(Number).Distinct());
        if (IsStrappedAll(row))
        {
            return $"Hang the drain of {StandSteps.Named(alike)} by perforated strap at each frame, at the heights below,";
        }

        return row.Hangers.FirstOrDefault(h => h.Mount != HangerMount.Tie)?.Mount switch
        {
            HangerMount.Leg =>
                $"Tie a drain hanger ({numbers}) to each leg on the drain's side of {StandSteps.Named(alike)}, its ring to the outside and open upwards, two cable ties each, at the heights below,",
            HangerMount.Cross =>
                $"Tie the drain hangers ({numbers}) under the cross-members of {StandSteps.Named(alike)}, each at its own frame since they differ in length, two cable ties each, the rings open to the front,",
            null =>
                $"Tie the drain of {StandSteps.Named(alike)} straight under its tubes with two ties crossed at each frame, the gap packed with slices of pipe, at the heights below,",
            _ =>
                $"Tie the drain hangers ({numbers}) under the middle rail of {StandSteps.Named(alike)}, close beside the joints, each at its own frame since they differ in length, two cable ties each, the rings open to the front,",
        };
    }

    private bool IsStrapped(DrainHanger hanger) =>
        hanger.Mount != HangerMount.Tie && plan.Printed.Refused.Any(refused => refused.Number == Number(hanger));

    private bool IsStrappedAll(RowLayout row) =>
        row.Hangers.Any(IsStrapped) && row.Hangers.All(h => h.Mount == HangerMount.Tie || IsStrapped(h));

    private string Number(DrainHanger hanger) =>
        hanger.Mount == HangerMount.Tie
            ? "tied"
            : plan.Printed.Places.FirstOrDefault(place =>
                place.Hanger is not null && place.Joints.Any(j => j.Row == hanger.Row && j.At == hanger.At)
            )?.Number
                ?? "";

    private void Pots(Flow flow)
    {
        var parts = plan.Layout.Parts;
        flow.Heading("Pots");
        foreach (var hole in plan.Parts.PotHoles)
        {
            var name = parts.Catalogue.Pots.TryGetValue(hole.Pot, out var pot) ? pot.Name : hole.Pot;
            flow.Step(
                $"Drill one hole of {words.MarkWithUnit(hole.Diameter)} in the wall of {Wording.Counted(hole.Count, "pot")} ({name}), its centre {words.MarkWithUnit(hole.Height)} over the base. Deburr, then fit seal and {parts.Outlet.Name}.",
                Cautions.HoleSaw
            );
        }

        foreach (var alike in plan.Layout.Rows.GroupBy(r => r.SpecIndex))
        {
            List<RowLayout> rows = [.. alike];
            var row = rows[0];
            var spacing = row.Pots.Count > 1 ? $", then every {words.MarkWithUnit(row.Spec.Spacing)}" : "";
            flow.Step(
                $"Set the pots of {StandSteps.Named(rows)} on the rails: pot 1 with its middle {words.MarkWithUnit(row.Pots[0].Station)} from the left end{spacing}. Each elbow points down into its hole in {row.Drain.Label}{(rows.Count > 1 ? " (or the row's own drain)" : "")}. Fill with medium when everything holds water.",
                row.Number == 1 ? Cautions.Lift : null
            );
        }
    }
}
