using Dripwright.Engine.Layout;
using Dripwright.Engine.Numerics;
using Dripwright.Engine.Printed;
using Dripwright.Language;
using Dripwright.Sheets.Model;
using Dripwright.Sheets.Writing;

namespace Dripwright.Sheets.Screen;

/// <summary>Where a printed part goes: a row seen slantwise, the places of the part filled and numbered.</summary>
public static class StandView
{
    /// <summary>The drawing as a piece of a page.</summary>
    /// <param name="layout">The rig in its place.</param>
    /// <param name="printed">Its printed parts.</param>
    /// <param name="part">The part that is asked for: one of them, or a small part that the rig could have.</param>
    /// <param name="width">[mm] Width, 60 or more.</param>
    /// <exception cref="ArgumentException">The part has no places.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The width is under 60 mm.</exception>
    public static string Of(RigLayout layout, PrintedParts printed, PrintedPart part, double width = 120)
    {
        ArgumentNullException.ThrowIfNull(layout);
        ArgumentNullException.ThrowIfNull(printed);
        ArgumentNullException.ThrowIfNull(part);
        ArgumentOutOfRangeException.ThrowIfLessThan(width, 60);
        if (part.Spots.Count == 0)
        {
            throw new ArgumentException("The part has no places.", nameof(part));
        }

        var (slant, elements) = part.Place is null
            ? SmallPartFigure.Of(layout, part, width)
            : Joints(layout, printed.Places, part.Place, width);
        var title = Words.Of("screen.stand.title", part.Number, Words.Count("screen.stand.places", part.Spots.Count));
        return SvgWriter.Write(
            new Sheet(slant.Paper, title, elements),
            SvgOptions.Inline with
            {
                IdPrefix = $"stand-{part.Number}-",
            }
        );
    }

    private static (Slant Slant, List<Element> Elements) Joints(
        RigLayout layout,
        IReadOnlyList<PrintedJoint> fittings,
        PrintedJoint part,
        double width
    )
    {
        var first = part.Joints[0];
        var row = layout.Rows.First(row => row.Number == first.Row);
        var (from, to) = Slant.Window(row, first.At.X);
        bool Seen(Vector3 p) => p.X >= from && p.X <= to;
        var tubes = layout
            .Stand.Members.Where(tube => tube.Row == row.Number && Seen(tube.From) && Seen(tube.To))
            .ToList();
        var joints = fittings
            .SelectMany(fitting => fitting.Joints.Select(joint => (fitting.Number, joint.Row, joint.At)))
            .Where(joint => joint.Row == row.Number && Seen(joint.At))
            .ToLookup(joint => joint.Number == part.Number);
        var slant = new Slant(
            tubes.SelectMany(tube => new[] { tube.From, tube.To }).Concat(joints.SelectMany(j => j).Select(j => j.At)),
            width
        );
        List<Element> elements =
        [
            .. tubes.Select(tube => new Line(slant.At(tube.From), slant.At(tube.To), Pen.Thin)),
            .. joints[false].Select(joint => new Circle(slant.At(joint.At), 1, Pen.Thin, Fill.Paper)),
        ];
        List<Box> taken = [];
        elements.AddRange(slant.Marks(part.Number, joints[true].Select(joint => joint.At), taken));
        elements.AddRange(
            joints[false].SelectMany(joint => slant.Label(joint.Number, joint.At, TextStyle.Small, taken))
        );
        return (slant, elements);
    }
}
