using Dripwright.Engine.Physics;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Stands.Frame;
using Dripwright.Engine.Stands.Loads;
using Dripwright.Engine.Stands.Sections;

namespace Dripwright.Engine.Stands;

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

    /// <summary>Slanting tubes beyond those of the layout.</summary>
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

    /// <summary>[-] Level force that the floor bears over what presses on a foot.</summary>
    public double Friction { get; init; } = FloorFriction.Of(FootMaterial.Printed, StandFloor.Concrete);

    /// <summary>True where its back is held at every module joint by something that stands firm.</summary>
    public bool Tied { get; init; }

    /// <summary>True where people may lean on the stand.</summary>
    public bool Leaning { get; init; } = true;

    /// <summary>
    /// True for the multiple at which each combination buckles; false for the lowest of all only, and only up to
    /// what is of interest: a single factorisation tells that it lies beyond.
    /// </summary>
    public bool EveryBuckling { get; init; } = true;

    /// <summary>True to judge again on feet that slip freely and on feet that cannot: see <see cref="Checks.RowStand"/>.</summary>
    public bool Bounds { get; init; }

    /// <summary>Modules after which a longer row is cut off, since its middle repeats itself; null for whole rows.</summary>
    public int? MostModules { get; init; }

    /// <summary>Asks to stop; heard between loadings.</summary>
    public CancellationToken Stop { get; init; }

    /// <summary>What a rig says of its stand.</summary>
    /// <param name="rig">The rig.</param>
    public static StandOptions Of(Rig rig)
    {
        ArgumentNullException.ThrowIfNull(rig);
        var stand = rig.Stand;
        var joint = new JointValues();
        return new StandOptions
        {
            Steel = Steels.Named(stand.Steel),
            WallLoss = 1 - stand.WallLeft,
            Leaning = stand.Leaning,
            Friction = FloorFriction.Of(stand.Feet, stand.Floor),
            Tied = stand.Tied,
            Joint = joint with
            {
                // A kilogram at the end of a metre turns the joint by what the end sinks.
                Stiffness = stand.JointSink is { } sink ? StandardGravity.Value / sink : joint.Stiffness,
                SlipMoment = stand.JointSlip ?? joint.SlipMoment,
                PullOut = stand.JointPull ?? joint.PullOut,
            },
            EveryBuckling = false,
            MostModules = 4,
        };
    }
}
