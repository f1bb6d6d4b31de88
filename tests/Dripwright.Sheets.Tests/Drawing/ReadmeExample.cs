using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;
using Dripwright.Sheets.Writing;

namespace Dripwright.Sheets.Tests.Drawing;

/// <summary>The example of the README, as it stands there.</summary>
internal static class ReadmeExample
{
    public static (IReadOnlyList<Sheet> Sheets, byte[] Pdf, string[] Texts) Run()
    {
        var box = new Box(30, 40, 120, 70);
        (double, double)[] pumpPoints = [(0, 2.2), (300, 1.4), (500, 0.4)];
        (double, double)[] linePoints = [(0, 0.7), (300, 1.1), (500, 1.7)];
        (double, double)[] points = [(200, 0.9)];
        (double, double)[] corners = [(200, 0), (400, 0), (400, 3), (200, 3)];

        var paper = Paper.A4.Landscape;
        var room = SheetSet.Room(paper);
        var (notes, rest) = room.CutBottom(30);
        var view = View.Fit(new Extent(0, 0, 2.4, 0.9), rest.Inset(20), Scale.Of(Units.Metric));
        var pot = new Group([
            new Rectangle(view.Box(0.2, 0.4, 0.25, 0.25), Pen.Built, Fill.Medium),
            Mark.Hole(view[0.325, 0.4], view.Length(0.02)),
        ])
        {
            Id = "pot-1",
            Class = "pot",
            Title = "Pot 1",
            Description = "12 L, coir",
        };
        Element[] drawing =
        [
            pot,
            new Line(view[0, 0.3], view[2.4, 0.27], Pen.Return),
            Arrow.Flow(view[0, 0.7], view[0.5, 0.7], Pen.Water),
            DimensionLine.Horizontal(view[0, 0.3], view[2.4, 0.3], rest.Bottom - 8, "2400"),
            DimensionLine.Vertical(view[0, 0], view[0, 0.9], room.X + 8, "900"),
            DimensionLine.Aligned(view[0, 0.3], view[2.4, 0.27], -8, "2400.2"),
            DimensionLine.HorizontalChain([view[0, 0.4], view[0.2, 0.4], view[0.45, 0.4]], 30, ["200", "250"]),
            DimensionLine.HorizontalRunning(
                [view[0, 0], view[0.3, 0], view[0.6, 0]],
                150,
                ["0", "300", "600"],
                below: true
            ),
            DimensionLine.Leader(view[0.325, 0.4], view[0.6, 0.1], "Ø\u202f20 drill\nthen deburr"),
            Mark.Break(view[1, 0.2], view[1, 0.4]),
            Mark.Finding(view[2, 0.5], Grade.Stop, "1"),
            Mark.Section(view[1.9, 0.05], view[1.9, 0.7], "A"),
            Mark.Part(view[2.2, 0.29], view[2.3, 0.6], "7"),
            Mark.Caption(new(room.Centre.X, rest.Bottom), "Side view"),
            ScaleBar.Draw(notes.TopLeft.Move(0, 10), view.Scale, Units.Metric),
            Legend.Draw(
                notes.TopLeft.Move(0, 14),
                [new("water under pressure", Pen.Water), new("coir", Pen.Thin, Fill.Medium)]
            ),
            CautionBox.Draw("Wear goggles.", notes.TopLeft.Move(120, 8), 90),
        ];
        var draft = new SheetDraft(paper, "Side view", drawing)
        {
            Scale = view.Scale,
            Projection = Projection.FirstAngle,
        };

        var plot = new Plot(new Axis("Flow, L/h") { Low = 0 }, new Axis("Head, m"))
        {
            Series = [new("pump", pumpPoints), new("line", linePoints), new("measured", points, SeriesKind.Points)],
            Regions = [new("allowed", corners, new(DrawnRole.Plant, FillPattern.Tint))],
            Notes = [new PlotNote(300, 1.2, "works here")],
        };
        var table = new Table(new("Part"), new("Length", Align.Decimal), new("Done", Align.Tick))
            .Group("Pipes")
            .Row("Drain, 40 mm", "2400.5 mm")
            .Row("Feed", "1 ½ in");
        var steps = new Flow(Paper.A4, "Assembly")
            .Heading("Drain")
            .Paragraph("…")
            .Bullet("…")
            .Step("Drill the holes.", caution: "Clamp the pipe.")
            .FormLine("Measured flow", "L/h")
            .WritingLines(3)
            .Table(table)
            .Figure(70, box => plot.Draw(box))
            .NewSheet()
            .Build();
        var list = TableSheet.Build(Paper.A4, "Cut list", table, note: "All lengths at 20 °C.");
        var corner = table.Draw(new Point(120, 40), width: 70);

        var drawn = plot.Draw(box);

        var set = new SheetSet("School garden", "Row 1", "Rev. 2", "2026-03-01", "mm");
        var sheets = set.Finish([draft, .. steps, .. list]);
        var pdf = PdfWriter.Write(sheets, "Row 1, build pack");
        var file = SvgWriter.Write(sheets[0], SvgOptions.File);
        var piece = SvgWriter.Write(sheets[0], SvgOptions.Inline with { IdPrefix = "s1-", Window = room });
        var css = SvgWriter.PageStyles();

        return (sheets, pdf, [file, piece, css, corner.ToString(), drawn.ToString()]);
    }
}
