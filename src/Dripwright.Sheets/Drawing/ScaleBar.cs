using System.Globalization;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Drawing;

/// <summary>A bar with lengths of the thing, which stays true when a copier shrinks the sheet.</summary>
public static class ScaleBar
{
    private const double Foot = 0.3048;

    /// <summary>The bar, about 40 to 80 mm long and 8 mm high with its figures.</summary>
    /// <param name="at">Left end of the bar; figures stand above it.</param>
    /// <param name="scale">Scale of the view.</param>
    /// <param name="units">Units of the figures.</param>
    public static Group Draw(Point at, Scale scale, Units units)
    {
        ArgumentNullException.ThrowIfNull(scale);
        var (step, name) = Step(scale, units);
        var metres =
            units == Units.Metric ? 1
            : name == "ft" ? Foot
            : Foot / 12;
        var length = scale.OnPaper(step * metres);
        var elements = new List<Element>();
        for (var i = 0; i < 4; i++)
        {
            var part = new Box(at.X + (i * length), at.Y, length, 1.5);
            elements.Add(new Rectangle(part, Pen.Thin, i % 2 == 0 ? Fill.Ink : Fill.Paper));
        }

        for (var i = 0; i <= 4; i++)
        {
            var figure = (units == Units.Metric && name == "mm" ? step * 1000 : step) * i;
            var text = figure.ToString("0.##", CultureInfo.InvariantCulture);
            var place = new Point(at.X + (i * length), at.Y - 1);
            elements.Add(new Text(text, place, TextStyle.Small.Middle));
        }

        elements.Add(new Text(name, new(at.X + (4 * length) + 3, at.Y - 1), TextStyle.Small));
        return new(elements) { Class = "scale-bar" };
    }

    private static (double Step, string Name) Step(Scale scale, Units units)
    {
        if (units == Units.Metric)
        {
            double[] steps = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5];
            var step = Pick(steps, s => scale.OnPaper(s));
            return (step, step < 0.1 ? "mm" : "m");
        }

        double[] inches = [0.5, 1, 2, 3];
        double[] feet = [0.5, 1, 2, 5, 10];
        var inch = inches.FirstOrDefault(s => scale.OnPaper(s * Foot / 12) is >= 9 and <= 20);
        return inch > 0 ? (inch, "in") : (Pick(feet, s => scale.OnPaper(s * Foot)), "ft");
    }

    private static double Pick(double[] steps, Func<double, double> onPaper)
    {
        var step = steps.FirstOrDefault(s => onPaper(s) >= 9);
        return step > 0 ? step : steps[^1];
    }
}
