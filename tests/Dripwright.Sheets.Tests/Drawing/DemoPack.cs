using System.Globalization;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Tests.Drawing;

/// <summary>A small pack with one of each helper, for the tests and for looking at.</summary>
internal static class DemoPack
{
    public static SheetSet Set { get; } =
        new("School garden at the old mill", "Row 1, twelve pots", "Rev. 2", "2026-03-01", "mm");

    public static IReadOnlyList<Sheet> Sheets(Paper? paper = null)
    {
        paper ??= Paper.A4;
        return Set.Finish([
            SideView(paper.Landscape),
            FullSize(paper),
            .. Steps(paper),
            .. TableSheet.Build(paper, "Cut list", CutList(40), "All lengths at 20 °C, before deburring."),
            Plots(paper.Landscape),
        ]);
    }

    public static SheetDraft SideView(Paper paper)
    {
        var room = SheetSet.Room(paper);
        var (notes, rest) = room.CutBottom(34);
        var view = View.Fit(new Extent(0, 0, 2.4, 0.9), rest.Inset(22, 26, 20, 22), Scale.Metric);
        var elements = new List<Element>();
        var marks = new List<Point>();
        for (var i = 0; i < 12; i++)
        {
            var x = 0.03 + (i * 0.2);
            var name = (i + 1).ToString(CultureInfo.InvariantCulture);
            elements.Add(
                new Group([new Rectangle(view.Box(x, 0.42, 0.14, 0.2), Pen.Built, Fill.Medium)])
                {
                    Id = "pot-" + name,
                    Class = "pot",
                    Title = "Pot " + name,
                }
            );
            marks.Add(view[x + 0.07, 0.62]);
        }

        elements.AddRange([
            Polyline.Polygon([view[0, 0.40], view[2.4, 0.36], view[2.4, 0.32], view[0, 0.36]], Pen.Built, Fill.Paper),
            new Line(view[0, 0.38], view[2.4, 0.34], Pen.Return),
            new Rectangle(view.Box(2.05, 0, 0.3, 0.22), Pen.Built),
            new Rectangle(view.Box(2.05, 0, 0.3, 0.15), null, Fill.StandingWater),
            Arrow.Flow(view[0, 0.75], view[0.5, 0.75], Pen.Water),
            new Line(view[0.5, 0.75], view[2.4, 0.75], Pen.Water),
            DimensionLine.HorizontalRunning(
                [view[0, 0.62], .. marks],
                view[0, 0.9].Y - 4,
                ["0", .. marks.Select((_, i) => (100 + (i * 200)).ToString(CultureInfo.InvariantCulture))]
            ),
            DimensionLine.Horizontal(view[0, 0.36], view[2.4, 0.32], view[0, 0].Y + 9, "2400"),
            DimensionLine.Vertical(view[0, 0], view[0, 0.4], view[0, 0].X - 9, "400"),
            DimensionLine.VerticalChain(
                [view[2.4, 0], view[2.4, 0.15], view[2.4, 0.22], view[2.4, 0.32]],
                view[2.4, 0].X + 9,
                ["150", "70", "100"]
            ),
            DimensionLine.Aligned(view[0, 0.36], view[1.2, 0.34], -6, "slope 1 in 60"),
            DimensionLine.Leader(view[1.5, 0.36], view[1.55, 0.2], "Ø\u202f40 drain\ndrilled per pot"),
            Mark.Break(view[0.9, 0.1], view[0.9, 0.3]),
            Mark.Finding(view[2.2, 0.28], Grade.Stop, "1"),
            Mark.Finding(view[1.2, 0.12], Grade.Mend, "2"),
            Mark.Finding(view[0.3, 0.1], Grade.Note, "3"),
            ScaleBar.Draw(notes.TopLeft.Move(0, 8), view.Scale, Units.Metric),
            Legend.Draw(
                notes.TopLeft.Move(0, 13),
                [
                    new("water under pressure", Pen.Water),
                    new("water running back", Pen.Return),
                    new("coir", Pen.Thin, Fill.Medium),
                    new("cut surface", Pen.Thin, Fill.Section),
                ]
            ),
            CautionBox.Draw(
                "Unplug the pump before you lift the lid of the reservoir.",
                notes.TopLeft.Move(120, 8),
                110
            ),
        ]);
        return new(paper, "Side view of the row", elements)
        {
            Scale = view.Scale,
            Projection = Projection.FirstAngle,
            Description = "Twelve pots on a drain that falls to a reservoir.",
        };
    }

