using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Chemistry.Solutions;

namespace Dripwright.Engine.Nutrients.Loop;

/// <summary>The running sums of one forecast.</summary>
internal sealed class LoopRun(LoopForecast forecast, TopUpStrategy strategy)
{
    private readonly double bleedPerUptake = Guard.NotNegative(forecast.Bleed.BleedPerUptake, nameof(forecast));
    private readonly List<LoopEvening> evenings = [];
    private readonly SortedDictionary<Constituent, int> past = [];
    private readonly SortedDictionary<Constituent, int> wanting = [];
    private LoopState state = forecast.Start;
    private Composition madeUp = Composition.Nothing;
    private Composition takenUp = Composition.Nothing;
    private Composition lost = Composition.Nothing;
    private double water;
    private double letOut;
    private double strengths;
    private int dumps;

    public void Day(LoopUptake uptake)
    {
        double bleed = bleedPerUptake * uptake.WaterPerDay;
        double factor = Factor(uptake, bleed);
        LoopStep step = Step(uptake, bleed, factor);
        state = step.State;
        madeUp += step.MadeUp;
        takenUp += step.TakenUp;
        lost += step.Bled;
        water += uptake.WaterPerDay + bleed;
        letOut += bleed;
        strengths += factor * (uptake.WaterPerDay + bleed);
        int day = evenings.Count + 1;
        foreach (Constituent one in step.Wanting)
        {
            wanting.TryAdd(one, day);
        }

        foreach ((Constituent one, double limit) in forecast.Limits)
        {
            if (state.Pots[one] > limit)
            {
                past.TryAdd(one, day);
            }
        }

        bool dump = forecast.Bleed.DumpAbove is { } limits && limits.Any(l => state.Pots[l.Key] > l.Value);
        if (dump)
        {
            Dump();
        }

        if (TooStrong(state.Reservoir) || TooStrong(state.Pots))
        {
            Stopped = Unanswerable.Of("loop-too-strong", day);
            return;
        }

        evenings.Add(
            new LoopEvening(day, state, forecast.EcOf(state.Reservoir), forecast.EcOf(state.Pots), factor, dump)
        );
    }

    public LoopOutcome Outcome()
    {
        double kilograms = strengths * (forecast.Cost?.KilogramsPerCubicMetre ?? 0);
        double nitrate = strategy.Recipe[Constituent.NitrateNitrogen];
        double gone =
            nitrate > 0
                ? lost[Constituent.NitrateNitrogen] / nitrate * (forecast.Cost?.KilogramsPerCubicMetre ?? 0)
                : 0;
        decimal price = forecast.Cost?.PricePerKilogram ?? 0;
        return new LoopOutcome(
            strategy,
            evenings,
            water,
            letOut,
            dumps,
            kilograms,
            gone,
            (decimal)kilograms * price,
            (decimal)gone * price,
            past,
            wanting,
            madeUp,
            takenUp,
            lost,
            Stopped
        );
    }

    /// <summary>Why the run cannot go on; null while it can.</summary>
    public Unanswerable? Stopped { get; private set; }

    private bool TooStrong(Composition solution) =>
        Speciation.Within(solution, forecast.PH, SolutionConditions.Closed).IonicStrength
        > Speciation.HighestIonicStrength;

    private LoopStep Step(LoopUptake uptake, double bleed, double factor) =>
        LoopDay.Run(forecast.System, state, uptake, forecast.Water + (strategy.Recipe * factor), bleed);

    private double Factor(LoopUptake uptake, double bleed)
    {
        if (strategy.HeldEc is not { } held || uptake.WaterPerDay + bleed <= 0)
        {
            return strategy.Factor;
        }

        var over = new Over(this, uptake, bleed, held);
        if (over.At(0) >= 0)
        {
            return 0;
        }

        return over.At(LoopForecast.LargestFactor) <= 0
            ? LoopForecast.LargestFactor
            : Bracket.Root(over, 0, LoopForecast.LargestFactor);
    }

    /// <summary>The reservoir is let out whole and mixed anew, at full strength or at the EC that is held.</summary>
    private void Dump()
    {
        double volume = forecast.System.Reservoir;
        double factor = strategy.HeldEc is { } held
            ? StrengthScaling.ToEc(forecast.Water, strategy.Recipe, held, forecast.PH).Value?.Factor ?? 1
            : 1;
        Composition fresh = forecast.Water + (strategy.Recipe * factor);
        lost += state.Reservoir * volume;
        madeUp += fresh * volume;
        water += volume;
        letOut += volume;
        strengths += factor * volume;
        dumps++;
        state = state with { Reservoir = fresh };
    }

    private readonly struct Over(LoopRun run, LoopUptake uptake, double bleed, Ec held) : IOneNumber
    {
        public double At(double x) =>
            run.ForecastEc(run.Step(uptake, bleed, x).State.Reservoir) - held.DecisiemensPerMetre;
    }

    private double ForecastEc(Composition solution) => forecast.EcOf(solution).DecisiemensPerMetre;
}
