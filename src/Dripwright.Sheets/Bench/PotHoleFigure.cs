using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Parts;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Bench;

/// <summary>A pot from the side it drains to, with its drain hole.</summary>
internal static class PotHoleFigure
{
    /// <summary>[mm] Height of the figure.</summary>
    public const double Height = 62;

    public static Group Draw(Box box, PotType pot, PotHole hole, Wording words)
    {
        var (drawing, text) = box.CutLeft(Math.Min(95, box.Width * 0.55));
        var extent = new Extent(-pot.Length / 2, 0, pot.Length / 2, pot.Height);
        var view = View.Fit(extent, drawing.Inset(14, 6, 24, 10), Scale.Of(words.Drawn));
        // The shared ratio of base to rim gives the slant of the walls.
        var foot = pot.Length / 2 * Math.Min(1, pot.BaseRatio);
        var rim = pot.Length / 2;
        var centre = view[0, hole.Height];
        var radius = Math.Max(0.8, view.Length(hole.Diameter) / 2);
        Element[] elements =
        [
            Polyline.Polygon([view[-foot, 0], view[foot, 0], view[rim, pot.Height], view[-rim, pot.Height]], Pen.Built),
            new Line(view[0, 0].Move(0, 2), view[0, pot.Height].Move(0, -3), Pen.Centre),
            new Circle(centre, radius, Pen.Built, Fill.Paper),
            Mark.Centre(centre, radius + 2),
            DimensionLine.Vertical(view[0, 0], centre, view[-rim, 0].X - 7, words.MarkWithUnit(hole.Height)),
            new Line(view[foot, 0].Move(-2, 0), view[foot, 0].Move(10, 0), Pen.Explain),
            DimensionLine.Leader(
                centre.Move(radius * 0.7, -radius * 0.7),
                new(view[rim, 0].X + 4, centre.Y - 9),
                $"Ø\u202f{words.Size(hole.Diameter)}"
            ),
            .. Notes(text, pot, hole, words),
            new Text(view.Scale.Words, new(view[0, 0].X, box.Bottom - 1), TextStyle.Small.Middle),
        ];
        return new(elements) { Class = "pot-hole", Title = Words.Of("bench.pothole.title", pot.Name) };
    }

    private static IEnumerable<Text> Notes(Box text, PotType pot, PotHole hole, Wording words)
    {
        var style = TextStyle.Body;
        string[] notes =
        [
            Words.Of(
                "bench.pothole.drill",
                Words.Count("bench.pots", hole.Count),
                Wording.Sentence(words.Told.Of(hole.Tool))
            ),
            Words.Of(
                "bench.pothole.centre",
                words.MarkWithUnit(hole.Height) + (words.Us ? $" ({Wording.Millimetres(hole.Height)})" : "")
            ),
            Words.Of("bench.pothole.turn"),
            pot.Round ? Words.Of("bench.pothole.round") : Words.Of("bench.pothole.vary"),
        ];
        var y = text.Y + 8;
        foreach (var note in notes)
        {
            foreach (var line in TextMeasure.Wrap(note, text.Width - 2, style))
            {
                yield return new Text(line, new(text.X, y), style);
                y += style.LineHeight;
            }

            y += 1.5;
        }
    }
}
