using Dripwright.Engine;
using Dripwright.Engine.Layout;
using Dripwright.Sheets.Drawing;

namespace Dripwright.Sheets.Views;

/// <summary>Steps that set up the stands, once for each kind of row.</summary>
internal sealed class StandSteps(Plan plan)
{
    private readonly Wording words = new(plan.Rig.Units);

    /// <summary>Writes the steps.</summary>
    public void Write(Flow flow)
    {
        flow.Heading("Stand");
        foreach (var alike in plan.Layout.Rows.GroupBy(r => r.SpecIndex))
        {
            Write(flow, [.. alike]);
        }
    }

    /// <summary>"row 1", or "each of rows 1 to 3".</summary>
    public static string Named(IReadOnlyList<RowLayout> alike) =>
        alike.Count == 1
            ? $"row {Wording.Count(alike[0].Number)}"
            : $"each of rows {Wording.Count(alike[0].Number)} to {Wording.Count(alike[^1].Number)}";

    private void Write(Flow flow, IReadOnlyList<RowLayout> alike)
    {
        var row = alike[0];
        var stand = plan.Layout.Stand;
        var members = stand.Members.Where(m => m.Row == row.Number).ToList();
        if (members.Count == 0)
        {
            flow.Step($"The pots of {Named(alike)} stand on the floor: mark the line and level the ground along it.");
            return;
        }

        var table = new Table(new("Tube"), new("Use"), new("Number", Align.Right), new("Cut length", Align.Decimal));
        foreach (var same in members.GroupBy(m => m.Label))
        {
            var first = same.First();
            table.Row(
                first.Label,
                first.Role.ToString().ToLowerInvariant(),
                Wording.Count(same.Count()),
                words.MarkWithUnit(first.Length)
            );
        }

        flow.Paragraph(
            $"For {Named(alike)}{(alike.Count > 1 ? ", with the row's own number in the labels" : "")}:",
            leads: true
        );
        flow.Table(table);
        flow.Figure(StandFigure.Height, box => StandFigure.Draw(box, stand, row));
        var frames = row.Modules + 1;
        var joints = stand
            .Joints.Where(j => j.Row == row.Number)
            .GroupBy(j => j.Part)
            .OrderBy(g => g.Key, StringComparer.Ordinal);
        flow.Step(
            $"Lay out the printed joints: {string.Join(", ", joints.Select(g => $"{Wording.Count(g.Count())} × {NameOf(g.Key)}"))}."
        );
        flow.Step(
            $"Build {Wording.Counted(frames, "frame")} flat on the floor: legs and cross-members into their joints, pushed home to the stop ({words.MarkWithUnit(plan.Rig.Stand.SocketDepth)} deep).",
            "Wear gloves; tap tubes home with a mallet, not a hammer."
        );
        flow.Step(
            $"Stand two frames up, {words.MarkWithUnit(row.Spec.ModuleLength)} apart from centre to centre, and push the rails in. One person holds, one pushes.{(row.Modules > 1 ? $" Add frame by frame until {Wording.Counted(row.Modules, "module")} stand." : "")}"
        );
        if (members.Any(m => m.Role == MemberRole.Tie))
        {
            flow.Step("Clip the low ties to the legs, and the long ties along the back.");
        }

        flow.Step(
            $"Level the rails along and across, with shims under the feet: the rails must lie level, the slope is the drain's own. Check {words.MarkWithUnit(row.Spec.StandHeight)} from the floor to the top of the rails.",
            Cautions.Climb
        );
    }

    private string NameOf(string part) =>
        plan.Layout.Parts.Catalogue.Sundries.TryGetValue(part, out var sundry) ? sundry.Name : part;
}
