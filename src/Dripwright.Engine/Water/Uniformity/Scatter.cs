namespace Dripwright.Engine.Water;

/// <summary>Draws many rigs by chance, emitters unlike and some partly clogged, and counts how often a pot goes short.</summary>
/// <remarks>
/// Each emitter's flow is multiplied by 1 + Cv·z, z from a normal law cut at ±4, and, where it is clogged, by
/// a^max(1, 2x), a the part of its passage left: turbulent passages (x about 0.5) pass flow in proportion to area,
/// laminar ones (x near 1) to its square; a compensating emitter is treated as an opening.
/// Pressures stay as solved unless the model brings a solver. That is true while the line's pressure loss is small
/// against the emitters' head: then what one emitter does not pass hardly raises the pressure at the others.
/// Every draw has its own stream of random numbers and its own place in the result, so the number of cores changes nothing.
/// Method page: docs/methods/scatter.md
/// </remarks>
public static class Scatter
{
    /// <summary>[-] Normal law is cut at this many standard deviations: what lies beyond the maker would reject.</summary>
    public const double Cut = 4;

    private const int BlockSize = 64;

    /// <summary>Runs the draws.</summary>
    /// <param name="model">The emitters, how they vary, how many draws.</param>
    /// <param name="cancellation">To stop early.</param>
    /// <returns>What the draws say.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value of the model lies outside its stated range.</exception>
    /// <exception cref="OperationCanceledException">The run was stopped.</exception>
    public static ScatterResult Run(ScatterModel model, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(model);
        var pots = ScatterChecks.CountPots(model);
        var run = new Outcome(model.Draws, pots);
        var blocks = (model.Draws + BlockSize - 1) / BlockSize;
        var options = new ParallelOptions { MaxDegreeOfParallelism = model.Threads, CancellationToken = cancellation };
        Parallel.For(
            0,
            blocks,
            options,
            () => new Desk(model.Emitters.Count, pots),
            (block, _, desk) =>
            {
                var end = Math.Min((block + 1) * BlockSize, model.Draws);
                for (var draw = block * BlockSize; draw < end; draw++)
                {
                    Draw(model, draw, desk);
                    Judge(model, draw, desk, run);
                }

                return desk;
            },
            desk => run.Add(desk)
        );
        return run.Result();
    }

    private static void Draw(ScatterModel model, int draw, Desk desk)
    {
        var random = new RandomStream(model.Seed, (ulong)draw);
        var emitters = model.Emitters;
        var clogging = model.Clogging;
        for (var i = 0; i < desk.Factors.Length; i++)
        {
            var emitter = emitters[i];
            var factor = 1 + emitter.CoefficientOfVariation * random.NextNormal(Cut);
            if (clogging.Fraction > 0 && random.NextUnit() < clogging.Fraction)
            {
                var open = clogging.LeastArea + (clogging.MostArea - clogging.LeastArea) * random.NextUnit();
                factor *= emitter.Exponent > 0.5 ? Math.Pow(open, 2 * emitter.Exponent) : open;
            }

            desk.Factors[i] = factor;
            desk.Flows[i] = emitter.Flow * factor;
        }

        model.Resolve?.Invoke(desk.Factors, desk.Flows);
        Array.Clear(desk.Pots);
        for (var i = 0; i < desk.Flows.Length; i++)
        {
            desk.Pots[emitters[i].Pot] += desk.Flows[i];
        }
    }

    private static void Judge(ScatterModel model, int draw, Desk desk, Outcome run)
    {
        var weakest = 0;
        var sum = 0.0;
        for (var pot = 0; pot < desk.Pots.Length; pot++)
        {
            sum += desk.Pots[pot];
            if (desk.Pots[pot] < desk.Pots[weakest])
            {
                weakest = pot;
            }
        }

        // Everything clogged shut: no pot gets water, which is as uneven as can be.
        if (!(sum > 0))
        {
            run.Weakest[draw] = run.LowQuarter[draw] = run.Christiansen[draw] = 0;
            desk.TimesWeakest[weakest]++;
            desk.CountWeak(double.PositiveInfinity);
            return;
        }

        var mean = sum / desk.Pots.Length;
        run.Weakest[draw] = desk.Pots[weakest] / mean;
        desk.TimesWeakest[weakest]++;
        desk.CountWeak(model.WeakLimit * mean);
        desk.RigsWithWeak += run.Weakest[draw] < model.WeakLimit ? 1 : 0;
        run.Christiansen[draw] = Uniformity.OfDeviation(desk.Pots, mean);
        Array.Sort(desk.Pots);
        run.LowQuarter[draw] = Uniformity.OfLowQuarterSorted(desk.Pots, mean);
    }

    /// <summary>One thread's own room to work in. Only whole counts are gathered across draws, so order cannot matter.</summary>
    private sealed class Desk(int emitters, int pots)
    {
        public double[] Factors { get; } = new double[emitters];
        public double[] Flows { get; } = new double[emitters];
        public double[] Pots { get; } = new double[pots];
        public int[] TimesWeakest { get; } = new int[pots];
        public int[] TimesWeak { get; } = new int[pots];
        public int RigsWithWeak { get; set; }

        public void CountWeak(double limit)
        {
            for (var pot = 0; pot < Pots.Length; pot++)
            {
                TimesWeak[pot] += Pots[pot] < limit ? 1 : 0;
            }

            RigsWithWeak += double.IsPositiveInfinity(limit) ? 1 : 0;
        }
    }

    private sealed class Outcome(int draws, int pots)
    {
        private readonly Lock _lock = new();
        private readonly long[] _timesWeakest = new long[pots];
        private readonly long[] _timesWeak = new long[pots];
        private long _rigsWithWeak;

        public double[] Weakest { get; } = new double[draws];
        public double[] LowQuarter { get; } = new double[draws];
        public double[] Christiansen { get; } = new double[draws];

        public void Add(Desk desk)
        {
            lock (_lock)
            {
                _rigsWithWeak += desk.RigsWithWeak;
                for (var pot = 0; pot < _timesWeak.Length; pot++)
                {
                    _timesWeakest[pot] += desk.TimesWeakest[pot];
                    _timesWeak[pot] += desk.TimesWeak[pot];
                }
            }
        }

        public ScatterResult Result()
        {
            return new ScatterResult(
                draws,
                (double)_rigsWithWeak / draws,
                DrawStatistics.Of(Weakest),
                DrawStatistics.Of(LowQuarter),
                DrawStatistics.Of(Christiansen),
                Array.ConvertAll(_timesWeakest, times => times / (double)draws),
                Array.ConvertAll(_timesWeak, times => times / (double)draws)
            );
        }
    }
}
