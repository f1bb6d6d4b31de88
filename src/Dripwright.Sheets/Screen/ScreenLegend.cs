using Dripwright.Engine;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;
using Dripwright.Sheets.Views;

namespace Dripwright.Sheets.Screen;

/// <summary>What lines and colours mean, under a drawing for the screen.</summary>
internal static class ScreenLegend
{
    private const double Gap = 8;
    private const double ScaleHeight = 17;
    private const double NoWater = 24;

    /// <summary>Draws the legend and tells how high it is.</summary>
    /// <param name="plan">The plan, in the units to show.</param>
    /// <param name="kind">The view.</param>
    /// <param name="options">What is drawn.</param>
    /// <param name="scale">The drawing's scale, for its bar.</param>
    /// <param name="steps">The scale of the colours; null for none.</param>
    /// <param name="at">Its upper left corner.</param>
    /// <param name="width">[mm] Room.</param>
    public static (IReadOnlyList<Element> Elements, double Height) Draw(
        Plan plan,
        ScreenKind kind,
        ScreenOptions options,
        Scale scale,
        StepScale? steps,
        Point at,
        double width
    )
    {
        List<Element> elements = [];
        var y = at.Y + 3;
        if (steps is not null)
        {
            elements.AddRange(Colours(steps, new(at.X, y), Math.Min(width, 150)));
            y += ScaleHeight + 3;
        }

        var entries = Entries(kind);
        var x = at.X;
        var rows = 1;
        foreach (var entry in entries)
        {
            var wide = Legend.Width([entry]);
            if (x > at.X && x + wide > at.X + width)
            {
                (x, rows) = (at.X, rows + 1);
            }

            elements.Add(Legend.Draw(new(x, y + ((rows - 1) * 5)), [entry]));
            x += wide + Gap;
        }

        y += rows * 5;
        if (options.Dimensions)
        {
            elements.Add(new Text(new Wording(plan.Rig.Units).DimensionNote, new(at.X, y + 4), TextStyle.Note));
            y += 5;
        }

        if (scale.Denominator <= 500)
        {
            elements.Add(ScaleBar.Draw(new(at.X, y + 7), scale, Scales.UnitsOf(plan.Rig.Units)));
            y += 9;
        }

        return (elements, y + 2 - at.Y);
    }

    private static IReadOnlyList<LegendEntry> Entries(ScreenKind kind) =>
        [
            new(Words.Of("screen.legend.feed"), Pen.Water),
            new(Words.Of("screen.legend.drain"), Pen.Return),
            kind == ScreenKind.Plan
                ? new(Words.Of("screen.legend.planted"), Pen.Plant, new(DrawnRole.Plant, FillPattern.Tint))
                : new(Words.Of("screen.legend.vent"), Pen.Hidden),
        ];

    // Numbered boxes side by side, their edges written under them, and one apart for pots without water.
    private static IEnumerable<Element> Colours(StepScale steps, Point at, double width)
    {
        yield return new Text(steps.Title, at.Move(0, 3), TextStyle.Note.Bold);
        var top = at.Y + 5;
        var wide = (width - NoWater - 4) / StepScale.Steps;
        var digit = TextStyle.Note.Middle;
        for (var i = 0; i < StepScale.Steps && steps.Edges.Count > 0; i++)
        {
            var box = new Box(at.X + 3 + (i * wide), top, wide, 5);
            yield return new Group([
                new Rectangle(box, Pen.Thin, Fill.Paper),
                new Text(Wording.Count(i + 1), new(box.Centre.X, box.Centre.Y + (digit.CapHeight / 2)), digit),
            ])
            {
                Class = "step-" + Wording.Count(i + 1),
            };
        }

        for (var i = 0; i < steps.Edges.Count; i++)
        {
            yield return new Text(
                steps.Text(steps.Edges[i]),
                new(at.X + 3 + (i * wide), top + 8.6),
                TextStyle.Small.Middle with
                {
                    Role = DrawnRole.Ink,
                }
            );
        }

        var none = new Box(at.X + width - NoWater + 4, top, 6, 5);
        yield return new Rectangle(none, Pen.Thin, Fill.Paper);
        yield return new Text(
            Words.Of("screen.legend.dry"),
            new(none.Right + 1.5, none.Centre.Y + 1.05),
            TextStyle.Note
        );
    }
}
