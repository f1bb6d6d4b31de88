using Dripwright.Engine;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Layout;
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
        var saddles = Saddles.Of(row);
        if (saddles.Count == 0)
        {
            return;
        }

        var slope = plan.Rig.Drain.Slope;
        flow.Step(
            slope > 0
                ? $"Set a saddle at each frame of {StandSteps.Named(alike)} at the heights below, so that the drain falls {words.Slope(slope)}, {words.MarkWithUnit(Saddles.Fall(row))} in all, from {Saddles.HighEnd(plan)}. Check with a level and a block under its low end."
                : $"Set a saddle at each frame of {StandSteps.Named(alike)} at the height below. This drain lies level: water will stand in it."
        );
        flow.Figure(SlopeFigure.Height, box => SlopeFigure.Draw(box, plan, row));
        var table = new Table(
            new("Frame", Align.Right),
            new("From left end", Align.Decimal),
            new("Rail top down to pipe top", Align.Decimal),
            new("Floor up to pipe bottom", Align.Decimal),
            new("Done", Align.Tick)
        );
        foreach (var saddle in saddles)
        {
            table.Row(
                Wording.Count(saddle.Frame),
                words.MarkWithUnit(saddle.Station),
                words.MarkWithUnit(saddle.Drop),
                words.MarkWithUnit(saddle.Height)
            );
        }

        flow.Table(table);
    }

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
