using Dripwright.Sheets.Model;
using SkiaSharp;

namespace Dripwright.Sheets.Writing;

/// <summary>Draws elements on a canvas whose unit is 1 mm: a page of a PDF or the dots of a picture.</summary>
internal sealed class PdfShapes(SKCanvas canvas, Palette palette)
{
    private const float FontSize = 1000;

    public void Write(Element element)
    {
        switch (element)
        {
            case Text text:
                Words(text);
                break;
            case Group group:
                Write(group);
                break;
            case Line line:
                Draw(line, line.Pen, null);
                break;
            case Polyline line:
                Draw(line, line.Pen, line.Fill);
                break;
            case Rectangle rectangle:
                Draw(rectangle, rectangle.Pen, rectangle.Fill);
                break;
            case Circle circle:
                Draw(circle, circle.Pen, circle.Fill);
                break;
            case Arc arc:
                Draw(arc, arc.Pen, null);
                break;
            case Curve curve:
                Draw(curve, curve.Pen, curve.Fill);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(element), element, "Unknown kind of element.");
        }
    }

    private void Draw(Element element, Pen? pen, Fill? fill)
    {
        using var path = Outline(element);
        if (fill is { IsPattern: true })
        {
            Pattern(path, fill);
        }
        else if (fill is not null)
        {
            using var paint = Solid(fill);
            canvas.DrawPath(path, paint);
        }

        if (pen is not null)
        {
            using var paint = Stroke(pen);
            canvas.DrawPath(path, paint);
        }
    }

    private static SKPath Outline(Element element)
    {
        using var path = new SKPathBuilder();
        switch (element)
        {
            case Line line:
                path.MoveTo(At(line.From));
                path.LineTo(At(line.To));
                break;
            case Polyline line:
                path.AddPoly([.. line.Points.Select(At)], line.Closed);
                break;
            case Rectangle rectangle:
                path.AddRect(Rect(rectangle.Area));
                break;
            case Circle circle:
                path.AddCircle((float)circle.Centre.X, (float)circle.Centre.Y, (float)circle.Radius);
                break;
            case Arc arc:
                var diameter = arc.Radius * 2;
                var around = new Box(arc.Centre.X - arc.Radius, arc.Centre.Y - arc.Radius, diameter, diameter);
                path.AddArc(Rect(around), (float)arc.Start, (float)arc.Sweep);
                break;
            case Curve curve:
                foreach (var step in curve.Steps)
                {
                    Add(path, step);
                }

                break;
        }

        return path.Detach();
    }

    private static void Add(SKPathBuilder path, CurveStep step)
    {
        switch (step)
        {
            case CurveStep.Move move:
                path.MoveTo(At(move.To));
                break;
            case CurveStep.Straight line:
                path.LineTo(At(line.To));
                break;
            case CurveStep.Cubic cubic:
                path.CubicTo(At(cubic.Control1), At(cubic.Control2), At(cubic.To));
                break;
            default:
                path.Close();
                break;
        }
    }

    private void Pattern(SKPath path, Fill fill)
    {
        var bounds = path.Bounds;
        var area = new Box(bounds.Left, bounds.Top, bounds.Width, bounds.Height);
        canvas.Save();
        canvas.ClipPath(path, SKClipOperation.Intersect, antialias: true);
        using (var pen = Stroke(new Pen(fill.Role)))
        {
            foreach (var (from, to) in PatternLines.Over(area, fill.Pattern))
            {
                canvas.DrawLine(At(from), At(to), pen);
            }
        }

        if (fill.Pattern == FillPattern.Dots)
        {
            using var dot = Solid(new Fill(fill.Role));
            foreach (var centre in PatternLines.DotsOver(area))
            {
                // Squares take a quarter of the bytes of circles, and nobody sees it.
                var half = PatternLines.DotRadius * 0.9;
                canvas.DrawRect(Rect(new(centre.X - half, centre.Y - half, 2 * half, 2 * half)), dot);
            }
        }

        canvas.Restore();
    }

    private void Words(Text text)
    {
        var style = text.Style;
        // The font engine rounds small sizes to 1/64; setting at 1000 and scaling keeps the width that was measured.
        using var font = new SKFont(Typeface.Of(style.Weight), FontSize);
        font.Subpixel = true;
        font.LinearMetrics = true;
        font.Hinting = SKFontHinting.None;
        using var paint = new SKPaint { Color = SKColor.Parse(palette.Colours[style.Role]), IsAntialias = true };
        var width = TextMeasure.Width(text.Content, style);
        var left = style.Anchor switch
        {
            Anchor.Middle => -width / 2,
            Anchor.End => -width,
            _ => 0,
        };
        canvas.Save();
        canvas.Translate(At(text.At));
        canvas.RotateDegrees((float)style.Rotation);
        canvas.Scale((float)(style.Size / FontSize));
        canvas.DrawText(text.Content, (float)(left * FontSize / style.Size), 0, SKTextAlign.Left, font, paint);
        canvas.Restore();
    }

    private void Write(Group group)
    {
        canvas.Save();
        canvas.Translate(At(group.Offset));
        canvas.RotateDegrees((float)group.Rotation);
        if (group.Clip is { } outline)
        {
            using var path = Outline(Polyline.Polygon(outline, null));
            canvas.ClipPath(path, SKClipOperation.Intersect, antialias: true);
        }

        foreach (var child in group.Children)
        {
            Write(child);
        }

        canvas.Restore();
    }

    private static SKPoint At(Point point) =>
        double.IsFinite(point.X) && double.IsFinite(point.Y)
            ? new((float)point.X, (float)point.Y)
            : throw new ArgumentOutOfRangeException(nameof(point), point, "A drawing needs finite coordinates.");

    private static SKRect Rect(Box box)
    {
        var (from, to) = (At(box.TopLeft), At(new(box.Right, box.Bottom)));
        return new(from.X, from.Y, to.X, to.Y);
    }

    private SKPaint Solid(Fill fill)
    {
        var colours = fill.Pattern == FillPattern.Tint ? palette.Tints : palette.Colours;
        return new() { Color = SKColor.Parse(colours[fill.Role]), IsAntialias = true };
    }

    private SKPaint Stroke(Pen pen)
    {
        var paint = new SKPaint
        {
            Color = SKColor.Parse(palette.Colours[pen.Role]),
            IsStroke = true,
            StrokeWidth = (float)pen.Millimetres,
            StrokeJoin = SKStrokeJoin.Round,
            IsAntialias = true,
        };
        if (pen.Dashes is { Count: > 0 } dashes)
        {
            using var effect = SKPathEffect.CreateDash([.. dashes.Select(dash => (float)dash)], 0);
            paint.PathEffect = effect;
        }

        return paint;
    }
}
