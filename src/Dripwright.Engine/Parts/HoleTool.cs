using System.Globalization;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Parts;

/// <summary>Names the tool that makes a hole.</summary>
internal static class HoleTool
{
    /// <summary>[m] Twist drills of a household end about here; beyond it a hole saw cuts cleaner. Common practice.</summary>
    private const double LargestDrill = 0.013;

    /// <summary>The tool with its size, such as "hole saw 1 1/8 in".</summary>
    /// <param name="diameter">[m] Diameter of the hole.</param>
    /// <param name="use">What it is for.</param>
    /// <param name="hose">True in hose, false in rigid pipe and pots.</param>
    /// <param name="units">Units to say the size in.</param>
    public static string For(double diameter, HoleUse use, bool hose, UnitSystem units)
    {
        string tool =
            hose && use == HoleUse.Emitter ? "punch"
            : diameter <= LargestDrill ? "drill"
            : "hole saw";
        return $"{tool} {Size(diameter, units)}";
    }

    /// <summary>A tool's size as the tool is marked: a fraction of an inch where it is one, else decimals; or millimetres.</summary>
    /// <param name="diameter">[m] Diameter.</param>
    /// <param name="units">Unit system.</param>
    public static string Size(double diameter, UnitSystem units)
    {
        if (units == UnitSystem.Metric)
        {
            return string.Create(CultureInfo.InvariantCulture, $"{diameter * 1000:0.#} mm");
        }

        double sixteenths = diameter / 0.0254 * 16;
        int whole = (int)Math.Round(sixteenths);
        if (whole == 0 || Math.Abs(sixteenths - whole) > 0.02)
        {
            return string.Create(CultureInfo.InvariantCulture, $"{diameter / 0.0254:0.##} in");
        }

        int bottom = 16;
        int rest = whole % 16;
        while (rest > 0 && rest % 2 == 0)
        {
            rest /= 2;
            bottom /= 2;
        }

        string inches = (whole / 16).ToString(CultureInfo.InvariantCulture);
        string fraction = string.Create(CultureInfo.InvariantCulture, $"{rest}/{bottom}");
        return rest == 0 ? $"{inches} in"
            : whole < 16 ? $"{fraction} in"
            : $"{inches} {fraction} in";
    }
}
