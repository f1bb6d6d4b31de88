using Dripwright.Engine;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Stands.Checks;
using Dripwright.Engine.Units;
using Dripwright.Sheets.Drawing;

namespace Dripwright.Sheets.Views;

/// <summary>Steps that set up the stands, once for each kind of row.</summary>
internal sealed class StandSteps(Plan plan)
{
    /// <summary>[-] Safety against tipping under which the steps say to tie the stand before anything hangs on it.</summary>
    private const double TieBelow = 1.5;

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

        flow.Paragraph(
            $"For {Named(alike)}{(alike.Count > 1 ? ", with the row's own number in the labels" : "")}. The figure shows {(row.Modules > 1 ? "the first module" : "the module")} drawn apart; tubes carry the labels of the cut diagrams, joints the numbers that stand on them{(members.Any(m => m.Role == MemberRole.Brace) ? $"; circles are the bought clamps of the braces, {StandLayout.ClampNumber}" : "")}:",
            leads: true
        );
        var places = plan.Printed.Places;
        var height = ExplodedFigure.Height(flow.Width, stand, places, row);
        flow.Figure(height, box => ExplodedFigure.Draw(box, stand, places, row));
        flow.Table(Tubes(members));
        flow.Step($"Lay out joints, hangers and clamps: {Joints(row)}.");
        Frames(flow, row);
        if (members.Any(m => m.Role == MemberRole.Tie))
        {
            flow.Step(
                "Tie the low ties to the legs, and the long ties along the back: a clip between the two tubes, one cable tie around each."
            );
        }

        Braces(flow, row, members);
        flow.Step(
            $"Level the rails along and across, with shims under the feet: the rails must lie level, the slope is the drain's own. Check {words.MarkWithUnit(row.Spec.StandHeight)} from the floor to the top of the rails.",
            $"{Cautions.Climb}{Floor(row)}"
        );
        Tie(flow, row);
        flow.Step(
            "When it is taken down again, go backwards: pots off, pipes off, clamps and braces off, then rail by rail; lay each frame down before you pull it apart.",
            "Once its braces are off, the stand falls sideways at a push. Two people, and nothing left on the rails."
        );
    }

    private Table Tubes(IEnumerable<StandMember> members)
    {
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

        return table;
    }

    /// <summary>"4 × J1 (three-way joint), 6 × U1 (foot)", and the clamps that are bought.</summary>
    private string Joints(RowLayout row)
    {
        List<string> all =
        [
            .. plan
                .Printed.Places.Select(place => (place, Count: place.Joints.Count(j => j.Row == row.Number)))
                .Where(at => at.Count > 0)
                .Select(at => $"{Wording.Count(at.Count)} × {at.place.Number} ({PrintedNames.Of(at.place.Kind)})"),
        ];
        if (Clamps(row) is > 0 and var clamps)
        {
            all.Add($"{Wording.Count(clamps)} × {StandLayout.ClampNumber} (swivel clamp, bought)");
        }

        return string.Join(", ", all);
    }

    private int Clamps(RowLayout row) =>
        plan.Layout.Stand.Joints.Count(j => j.Row == row.Number && j.Part == StandLayout.Clamp);

    private void Frames(Flow flow, RowLayout row)
    {
        var bay = row.Frames[1] - row.Frames[0];
        flow.Step(
            $"Build {Wording.Counted(row.Frames.Count, "frame")} flat on the floor: legs and cross-members into their joints, pushed home to the stop ({words.MarkWithUnit(plan.Rig.Stand.SocketDepth)} deep), and a foot on each leg.",
            "Wear gloves; tap tubes home with a mallet, not a hammer. A printed joint that cracks goes into the bin, not into the stand."
        );
        flow.Step(
            $"Stand two frames up, {words.MarkWithUnit(bay)} apart from centre to centre, and push the rails in. One person holds, one pushes.{(row.Frames.Count > 2 ? $" Add frame by frame until all {Wording.Count(row.Frames.Count)} stand." : "")}",
            "It does not hold itself yet: one person keeps a hand on it until the braces are clamped."
        );
    }

    private void Braces(Flow flow, RowLayout row, IReadOnlyList<StandMember> members)
    {
        var braces = members.Where(m => m.Role == MemberRole.Brace).ToList();
        if (braces.Count > 0)
        {
            var labels = string.Join("; ", braces.GroupBy(b => b.Label).Select(same => Brace(row, [.. same])));
            flow.Step(
                $"Measure both diagonals of each bay and push until they are alike. Then clamp the braces beside the legs with {Wording.Counted(Clamps(row), "swivel clamp")} ({StandLayout.ClampNumber}), at these heights from the floor to the clamp's middle: {labels}. Tighten all clamps, then push at the top from each side: nothing may give.",
                "Without its braces the stand folds up sideways under wet pots. Set nothing on it, and hang nothing on it, before every brace is clamped."
            );
        }

        flow.Step(
            "Put a screw through each socket into its tube, from the side where no hand goes: friction alone does not hold a stand that is pulled or carried.",
            "Goggles on; a drill that catches turns the joint."
        );
    }

    /// <summary>"7 × S1-brace, 85 mm at the front and 603 mm at the back".</summary>
    private string Brace(RowLayout row, IReadOnlyList<StandMember> same)
    {
        var (low, high) = (same[0].From, same[0].To);
        var (one, other) =
            low.Y < high.Y ? ("front", "back")
            : low.Y > high.Y ? ("back", "front")
            : ("left", "right");
        return $"{Wording.Count(same.Count)} × {same[0].Label}, {words.MarkWithUnit(low.Z - row.Floor)} at the {one} and {words.MarkWithUnit(high.Z - row.Floor)} at the {other}";
    }

    /// <summary>What the row puts on its floor, where that is more than a living room's floor is commonly built for.</summary>
    private string Floor(RowLayout row) =>
        Of(row) is { Floor: { Utilisation: > 1 } floor }
            ? $" With all pots soaked this row weighs {words.Mass(floor.Mass)}: on an upper floor, a deck or a balcony ask the owner or an engineer before you fill it; the local code decides."
            : "";

    private void Tie(Flow flow, RowLayout row)
    {
        if (Of(row)?.TipFactor is not { } tip || (tip >= TieBelow && !plan.Rig.Stand.Tied))
        {
            return;
        }

        flow.Step(
            plan.Rig.Stand.Tied
                ? "Tie the stand to the wall, the post or the row behind at both ends, as the plan counts on it."
                : "Tie the stand to a wall, a post or the row behind at both ends before any vine hangs on it.",
            $"Leaned on or pulled by its vines it tips at {QuantityWords.Number(tip, "0.#")} times that push, untied. Never pull a full tank from under it by force, and keep children off. Local codes come first; where the public passes, a professional looks at it."
        );
    }

    private RowStand? Of(RowLayout row) =>
        plan.Stand?.Rows.FirstOrDefault(stand => stand.Frame.Row.SpecIndex == row.SpecIndex);
}
