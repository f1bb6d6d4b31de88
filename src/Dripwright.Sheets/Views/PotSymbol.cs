using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Rigs;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Views;

/// <summary>A pot on a drawing: from above and from the side, planted or crossed out.</summary>
internal static class PotSymbol
{
    private static readonly Fill s_leaves = new(DrawnRole.Plant, FillPattern.Tint);

    /// <summary>[mm] Smallest pot on paper that has room for its number.</summary>
    private const double RoomForNumber = 3.6;

    /// <summary>[mm] Smallest pot on paper that has room for its number beside the feed line.</summary>
    private const double RoomInside = 6.5;

    /// <summary>Whether the numbers of a row's pots stand behind them.</summary>
    public static bool NumbersBeside(RowLayout row, View view) => view.Length(row.Pot.Length) is < RoomInside and >= 2;

    /// <summary>Whether the numbers of a row's front line stand before it.</summary>
    public static bool NumbersInFront(RowLayout row, View view) =>
        NumbersBeside(row, view) && row.Spec.Arrangement == Arrangement.Staggered;

    /// <summary>The pot from above.</summary>
    /// <param name="row">Its row.</param>
    /// <param name="pot">The pot.</param>
    /// <param name="view">X to the right, Y to the back.</param>
    /// <param name="numbered">Whether its number is written.</param>
    public static Group FromAbove(RowLayout row, PotPlace pot, View view, bool numbered)
    {
        var (length, width) = (row.Pot.Length, row.Pot.Width);
        var centre = view[pot.Base.X, pot.Base.Y];
        var box = view.Box(pot.Base.X - (length / 2), pot.Base.Y - (width / 2), length, width);
        // A wide line on a tiny pot would be all line.
        var pen = box.Width >= 4 ? Pen.Built : Pen.Thin;
        var elements = new List<Element>
        {
            row.Pot.Round ? new Circle(centre, box.Width / 2, pen, Fill.Paper) : new Rectangle(box, pen, Fill.Paper),
        };
        var reach = Math.Min(box.Width, box.Height) / 2;
        if (pot.Planted)
        {
            elements.Add(new Circle(centre, reach * 0.8, Pen.Plant, s_leaves));
        }
        else
        {
            var arm = row.Pot.Round ? reach * 0.7 : reach;
            elements.Add(new Line(centre.Move(-arm, -arm), centre.Move(arm, arm), Pen.Thin));
            elements.Add(new Line(centre.Move(-arm, arm), centre.Move(arm, -arm), Pen.Thin));
        }

        if (numbered && box.Width >= RoomInside)
        {
            // Above the feed line, which runs through the middle of a single row's pots.
            elements.AddRange(Masked(Number(pot.Number, centre.Move(0, -0.9), box.Width), !pot.Planted));
        }
        else if (numbered && NumberedBeside(row, pot, view))
        {
            // The front line of a staggered row has its numbers to the front, where the feed line does not run.
            var front = row.Spec.Arrangement == Arrangement.Staggered && !pot.BackLine;
            elements.Add(Number(pot.Number, new(centre.X, front ? box.Bottom + 2.6 : box.Y - 0.9), 9));
        }

        return Named(row, pot, elements);
    }

    /// <summary>The pot from the side.</summary>
    /// <param name="row">Its row.</param>
    /// <param name="pot">The pot.</param>
    /// <param name="middle">[m] Its middle in the view's level direction.</param>
    /// <param name="across">[m] Its size at the rim in that direction.</param>
    /// <param name="view">Level direction to the right, height up.</param>
    /// <param name="behind">Whether it stands behind another pot.</param>
    /// <param name="numbered">Whether its number is written.</param>
    public static Group FromSide(
        RowLayout row,
        PotPlace pot,
        double middle,
        double across,
        View view,
        bool behind,
        bool numbered
    )
    {
        var low = across * BaseRatio(row.Pot) / 2;
        var (z, rim) = (pot.Base.Z, pot.Base.Z + row.Pot.Height);
        Point[] corners =
        [
            view[middle - low, z],
            view[middle + low, z],
            view[middle + (across / 2), rim],
            view[middle - (across / 2), rim],
        ];
        var wide = view.Length(across);
        var elements = new List<Element>
        {
            Polyline.Polygon(corners, behind || wide < 4 ? Pen.Thin : Pen.Built, Fill.Paper),
        };
        if (pot.Planted)
        {
            elements.AddRange(Plant(view[middle, rim], PlantHeight(view)));
        }
        else
        {
            elements.Add(new Line(corners[0], corners[2], Pen.Thin));
            elements.Add(new Line(corners[1], corners[3], Pen.Thin));
        }

        if (numbered && wide >= RoomForNumber)
        {
            var at = view[middle, z + (row.Pot.Height * 0.55)].Move(0, 1);
            elements.AddRange(Masked(Number(pot.Number, at, wide), !pot.Planted));
        }

        return Named(row, pot, elements);
    }

    /// <summary>[mm] Height of the mark of a plant over the rim.</summary>
    public static double PlantHeight(View view) => Math.Clamp(view.Length(0.2), 2.5, 9);

    private static IEnumerable<Element> Plant(Point foot, double height)
    {
        yield return new Line(foot, foot.Move(0, -height * 0.6), Pen.Plant);
        yield return new Circle(foot.Move(0, -height * 0.66), height * 0.34, Pen.Plant, s_leaves);
    }

    private static bool NumberedBeside(RowLayout row, PotPlace pot, View view)
    {
        if (!NumbersBeside(row, view))
        {
            return false;
        }

        // Where three figures would touch, every fifth pot is numbered.
        var pitch = view.Length(row.Spec.Spacing) * (row.Spec.Arrangement == Arrangement.Staggered ? 2 : 1);
        return pitch >= 3.4 || (pitch * 5 >= 6 && (pot.Number % 5 == 0 || pot.Number == 1));
    }

    private static IEnumerable<Element> Masked(Text text, bool mask) =>
        mask ? [Polyline.Polygon(TextMeasure.Corners(text), null, Fill.Paper), text] : [text];

    private static Text Number(int number, Point at, double room)
    {
        var text = Wording.Count(number);
        var style = TextStyle.Small.Middle with { Role = DrawnRole.Ink };
        var width = TextMeasure.Width(text, style);
        return new(text, at, width <= room - 0.4 ? style : style with { Size = style.Size * (room - 0.4) / width });
    }

    internal static double BaseRatio(PotType pot)
    {
        var share = pot.Volume / (pot.RimArea * pot.Height);
        // Where no straight draught gives the volume the drawing shows upright walls.
        return share is >= 1.0 / 3 and <= 1 ? Math.Max(0.3, pot.BaseRatio) : 1;
    }

    private static Group Named(RowLayout row, PotPlace pot, IReadOnlyList<Element> elements) =>
        new(elements)
        {
            Id = $"pot-{Wording.Count(row.Number)}-{Wording.Count(pot.Number)}",
            Class = pot.Planted ? "pot planted" : "pot empty",
            Title = Words.Of("sheet.pot.title", Wording.Count(row.Number), Wording.Count(pot.Number)),
            Description = pot.Planted
                ? Words.Of(
                    "sheet.pot.said",
                    pot.Crop.Length > 0 ? pot.Crop : Words.Of("sheet.crop.planted"),
                    Wording.Counted("sheet.count.plant", pot.Plants),
                    Wording.Counted("sheet.count.emitter", pot.Emitters)
                )
                : Words.Of("sheet.crop.empty"),
        };
}
