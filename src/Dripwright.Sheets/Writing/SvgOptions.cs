using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Writing;

/// <summary>What an SVG file carries besides the drawing.</summary>
public sealed record SvgOptions
{
    /// <summary>A file that looks right on its own: style sheet and font inside.</summary>
    public static SvgOptions File { get; } = new() { EmbedFont = true };

    /// <summary>A piece of a web page, which brings <see cref="SvgWriter.PageStyles"/> and the font itself.</summary>
    public static SvgOptions Inline { get; } = new() { EmbedStyles = false, Fluid = true };

    /// <summary>Whether the style sheet is inside.</summary>
    public bool EmbedStyles { get; init; } = true;

    /// <summary>Whether both weights of the font are inside (about 70 kB).</summary>
    public bool EmbedFont { get; init; }

    /// <summary>Leave out width and height, so that a page decides them.</summary>
    public bool Fluid { get; init; }

    /// <summary>Colours of the embedded style sheet.</summary>
    public Palette Palette { get; init; } = Palette.Light;

    /// <summary>Put before every id, so that several sheets can stand on one page.</summary>
    public string IdPrefix { get; init; } = "";

    /// <summary>
    /// Whether its parts can be reached and pressed: then it is a group of things to a screen reader, not one picture.
    /// </summary>
    public bool Live { get; init; }

    /// <summary>More style rules, put after the embedded ones.</summary>
    internal string MoreStyles { get; init; } = "";

    /// <summary>Part of the sheet to show; null for the whole of it.</summary>
    public Box? Window { get; init; }
}
