using Dripwright.Engine.Catalogue;
using Dripwright.Language;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Views;

/// <summary>Fittings on a level pipe of a diagram, about 5 mm wide.</summary>
internal static class FittingSymbol
{
    /// <summary>The plain word for a kind of fitting.</summary>
    public static string Word(FittingKind kind) => Words.Of("sheet.fitting." + kind.ToString().ToLowerInvariant());

    /// <summary>The symbol, in the spirit of ISO 1219 and 14617 (from memory): ways and ends are told apart by shape.</summary>
    public static IEnumerable<Element> Draw(FittingKind kind, Point at) =>
        kind switch
        {
            FittingKind.Elbow90 or FittingKind.Elbow45 =>
            [
                new Polyline([at.Move(-2.2, 0), at, at.Move(0, 2.6)], Pen.Built),
                new Circle(at, 1, Pen.Thin, Fill.Paper),
            ],
            FittingKind.Tee =>
            [
                new Line(at.Move(-2.4, 0), at.Move(2.4, 0), Pen.Built),
                new Line(at, at.Move(0, 2.8), Pen.Built),
                new Line(at.Move(-1, 2.8), at.Move(1, 2.8), Pen.Thin),
            ],
            FittingKind.Cap => [new Rectangle(new(at.X - 0.8, at.Y - 2, 1.6, 4), null, Fill.Ink)],
            FittingKind.Valve =>
            [
                .. Bow(at, Fill.Paper),
                new Line(at, at.Move(0, -2.2), Pen.Thin),
                new Line(at.Move(-1.2, -2.2), at.Move(1.2, -2.2), Pen.Thin),
            ],
            FittingKind.CheckValve => [.. Bow(at, Fill.Ink)],
            FittingKind.Barb =>
            [
                new Polyline(
                    [
                        at.Move(-2, -1.6),
                        at.Move(-0.7, 0),
                        at.Move(-0.7, -1.6),
                        at.Move(0.7, 0),
                        at.Move(0.7, -1.6),
                        at.Move(2, 0),
                    ],
                    Pen.Thin
                ),
                new Rectangle(new(at.X - 2.2, at.Y - 0.7, 4.4, 1.4), Pen.Thin, Fill.Paper),
            ],
            FittingKind.Adapter =>
            [
                Polyline.Polygon(
                    [at.Move(-2, -1.8), at.Move(2, -1), at.Move(2, 1), at.Move(-2, 1.8)],
                    Pen.Thin,
                    Fill.Paper
                ),
            ],
            _ =>
            [
                new Rectangle(new(at.X - 1.8, at.Y - 1.4, 3.6, 2.8), Pen.Thin, Fill.Paper),
                new Line(at.Move(0, -1.4), at.Move(0, 1.4), Pen.Thin),
            ],
        };

    private static Polyline[] Bow(Point at, Fill fill) =>
        [
            Polyline.Polygon([at.Move(-2.2, -1.6), at, at.Move(-2.2, 1.6)], Pen.Thin, Fill.Paper),
            Polyline.Polygon([at.Move(2.2, -1.6), at, at.Move(2.2, 1.6)], Pen.Thin, fill),
        ];
}
