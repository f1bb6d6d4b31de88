using Dripwright.Engine.Layout;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Parts;

/// <summary>Names the tool that makes a hole.</summary>
internal static class HoleTool
{
    /// <summary>[m] Twist drills of a household end about here; beyond it a hole saw cuts cleaner. Common practice.</summary>
    private const double LargestDrill = 0.013;

    /// <summary>Key of a hole saw's name: a hole saw needs a pilot hole.</summary>
    public const string Saw = "hole.tool.saw";

    private const string Punch = "hole.tool.punch";
    private const string Drill = "hole.tool.drill";

    /// <summary>The tool with its size, such as "hole saw 1 1/8 in".</summary>
    /// <param name="diameter">[m] Diameter of the hole.</param>
    /// <param name="use">What it is for.</param>
    /// <param name="hose">True in hose, false in rigid pipe and pots.</param>
    public static Phrase For(double diameter, HoleUse use, bool hose)
    {
        var tool =
            hose && use == HoleUse.Emitter ? Punch
            : diameter <= LargestDrill ? Drill
            : Saw;
        return Phrase.Of(tool, Measured.Tool(diameter));
    }
}
