using Dripwright.Engine;
using Dripwright.Engine.Rigs;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;
using Dripwright.Sheets.Views;

namespace Dripwright.Sheets.Screen;

/// <summary>One view as large as the page has room for: no title block and no standard scale.</summary>
internal sealed class ScreenPicture(Plan plan, ScreenKind kind, ScreenOptions options)
{
    /// <summary>The drawing, about the point (0, 0), and its scale.</summary>
    public (Scale Scale, IEnumerable<Element> Elements) Draw()
    {
        var extent = Extent();
        var scale = ScaleFor(extent);
        var view = View.At(extent, new(0, 0, 0, 0), scale);
        return (scale, Elements(view, extent));
    }

    /// <summary>The smallest box round what is drawn, texts included.</summary>
    public static Box Bounds(IEnumerable<Element> elements)
    {
        var list = elements.ToList();
        List<Point> points = [.. list.SelectMany(Points)];
        return Box.Around([.. points, .. SheetText.Of(list).SelectMany(t => t.Corners)]);
    }

    private static IEnumerable<Point> Points(Element element) =>
        element switch
        {
            Line line => [line.From, line.To],
            Polyline line => line.Points,
            Rectangle rectangle => rectangle.Area.Corners,
            Circle c => [c.Centre.Move(-c.Radius, -c.Radius), c.Centre.Move(c.Radius, c.Radius)],
            Arc arc => [arc.At(arc.Start), arc.At(arc.Start + (arc.Sweep / 2)), arc.At(arc.Start + arc.Sweep)],
            Group group => group.Children.SelectMany(Points).Select(p => group.Offset + p.Turn(group.Rotation)),
            _ => [],
        };

    private IEnumerable<Element> Elements(View view, Extent extent) =>
        kind switch
        {
            ScreenKind.Plan =>
            [
                .. new PlanPicture(plan, view).Draw(texts: true),
                .. options.Dimensions ? new PlanDimensions(plan, view).Draw() : [],
                .. new PlanLabels(plan, view).Draw(),
            ],
            ScreenKind.Front => new FrontPicture(
                plan,
                Row,
                view,
                extent,
                extent,
                FrontPicture.BandOf(plan, Row, view.Scale)
            ).Draw(options.Dimensions),
            _ => new EndPicture(plan, view, EndPicture.BandOf(plan, view.Scale)).Draw(options.Dimensions),
        };

    private Dripwright.Engine.Layout.RowLayout Row => plan.Layout.Rows[options.Row - 1];

    private Extent Extent() =>
        kind switch
        {
            ScreenKind.Plan => PlanPicture.ExtentOf(plan.Layout),
            ScreenKind.Front => FrontPicture.ExtentOf(plan, Row),
            _ => EndPicture.ExtentOf(plan),
        };

    // Margins depend on the scale and the scale on the margins: a few rounds bring them together.
    private Scale ScaleFor(Extent extent)
    {
        var scale = Fitting(extent, new(4, 4, 4, 4));
        for (var i = 0; i < 4; i++)
        {
            scale = Fitting(extent, Margins(scale));
        }

        return scale;
    }

    private Scale Fitting(Extent extent, Margins margins)
    {
        var width = Math.Max(options.Width - 4 - margins.Left - margins.Right, options.Width / 4);
        var height = Math.Max(options.Height - margins.Top - margins.Bottom, options.Height / 4);
        var smaller = Math.Max(extent.Width / width, extent.Height / height) * 1000;
        return new(Math.Max(smaller, 1), "");
    }

    private Margins Margins(Scale scale)
    {
        if (options.Dimensions)
        {
            return kind switch
            {
                ScreenKind.Plan => PlanDimensions.Margins(plan, scale),
                ScreenKind.Front => FrontPicture.Margins(plan, Row, scale),
                _ => EndPicture.Margins(plan, scale),
            };
        }

        var left = plan.Rig.Reservoir.At == RowEnd.Left;
        return kind switch
        {
            ScreenKind.Plan => new(left ? 4 : 22, 6, left ? 22 : 4, 9),
            ScreenKind.Front => new(6, Math.Max(14, 4 + FrontPicture.BandOf(plan, Row, scale).Above), 6, 6),
            _ => new(6, Math.Max(14, 4 + EndPicture.BandOf(plan, scale).Above), 6, 6),
        };
    }
}
