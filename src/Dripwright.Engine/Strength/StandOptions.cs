using Dripwright.Engine.Strength.Frame;
using Dripwright.Engine.Strength.Loads;
using Dripwright.Engine.Strength.Sections;

namespace Dripwright.Engine.Strength;

/// <summary>Slanting tubes of a stand.</summary>
[Flags]
public enum Bracing
{
    /// <summary>None.</summary>
    None = 0,

    /// <summary>Along the back, in the first, the last and every third module.</summary>
    Along = 1,

    /// <summary>Across every frame.</summary>
    Across = 2,

    /// <summary>Along and across.</summary>
    Both = Along | Across,
}

/// <summary>What the strength of a stand is computed with beyond its layout.</summary>
public sealed record StandOptions
{
    /// <summary>The tube; that of the layout where null.</summary>
    public TubeSection? Tube { get; init; }

    /// <summary>The steel; what the tube's kind may be counted on for where null.</summary>
    public Steel? Steel { get; init; }

    /// <summary>[-] Share of the wall that rust or wear has taken: 0 for new tube, up to 0.9.</summary>
    public double WallLoss { get; init; }

    /// <summary>The printed joints.</summary>
    public JointValues Joint { get; init; } = new();

    /// <summary>Slanting tubes.</summary>
    public Bracing Bracing { get; init; }

    /// <summary>Frames put between those of the layout in each module: 1 makes every module half as long.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Less than 0 or more than 20.</exception>
    public int ExtraFrames
    {
        get;
        init
        {
            ArgumentOutOfRangeException.ThrowIfNegative(value);
            ArgumentOutOfRangeException.ThrowIfGreaterThan(value, 20);
            field = value;
        }
    }

    /// <summary>Beam elements each piece of tube is divided into; 1 is exact in first order.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Less than 1 or more than 100.</exception>
    public int Divisions
    {
        get;
        init
        {
            ArgumentOutOfRangeException.ThrowIfNegativeOrZero(value);
            ArgumentOutOfRangeException.ThrowIfGreaterThan(value, 100);
            field = value;
        }
    } = 1;

    /// <summary>Loads.</summary>
    public LoadValues Loads { get; init; } = new();

    /// <summary>True to try what would cure the weakest place.</summary>
    public bool TryCures { get; init; } = true;
}
