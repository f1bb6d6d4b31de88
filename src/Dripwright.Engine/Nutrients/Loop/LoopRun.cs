using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Chemistry.Solutions;

namespace Dripwright.Engine.Nutrients.Loop;

/// <summary>The running sums of one forecast.</summary>
internal sealed class LoopRun(LoopForecast forecast, TopUpStrategy strategy)
{
    private readonly double _bleedPerUptake = Guard.NotNegative(forecast.Bleed.BleedPerUptake, nameof(forecast));
    private readonly List<LoopEvening> _evenings = [];
    private readonly SortedDictionary<Constituent, int> _past = [];
    private readonly SortedDictionary<Constituent, int> _wanting = [];
    private LoopState _state = forecast.Start;
    private Composition _madeUp = Composition.Nothing;
    private Composition _takenUp = Composition.Nothing;
    private Composition _lost = Composition.Nothing;
    private double _water;
    private double _letOut;
    private double _strengths;
    private int _dumps;

    public void Day(LoopUptake uptake)
    {
        var bleed = _bleedPerUptake * uptake.WaterPerDay;
        var factor = Factor(uptake, bleed);
        var step = Step(uptake, bleed, factor);
        _state = step.State;
        _madeUp += step.MadeUp;
        _takenUp += step.TakenUp;
        _lost += step.Bled;
        _water += uptake.WaterPerDay + bleed;
        _letOut += bleed;
        _strengths += factor * (uptake.WaterPerDay + bleed);
        var day = _evenings.Count + 1;
        foreach (var one in step.Wanting)
        {
            _wanting.TryAdd(one, day);
        }

        foreach ((var one, var limit) in forecast.Limits)
        {
            if (_state.Pots[one] > limit)
            {
                _past.TryAdd(one, day);
            }
        }

        var dump = forecast.Bleed.DumpAbove is { } limits && limits.Any(l => _state.Pots[l.Key] > l.Value);
        if (dump)
        {
            Dump();
        }

        var (reservoir, pots) = (forecast.Divided(_state.Reservoir), forecast.Divided(_state.Pots));
        if (TooStrong(reservoir) || TooStrong(pots))
        {
            Stopped = Unanswerable.Of("loop-too-strong", day);
            return;
        }

        _evenings.Add(new LoopEvening(day, _state, Conductivity.Of(reservoir), Conductivity.Of(pots), factor, dump));
    }

    public LoopOutcome Outcome()
    {
        var kilograms = _strengths * (forecast.Cost?.KilogramsPerCubicMetre ?? 0);
        var nitrate = strategy.Recipe[Constituent.NitrateNitrogen];
        var gone =
            nitrate > 0
                ? _lost[Constituent.NitrateNitrogen] / nitrate * (forecast.Cost?.KilogramsPerCubicMetre ?? 0)
                : 0;
        var price = forecast.Cost?.PricePerKilogram ?? 0;
        return new LoopOutcome(
            strategy,
            _evenings,
            _water,
            _letOut,
            _dumps,
            kilograms,
            gone,
            (decimal)kilograms * price,
            (decimal)gone * price,
            _past,
            _wanting,
            _madeUp,
            _takenUp,
            _lost,
            Stopped
        );
    }

    /// <summary>Why the run cannot go on; null while it can.</summary>
    public Unanswerable? Stopped { get; private set; }

    private static bool TooStrong(Speciation solution) => solution.IonicStrength > Speciation.HighestIonicStrength;

    private LoopStep Step(LoopUptake uptake, double bleed, double factor) =>
        LoopDay.Run(forecast.System, _state, uptake, forecast.Water + (strategy.Recipe * factor), bleed);

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
            : Bracket.RootNear(over, rises: true, LastFactor, 0.02, 0, LoopForecast.LargestFactor);
    }

    // A day's share is much like the day's before.
    private double LastFactor => _evenings is [.., var last] ? last.Factor : 1;

    /// <summary>The reservoir is let out whole and mixed anew, at full strength or at the EC that is held.</summary>
    private void Dump()
    {
        var volume = forecast.System.Reservoir;
        var factor = strategy.HeldEc is { } held
            ? StrengthScaling.ToEc(forecast.Water, strategy.Recipe, held, forecast.PH).Value?.Factor ?? 1
            : 1;
        var fresh = forecast.Water + (strategy.Recipe * factor);
        _lost += _state.Reservoir * volume;
        _madeUp += fresh * volume;
        _water += volume;
        _letOut += volume;
        _strengths += factor * volume;
        _dumps++;
        _state = _state with { Reservoir = fresh };
    }

    private readonly struct Over(LoopRun run, LoopUptake uptake, double bleed, Ec held) : IOneNumber
    {
        public double At(double x) =>
            run.ForecastEc(run.Step(uptake, bleed, x).State.Reservoir) - held.DecisiemensPerMetre;
    }

    private double ForecastEc(Composition solution) => forecast.EcOf(solution).DecisiemensPerMetre;
}
