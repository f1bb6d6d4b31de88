using System.Globalization;

namespace Dripwright.Sheets.Model;

/// <summary>Which point of a text stands at the given place.</summary>
public enum Anchor
{
    /// <summary>Its left end.</summary>
    Start,

    /// <summary>Its middle.</summary>
    Middle,

    /// <summary>Its right end.</summary>
    End,
}

/// <summary>The two weights of the font.</summary>
public enum Weight
{
    /// <summary>Text.</summary>
    Regular,

    /// <summary>Headings and what must not be missed.</summary>
    Bold,
}

/// <summary>How a text is set.</summary>
/// <param name="Size">[mm] Font size (body height); capitals are 0.66 of it. Above 0.</param>
/// <param name="Anchor">Which point of it stands at the given place; always on the baseline.</param>
/// <param name="Weight">Regular or bold.</param>
/// <param name="Role">What it stands for.</param>
/// <param name="Rotation">[°] Clockwise about the anchor; -90 reads from below.</param>
public sealed record TextStyle(
    double Size,
    Anchor Anchor = Anchor.Start,
    Weight Weight = Weight.Regular,
    DrawnRole Role = DrawnRole.Ink,
    double Rotation = 0
)
{
    /// <summary>Small print: labels of the title block, units. 2.5 mm (7 pt).</summary>
    public static TextStyle Small { get; } = new(2.5, Role: DrawnRole.Explain);

    /// <summary>Dimensions and notes on drawings. 3.2 mm (9 pt).</summary>
    public static TextStyle Note { get; } = new(3.2);

    /// <summary>Running text. 3.9 mm (11 pt).</summary>
    public static TextStyle Body { get; } = new(3.9);

    /// <summary>Headings. 5 mm (14 pt), bold.</summary>
    public static TextStyle Heading { get; } = new(5, Weight: Weight.Bold);

    /// <summary>Title of a sheet. 7 mm (20 pt), bold.</summary>
    public static TextStyle Title { get; } = new(7, Weight: Weight.Bold);

    /// <summary>The same, in the middle of its place.</summary>
    public TextStyle Middle => this with { Anchor = Anchor.Middle };

    /// <summary>The same, ending at its place.</summary>
    public TextStyle End => this with { Anchor = Anchor.End };

    /// <summary>The same, bold.</summary>
    public TextStyle Bold => this with { Weight = Weight.Bold };

    // The generated text would name the derived styles, which name theirs, without end.
    /// <inheritdoc/>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Weight} {Size} mm, {Anchor}, {Role}, turned {Rotation}°");

    /// <summary>[mm] Distance of baselines in running text.</summary>
    public double LineHeight => Size * 1.35;

    /// <summary>[mm] Height of capitals and figures.</summary>
    public double CapHeight => Size * 0.66;
}