    public static SheetDraft FullSize(Paper paper)
    {
        var room = SheetSet.Room(paper);
        var view = View.At(new Extent(0, 0, 0.12, 0.06), room.CutTop(110).Strip, Scale.Full);
        Point[] holes = [view[0.02, 0.03], view[0.06, 0.03], view[0.066, 0.03], view[0.072, 0.03], view[0.1, 0.03]];
        var across = room.CutBottom(24).Strip;
        return new(
            paper,
            "Drilling pattern",
            [
                new Rectangle(view.Box(0, 0, 0.12, 0.06), Pen.Built),
                .. holes.Select(hole => Mark.Hole(hole, 4)),
                DimensionLine.HorizontalChain(
                    [view[0, 0.06], .. holes, view[0.12, 0.06]],
                    view[0, 0.06].Y - 10,
                    ["20", "40", "6", "6", "28", "20"]
                ),
                DimensionLine.Horizontal(view[0, 0], view[0.12, 0], view[0, 0].Y + 16, "4 ¾ in"),
                DimensionLine.Horizontal(holes[2], holes[3], view[0, 0].Y + 8, "¼ in"),
                DimensionLine.VerticalRunning(
                    [view[0.12, 0], holes[4], view[0.12, 0.06]],
                    view[0.12, 0].X + 8,
                    ["0", "1 ³⁄₁₆", "2 ³⁄₈"],
                    right: true
                ),
                CutList(4).Draw(new(room.X, room.Y + 130), 110),
                ScaleBar.Draw(new(room.X, room.Y + 120), Scale.UnitedStates[4], Units.UnitedStates),
                CheckRuler.Across(across.TopLeft),
                CheckRuler.Along(new(room.Right - 14, room.Bottom - 2)),
            ]
        )
        {
            Scale = Scale.Full,
        };
    }

    public static IReadOnlyList<SheetDraft> Steps(Paper paper)
    {
        var flow = new Flow(paper, "Assembly")
            .Heading("Drain and stand")
            .Paragraph(
                string.Join(
                    ' ',
                    Enumerable.Repeat(
                        "Lay the pipe on two trestles and mark the line along its top with a chalk line.",
                        4
                    )
                )
            );
        flow.Bullet("Keep the offcuts for the test joint.").Bullet("Write the date on the reservoir.");
        for (var i = 0; i < 14; i++)
        {
            flow.Step(
                "Drill the hole for the pot with a Ø\u202f19 mm step drill, slowly, from the outside; catch the chips, then deburr inside and outside with a knife.",
                i % 4 == 1 ? "Clamp the pipe: the drill grips when it breaks through. Goggles on." : null
            );
        }

        return flow.Heading("First water")
            .FormLine("Flow at the first emitter", "L/h")
            .FormLine("Flow at the last emitter", "L/h")
            .WritingLines(3)
            .Build();
    }

    public static Table CutList(int rows)
    {
        var table = new Table(
            new("No.", Align.Right),
            new("Part"),
            new("Length", Align.Decimal),
            new("Inches", Align.Decimal),
            new("Cut", Align.Tick)
        );
        string[] lengths = ["2400 mm", "12.5 mm", "7 mm", "1 204.25 mm"];
        string[] inches = ["94 ½ in", "½ in", "1 ¹¹⁄₁₆ in", "6 in"];
        for (var i = 0; i < rows; i++)
        {
            if (i % 12 == 0)
            {
                table.Group(i == 0 ? "Drain" : "Feed line");
            }

            var part = i % 5 == 0 ? "Pipe, drilled for twelve pots, with a cleaning eye at the upper end" : "Elbow";
            table.Row((i + 1).ToString(CultureInfo.InvariantCulture), part, lengths[i % 4], inches[i % 4]);
        }

        return table;
    }

    public static SheetDraft Plots(Paper paper)
    {
        var room = SheetSet.Room(paper);
        var (left, right) = room.CutLeft((room.Width / 2) - 4);
        right = right.Inset(8, 0, 0, 0);
        var xs = Enumerable.Range(0, 21).Select(i => i * 50.0).ToList();
        var pump = new Plot(new Axis("Flow, L/h"), new Axis("Head, m") { Low = 0 })
        {
            Title = "Where the pump works",
            Series =
            [
                new("pump", [.. xs.Select(x => (x, 2.2 - (x * x / 600_000)))]),
                new("feed line", [.. xs.Select(x => (x, 0.7 + (x * x / 1_100_000)))]),
                new("measured", [(200, 0.72), (400, 0.9), (800, 1.25)], SeriesKind.Points),
            ],
            Regions =
            [
                new("allowed", [(400, 0), (800, 0), (800, 3), (400, 3)], new(DrawnRole.Plant, FillPattern.Tint)),
            ],
            Notes = [new(762, 1.23, "works here\n762 L/h, 1.2 m", 6, -22)],
        };
        var dose = new Plot(
            new Axis("Week") { Names = [(1, "1"), (2, "2"), (3, "3"), (4, "4")] },
            new Axis("Water, L per day")
        )
        {
            HasLegend = true,
            Series =
            [
                new("planned", [(1, 12), (2, 18), (3, 26), (4, 31)], SeriesKind.Bars),
                new("measured", [(1, 11), (2, 19.5), (3, 24), (4, 33)], SeriesKind.Step) { Pen = Pen.Water },
            ],
        };
        return new(paper, "Water", [pump.Draw(left.CutTop(110).Strip), dose.Draw(right.CutTop(110).Strip)]);
    }
}
