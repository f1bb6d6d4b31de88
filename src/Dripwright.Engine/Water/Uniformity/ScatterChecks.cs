namespace Dripwright.Engine.Water;

/// <summary>Checks a scatter model before the draws start, so that no draw can meet a bad value.</summary>
internal static class ScatterChecks
{
    private const double MostVariation = 1 / Scatter.Cut;
    private const int MostDraws = 10_000_000;

    public static int CountPots(ScatterModel model)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(model.Draws, 1, nameof(model));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(model.Draws, MostDraws, nameof(model));
        ArgumentOutOfRangeException.ThrowIfZero(model.Threads, nameof(model));
        ArgumentOutOfRangeException.ThrowIfLessThan(model.Threads, -1, nameof(model));
        ArgumentOutOfRangeException.ThrowIfZero(model.Emitters.Count, nameof(model));
        Guard.Between(model.WeakLimit, 0, 1);
        Guard.Between(model.Clogging.Fraction, 0, 1);
        Guard.Between(model.Clogging.LeastArea, 0, 1);
        Guard.Between(model.Clogging.MostArea, model.Clogging.LeastArea, 1);

        var pots = 0;
        var sum = 0.0;
        foreach (var emitter in model.Emitters)
        {
            Guard.NotNegative(emitter.Flow);
            Guard.Between(emitter.Exponent, 0, 1);
            Guard.Between(emitter.CoefficientOfVariation, 0, MostVariation);
            ArgumentOutOfRangeException.ThrowIfNegative(emitter.Pot, nameof(model));
            ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(emitter.Pot, model.Emitters.Count, nameof(model));
            pots = Math.Max(pots, emitter.Pot + 1);
            sum += emitter.Flow;
        }

        Guard.Positive(sum);
        RequireAnEmitterEach(model, pots);
        return pots;
    }

    private static void RequireAnEmitterEach(ScatterModel model, int pots)
    {
        var fed = new bool[pots];
        foreach (var emitter in model.Emitters)
        {
            fed[emitter.Pot] = true;
        }

        var dry = Array.IndexOf(fed, false);
        if (dry >= 0)
        {
            throw new ArgumentOutOfRangeException(
                nameof(model),
                dry,
                "Every pot from 0 to the greatest number needs at least one emitter; this one has none."
            );
        }
    }
}
