using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Chemistry.Solutions;

namespace Dripwright.Engine.Nutrients.Loop;

/// <summary>The evening of one day of a forecast.</summary>
/// <param name="Day">Day, from 1.</param>
/// <param name="State">What reservoir and pots hold, after any dump.</param>
/// <param name="ReservoirEc">EC of the reservoir.</param>
/// <param name="PotEc">EC of the water in the pots.</param>
/// <param name="Factor">[-] Share of the recipe in the day's make-up.</param>
/// <param name="Dumped">Whether the reservoir was dumped that evening.</param>
public sealed record LoopEvening(int Day, LoopState State, Ec ReservoirEc, Ec PotEc, double Factor, bool Dumped);

/// <summary>How a loop fares under one way of topping up.</summary>
/// <param name="Strategy">How it was topped up.</param>
/// <param name="Evenings">Day by day.</param>
/// <param name="Water">[m³] Make-up and refills.</param>
/// <param name="LetOut">[m³] Bled and dumped.</param>
/// <param name="Dumps">How often the reservoir was dumped.</param>
/// <param name="FertiliserKilograms">[kg] Salts used.</param>
/// <param name="LetOutKilograms">[kg] Of those let out again, by the nitrate in what was let out.</param>
/// <param name="Cost">[money] Price of the salts used.</param>
/// <param name="LetOutCost">[money] Price of those let out.</param>
/// <param name="PastLimit">First day on which the pots held more than a limit, by constituent.</param>
/// <param name="Wanting">First day on which the plants got less than they take, by constituent.</param>
/// <param name="MadeUp">[mol] Brought in all, refills included.</param>
/// <param name="TakenUp">[mol] Taken in all.</param>
/// <param name="Lost">[mol] Let out in all.</param>
/// <param name="Stopped">Why the forecast ends before its last day; null when it does not.</param>
public sealed record LoopOutcome(
    TopUpStrategy Strategy,
    IReadOnlyList<LoopEvening> Evenings,
    double Water,
    double LetOut,
    int Dumps,
    double FertiliserKilograms,
    double LetOutKilograms,
    decimal Cost,
    decimal LetOutCost,
    IReadOnlyDictionary<Constituent, int> PastLimit,
    IReadOnlyDictionary<Constituent, int> Wanting,
    Composition MadeUp,
    Composition TakenUp,
    Composition Lost,
    Unanswerable? Stopped
);

/// <summary>A loop over weeks: day by day, each day exactly, with the top-up chosen in the morning.</summary>
/// <remarks>
/// The pH does not enter the balance; EC is reckoned at the pH given. Nothing precipitates and nothing is held by the coir;
/// what stands in the pots is well mixed. Method page: docs/methods/closed-loop.md
/// </remarks>
/// <param name="System">The loop.</param>
/// <param name="Start">What it holds on the first morning.</param>
/// <param name="Water">[mol/m³] What the water it is topped up with holds.</param>
/// <param name="Uptake">What the plants take, stretch after stretch.</param>
public sealed record LoopForecast(
    LoopSystem System,
    LoopState Start,
    Composition Water,
    IReadOnlyList<LoopUptake> Uptake
)
{
    /// <summary>[-] Largest share of the recipe that is used to hold an EC.</summary>
    public const double LargestFactor = 3;

    /// <summary>[-] pH at which EC is reckoned.</summary>
    public double PH { get; init; } = 5.8;

    /// <summary>When water is let out on purpose.</summary>
    public BleedRule Bleed { get; init; } = new();

    /// <summary>[mol/m³] Limits that are reported when the pots pass them.</summary>
    public IReadOnlyDictionary<Constituent, double> Limits { get; init; } = new Dictionary<Constituent, double>();

    /// <summary>Weight and price of the recipe; null when they are not known.</summary>
    public RecipeCost? Cost { get; init; }

    /// <summary>Runs the loop under one way of topping up.</summary>
    /// <param name="strategy">How it is topped up.</param>
    /// <exception cref="ArgumentOutOfRangeException">An amount is negative, or the plants take up all of the feed.</exception>
    public LoopOutcome Run(TopUpStrategy strategy)
    {
        ArgumentNullException.ThrowIfNull(strategy);
        var run = new LoopRun(this, strategy);
        foreach (var stretch in Uptake)
        {
            for (var day = 0; day < stretch.Days && run.Stopped is null; day++)
            {
                run.Day(stretch);
            }
        }

        return run.Outcome();
    }

    /// <summary>Runs the loop under several ways, to be laid side by side.</summary>
    /// <param name="strategies">The ways.</param>
    public IReadOnlyList<LoopOutcome> Compare(IReadOnlyList<TopUpStrategy> strategies)
    {
        ArgumentNullException.ThrowIfNull(strategies);
        return [.. strategies.Select(Run)];
    }

    internal Speciation Divided(Composition solution) => Speciation.Within(solution, PH, SolutionConditions.Closed);

    internal Ec EcOf(Composition solution) => Conductivity.Of(solution, PH, SolutionConditions.Closed);
}
