using Dripwright.Engine.Chemistry.Formulas;

namespace Dripwright.Engine.Nutrients.Loop;

/// <summary>A reservoir, the water in the pots, and the feed that goes round between them.</summary>
public sealed record LoopSystem
{
    /// <summary>A loop by its volumes and its feed.</summary>
    /// <param name="reservoir">[m³] Water in the reservoir, held by topping up.</param>
    /// <param name="pots">[m³] Water in all pots.</param>
    /// <param name="feedPerDay">[m³/d] What is dripped a day, uptake and drain together.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is not positive.</exception>
    public LoopSystem(double reservoir, double pots, double feedPerDay)
    {
        Reservoir = Guard.Positive(reservoir);
        Pots = Guard.Positive(pots);
        FeedPerDay = Guard.Positive(feedPerDay);
    }

    /// <summary>[m³] Water in the reservoir.</summary>
    public double Reservoir { get; }

    /// <summary>[m³] Water in all pots.</summary>
    public double Pots { get; }

    /// <summary>[m³/d] What is dripped a day.</summary>
    public double FeedPerDay { get; }
}

/// <summary>What plants take over a stretch of days.</summary>
/// <param name="Days">[d] How long, whole days.</param>
/// <param name="WaterPerDay">[m³/d] Water taken up a day, less than the feed.</param>
/// <param name="Constant">[mol/m³] Taken up per volume of water, whatever the pots hold.</param>
/// <param name="Proportion">[-] Taken up on top, as a share of the concentration in the pots.</param>
public sealed record LoopUptake(int Days, double WaterPerDay, Composition Constant, Composition Proportion);

/// <summary>What the loop holds.</summary>
/// <param name="Reservoir">[mol/m³] In the reservoir.</param>
/// <param name="Pots">[mol/m³] In the pots.</param>
public sealed record LoopState(Composition Reservoir, Composition Pots);

/// <summary>One day's end of a loop, and what went in and out that day.</summary>
/// <param name="State">What the loop holds.</param>
/// <param name="MadeUp">[mol] Brought by the make-up.</param>
/// <param name="TakenUp">[mol] Taken by the plants.</param>
/// <param name="Bled">[mol] Let out.</param>
/// <param name="Wanting">What the plants wanted more of than came.</param>
public sealed record LoopStep(
    LoopState State,
    Composition MadeUp,
    Composition TakenUp,
    Composition Bled,
    IReadOnlyList<Constituent> Wanting
);
