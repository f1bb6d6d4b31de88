using System.Globalization;
using Dripwright.Engine.Printed;
using Dripwright.Language;
using Dripwright.Workbench.Editing;

namespace Dripwright.Workbench.Printed;

/// <summary>How a printed part is told. Slicers and printers speak millimetres everywhere.</summary>
internal static class PrintedWords
{
    /// <summary>"12.5 g".</summary>
    /// <param name="kilograms">[kg] A mass.</param>
    public static string Grams(double kilograms) =>
        string.Create(CultureInfo.InvariantCulture, $"{kilograms * 1000:0.#} g");

    /// <summary>"4.2 m".</summary>
    /// <param name="metres">[m] A length of filament.</param>
    public static string Metres(double metres) => string.Create(CultureInfo.InvariantCulture, $"{metres:0.0} m");

    /// <summary>"0.3 mm".</summary>
    /// <param name="metres">[m] A measure.</param>
    public static string Millimetres(double metres) =>
        string.Create(CultureInfo.InvariantCulture, $"{metres * 1000:0.##} mm");

    /// <summary>"49 °C".</summary>
    /// <param name="kelvins">[K] A temperature.</param>
    public static string Celsius(double kelvins) =>
        string.Create(CultureInfo.InvariantCulture, $"{kelvins - 273.15:0} °C");

    /// <summary>What kind of part it is.</summary>
    public static string Name(PrintDesign fitting) => Words.Of($"printed.{fitting.Kind}");

    /// <summary>Length, width and height as printed.</summary>
    public static string Size(PrintDesign fitting)
    {
        var size = fitting.Box.Size;
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{size.X * 1000:0} × {size.Y * 1000:0} × {size.Z * 1000:0} mm"
        );
    }

    /// <summary>Whether it fits the printer.</summary>
    public static string Fit(PrintDesign fitting) =>
        Words.Of(
            fitting.Bed.TooTall ? "printed.fit.tall"
            : fitting.Bed.Place is BedPlace.Straight ? "printed.fit.straight"
            : fitting.Bed.Place is BedPlace.Slanted ? "printed.fit.slanted"
            : "printed.fit.large"
        );

    /// <summary>What the wall was made for, and whose figure that is.</summary>
    public static string Wall(ShownPart part) =>
        part.Part.Moment switch
        {
            MomentSource.Frame => Words.Of("printed.wall.frame", Moment(part)),
            MomentSource.Usual => Words.Of("printed.wall.usual", Moment(part)),
            _ => part.Design.Hanger is { } hanger
                ? Words.Of("printed.wall.hanger", Newtons(hanger.Load), Newtons(hanger.Carries))
                : "",
        };

    /// <summary>A phrase as a sentence.</summary>
    public static string Sentence(string text) => char.ToUpperInvariant(text[0]) + text[1..] + ".";

    /// <summary>What a small part asks for and is measured by; the same fields stand in the room of the stand.</summary>
    public static IEnumerable<FormField> Inputs(SmallPart small)
    {
        string[] measures = small.Kind switch
        {
            PrintedKind.LineRest => ["rimThickness"],
            PrintedKind.StakeHolder => ["rimThickness", "stakeDiameter"],
            PrintedKind.DrillGuide => ["pilotDrill"],
            _ => [],
        };
        return measures.Select(name => $"printing.smallParts.{name}").Prepend(small.Field).Select(FormField.At);
    }

    private static string Newtons(double force) => string.Create(CultureInfo.InvariantCulture, $"{force:0} N");

    private static string Moment(ShownPart part) =>
        string.Create(CultureInfo.InvariantCulture, $"{part.Design.Parameters.Load.Moment:0.#} N m");
}
