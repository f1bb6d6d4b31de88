using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Water;

/// <summary>The water surface at one station of a drain.</summary>
/// <param name="Station">[m] Station of the run.</param>
/// <param name="Invert">[m] Height of the pipe's inside bottom.</param>
/// <param name="Depth">[m] Water depth over it; may exceed the bore where the pipe runs full.</param>
/// <param name="Flow">[m³/s] Flow.</param>
/// <param name="Velocity">[m/s] Mean velocity.</param>
public readonly record struct SurfacePoint(double Station, double Invert, double Depth, double Flow, double Velocity);

/// <summary>One drain run with its water.</summary>
/// <param name="Run">Label of the run; a middle exit gives two, told apart by "left" and "right".</param>
/// <param name="Row">Row, from 1; 0 for the collector.</param>
/// <param name="Flow">[m³/s] At its low end.</param>
/// <param name="Capacity">[m³/s] Full-bore flow by Manning; 0 for a level pipe, where slope gives none.</param>
/// <param name="Inflows">The pipe and what runs into it, from which the surface was computed.</param>
/// <param name="Surface">High end to low end.</param>
/// <param name="DeepestStation">[m] Where it is fullest.</param>
/// <param name="DeepestRatio">[-] Depth over bore there, at most 1.</param>
/// <param name="Pressurised">True where it runs full somewhere.</param>
/// <param name="FreeFall">True when it falls freely out of its low end.</param>
/// <param name="Stored">[m³] Water in transit.</param>
/// <param name="Half">Which half of a drain with a middle exit it is.</param>
public sealed record DrainRunPlan(
    string Run,
    int Row,
    double Flow,
    double Capacity,
    DrainRun Inflows,
    IReadOnlyList<SurfacePoint> Surface,
    double DeepestStation,
    double DeepestRatio,
    bool Pressurised,
    bool FreeFall,
    double Stored,
    DrainHalf Half = DrainHalf.Whole
)
{
    private const double Coarse = 1e-3;
    private readonly Lazy<double> _margin = new(() => Flow > 0 ? DrainCapacity.GrowthTo(Inflows, 1, Coarse) : 0);

    /// <summary>
    /// [-] The factor by which all inflows may grow before the pipe runs full, from the same water surface as <see cref="Pressurised"/>:
    /// under 1 exactly where it does; 0 without any flow, or where the water below alone fills it. Found when it is first asked for, since it
    /// takes a dozen surfaces.
    /// </summary>
    public double Margin => _margin.Value;

    /// <summary>Label of the run of pipe, without its half.</summary>
    public string Label => Half == DrainHalf.Whole ? Run : Run[..Run.LastIndexOf(' ')];

    /// <summary>What to call it.</summary>
    public Phrase Name =>
        Half switch
        {
            DrainHalf.Left => Phrase.Of("half.left", Label),
            DrainHalf.Right => Phrase.Of("half.right", Label),
            _ => Phrase.Plain(Run),
        };
}

/// <summary>Which half of a drain with a middle exit.</summary>
public enum DrainHalf
{
    /// <summary>All of a drain that leaves at its end.</summary>
    Whole,

    /// <summary>From the left end to the exit.</summary>
    Left,

    /// <summary>From the right end to the exit.</summary>
    Right,
}

/// <summary>The drain of a pot.</summary>
/// <param name="Row">Row, from 1.</param>
/// <param name="SumpVolume">[m³] Water standing under the sill, in the pores of the medium and between.</param>
/// <param name="Head">[m] Water over the sill while the pump runs.</param>
/// <param name="MostFlow">[m³/s] What the elbow takes before the pot spills over its rim.</param>
/// <param name="SecondsToEmpty">[s] From full to the sill, once watering stops.</param>
/// <param name="PondingPots">Pots into which the drain's water backs up, from 1.</param>
/// <param name="FirstToSpill">Pot that spills first when the drain is blocked at its low end, from 1.</param>
/// <param name="SecondsToSpill">[s] Until it spills, with the pump running on; 0 flow gives 0.</param>
/// <param name="SpillsAtVent">True when the vent runs over before any pot.</param>
public sealed record PotDrainPlan(
    int Row,
    double SumpVolume,
    double Head,
    double MostFlow,
    double SecondsToEmpty,
    IReadOnlyList<int> PondingPots,
    int FirstToSpill,
    double SecondsToSpill,
    bool SpillsAtVent
);

/// <summary>Everything computed of the drains.</summary>
/// <remarks>Method pages: docs/methods/drain-water-surface.md, pot-drain.md</remarks>
/// <param name="Runs">Row drains, under-row returns, and the collector.</param>
/// <param name="Pots">One for each row.</param>
/// <param name="SlopeDrop">[m] Height the slope costs from the highest drain end to the reservoir's mouth, in the longest way.</param>
/// <param name="MouthOverRim">[m] Height of the last elbow's lowest inside point over the reservoir's rim; negative where water cannot fall in.</param>
public sealed record DrainPlan(
    IReadOnlyList<DrainRunPlan> Runs,
    IReadOnlyList<PotDrainPlan> Pots,
    double SlopeDrop,
    double MouthOverRim
);
