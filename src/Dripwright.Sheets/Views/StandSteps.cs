using Dripwright.Engine;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Stands.Checks;
using Dripwright.Engine.Units;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;

namespace Dripwright.Sheets.Views;

/// <summary>Steps that set up the stands, once for each kind of row.</summary>
internal sealed class StandSteps(Plan plan)
{
    /// <summary>[-] Safety against tipping under which the steps say to tie the stand before anything hangs on it.</summary>
    private const double TieBelow = 1.5;

    private readonly Wording _words = new(plan.Rig.Units);

    /// <summary>Writes the steps.</summary>
    public void Write(Flow flow)
    {
        flow.Heading(Words.Of("sheet.stand.title"));
        foreach (var alike in plan.Layout.Rows.GroupBy(r => r.SpecIndex))
        {
            Write(flow, [.. alike]);
        }
    }

    /// <summary>"row 1", or "each of rows 1 to 3".</summary>
    public static string Named(IReadOnlyList<RowLayout> alike) =>
        alike.Count == 1
            ? Words.Of("sheet.rows.one", Wording.Count(alike[0].Number))
            : Words.Of("sheet.rows.each", Wording.Count(alike[0].Number), Wording.Count(alike[^1].Number));

    private void Write(Flow flow, IReadOnlyList<RowLayout> alike)
    {
        var row = alike[0];
        var stand = plan.Layout.Stand;
        var members = stand.Members.Where(m => m.Row == row.Number).ToList();
        if (members.Count == 0)
        {
            flow.Step(Words.Of("sheet.stand.floor", Named(alike)));
            return;
        }

        flow.Paragraph(
            Words.Of(
                "sheet.stand.lead",
                Named(alike),
                alike.Count > 1 ? Words.Of("sheet.stand.lead.labels") : "",
                row.Modules > 1 ? Words.Of("sheet.stand.lead.first") : Words.Of("sheet.stand.lead.only"),
                members.Any(m => m.Role == MemberRole.Brace)
                    ? Words.Of("sheet.stand.lead.clamps", StandLayout.ClampNumber)
                    : ""
            ),
            leads: true
        );
        var places = plan.Printed.Places;
        var height = ExplodedFigure.Height(flow.Width, stand, places, row);
        flow.Figure(height, box => ExplodedFigure.Draw(box, stand, places, row));
        flow.Table(Tubes(members));
        flow.Step(Words.Of("sheet.stand.joints", Joints(row)));
        Frames(flow, row);
        if (members.Any(m => m.Role == MemberRole.Tie))
        {
            flow.Step(Words.Of("sheet.stand.ties"));
        }

        Braces(flow, row, members);
        flow.Step(
            Words.Of("sheet.stand.level", _words.MarkWithUnit(row.Spec.StandHeight)),
            Wording.Sentences(Cautions.Climb, Cautions.Bond, Floor(row))
        );
        Tie(flow, row);
        flow.Step(Words.Of("sheet.stand.down"), Words.Of("sheet.stand.down.caution"));
    }

    private Table Tubes(IEnumerable<StandMember> members)
    {
        var table = new Table(
            new(Words.Of("sheet.stand.column.tube")),
            new(Words.Of("sheet.stand.column.use")),
            new(Words.Of("sheet.stand.column.number"), Align.Right),
            new(Words.Of("sheet.stand.column.length"), Align.Decimal)
        );
        foreach (var same in members.GroupBy(m => m.Label))
        {
            var first = same.First();
            table.Row(
                first.Label,
                Words.Of("sheet.member." + first.Role.ToString().ToLowerInvariant()),
                Wording.Count(same.Count()),
                _words.MarkWithUnit(first.Length)
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
            all.Add(Words.Of("sheet.stand.clamps", Wording.Count(clamps), StandLayout.ClampNumber));
        }

        return string.Join(", ", all);
    }

    private int Clamps(RowLayout row) =>
        plan.Layout.Stand.Joints.Count(j => j.Row == row.Number && j.Part == StandLayout.Clamp);

    private void Frames(Flow flow, RowLayout row)
    {
        var bay = row.Frames[1] - row.Frames[0];
        flow.Step(
            Words.Of(
                "sheet.stand.frames",
                Wording.Counted("sheet.count.frame", row.Frames.Count),
                _words.MarkWithUnit(plan.Rig.Stand.SocketDepth)
            ),
            Words.Of("sheet.stand.frames.caution")
        );
        flow.Step(
            Wording.Sentences(
                Words.Of("sheet.stand.rails", _words.MarkWithUnit(bay)),
                row.Frames.Count > 2 ? Words.Of("sheet.stand.rails.more", Wording.Count(row.Frames.Count)) : ""
            ),
            Words.Of("sheet.stand.rails.caution")
        );
    }

    private void Braces(Flow flow, RowLayout row, IReadOnlyList<StandMember> members)
    {
        var braces = members.Where(m => m.Role == MemberRole.Brace).ToList();
        if (braces.Count > 0)
        {
            var labels = string.Join("; ", braces.GroupBy(b => b.Label).Select(same => Brace(row, [.. same])));
            flow.Step(
                Words.Of(
                    "sheet.stand.braces",
                    Wording.Counted("sheet.count.swivel-clamp", Clamps(row)),
                    StandLayout.ClampNumber,
                    labels
                ),
                Words.Of("sheet.stand.braces.caution")
            );
        }

        flow.Step(Words.Of("sheet.stand.screws"), Words.Of("sheet.stand.screws.caution"));
    }

    /// <summary>"7 × S1-brace, 85 mm at the front and 603 mm at the back".</summary>
    private string Brace(RowLayout row, IReadOnlyList<StandMember> same)
    {
        var (low, high) = (same[0].From, same[0].To);
        var (one, other) =
            low.Y < high.Y ? (Words.Of("sheet.side.front"), Words.Of("sheet.side.back"))
            : low.Y > high.Y ? (Words.Of("sheet.side.back"), Words.Of("sheet.side.front"))
            : (Words.Of("sheet.side.left"), Words.Of("sheet.side.right"));
        return Words.Of(
            "sheet.stand.brace",
            Wording.Count(same.Count),
            same[0].Label,
            _words.MarkWithUnit(low.Z - row.Floor),
            one,
            _words.MarkWithUnit(high.Z - row.Floor),
            other
        );
    }

    /// <summary>What the row puts on its floor, where that is more than a living room's floor is commonly built for.</summary>
    private string Floor(RowLayout row) =>
        Of(row) is { Floor: { Utilisation: > 1 } floor } ? Words.Of("sheet.stand.weight", _words.Mass(floor.Mass)) : "";

    private void Tie(Flow flow, RowLayout row)
    {
        if (Of(row)?.TipFactor is not { } tip || (tip >= TieBelow && !plan.Rig.Stand.Tied))
        {
            return;
        }

        flow.Step(
            plan.Rig.Stand.Tied
                ? Words.Of(
                    "sheet.stand.tie.planned",
                    _words.Force(Of(row)?.TieForce ?? 0),
                    Of(row)?.Tie is { } most ? _words.Told.Of(most.Case.Name) : ""
                )
                : Words.Of("sheet.stand.tie"),
            plan.Rig.Stand.Tied
                ? Words.Of("sheet.stand.tie.wall")
                : Words.Of("sheet.stand.tie.caution", QuantityWords.Number(tip, "0.#"))
        );
    }

    private RowStand? Of(RowLayout row) =>
        plan.Stand?.Rows.FirstOrDefault(stand => stand.Frame.Row.SpecIndex == row.SpecIndex);
}
