using Dripwright.Engine.Chemistry.Formulas;

namespace Dripwright.Engine.Nutrients.Loop;

/// <summary>A stretch of steady running of the loop, solved exactly, ion by ion.</summary>
/// <remarks>
/// Reservoir: V r' = -F r + (F - E) p + (E + B) c - B r. Pots: W p' = F r - (F - E) p - E (u + k p). F feed, E uptake of water,
/// B bleed from the reservoir, c make-up, u and k uptake. When an ion runs out in the pots, plants get what the feed brings
/// and no more, and the shortage is named. Method page: docs/methods/closed-loop.md
/// </remarks>
public static class LoopDay
{
    /// <summary>Runs the loop for a time in which nothing but the concentrations changes.</summary>
    /// <param name="system">The loop.</param>
    /// <param name="state">What it holds.</param>
    /// <param name="uptake">What the plants take; its number of days is not looked at.</param>
    /// <param name="makeUp">[mol/m³] What the make-up holds.</param>
    /// <param name="bleedPerDay">[m³/d] Let out of the reservoir and made up too.</param>
    /// <param name="days">[d] How long.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number or amount is negative, or the plants take up all of the feed.</exception>
    public static LoopStep Run(
        LoopSystem system,
        LoopState state,
        LoopUptake uptake,
        Composition makeUp,
        double bleedPerDay = 0,
        double days = 1
    )
    {
        ArgumentNullException.ThrowIfNull(system);
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(uptake);
        ArgumentNullException.ThrowIfNull(makeUp);
        Guard.NotNegative(bleedPerDay);
        Guard.Positive(days);
        Guard.NotNegative(uptake.WaterPerDay, nameof(uptake));
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(uptake.WaterPerDay, system.FeedPerDay, nameof(uptake));
        var reservoir = new List<(Constituent, double)>();
        var pots = new List<(Constituent, double)>();
        var taken = new List<(Constituent, double)>();
        var bled = new List<(Constituent, double)>();
        List<Constituent> wanting = [];
        foreach (var one in Composition.Constituents)
        {
            var ion = new OneIon(
                system,
                uptake.WaterPerDay,
                bleedPerDay,
                makeUp[one],
                uptake.Constant[one],
                uptake.Proportion[one]
            );
            if (ion.Run(state.Reservoir[one], state.Pots[one], days) is not { } end)
            {
                continue;
            }

            reservoir.Add((one, end.Reservoir));
            pots.Add((one, end.Pots));
            taken.Add((one, end.Taken));
            bled.Add((one, end.Bled));
            if (end.Short)
            {
                wanting.Add(one);
            }
        }

        return new LoopStep(
            new LoopState(Composition.Of(reservoir), Composition.Of(pots)),
            makeUp * ((uptake.WaterPerDay + bleedPerDay) * days),
            Composition.Of(taken),
            Composition.Of(bled),
            wanting
        );
    }

    private readonly record struct Outcome(double Reservoir, double Pots, double Taken, double Bled, bool Short);

    private sealed class OneIon(
        LoopSystem system,
        double water,
        double bleed,
        double makeUp,
        double constant,
        double proportion
    )
    {
        // Flows are steady, so an ion can run out and come back a few times at most.
        private const int MostTurns = 200;
        private readonly double _brought = (water + bleed) * Guard.NotNegative(makeUp);
        private readonly double _wanted = water * Guard.NotNegative(constant);
        private readonly double _sweep = water * Guard.NotNegative(proportion);

        public Outcome? Run(double reservoir, double pots, double days)
        {
            Guard.NotNegative(reservoir);
            Guard.NotNegative(pots);
            if (reservoir == 0 && pots == 0 && _brought == 0 && _wanted == 0)
            {
                return null;
            }

            var left = days;
            double taken = 0;
            double bled = 0;
            var wanting = false;
            // Set when the feed has just come to bring enough, which rounding may put a hair below.
            var fed = false;
            for (var turn = 0; left > 0; turn++)
            {
                if (turn > MostTurns)
                {
                    throw new InvalidOperationException("The loop's balance did not come to an end.");
                }

                if (!fed && pots <= 0 && system.FeedPerDay * reservoir < _wanted)
                {
                    fed = true;
                    wanting = true;
                    (var time, var next, var sum) = Starved(reservoir, left);
                    taken += system.FeedPerDay * sum;
                    bled += bleed * sum;
                    (reservoir, pots, left) = (next, 0, left - time);
                    continue;
                }

                fed = false;
                var span = UntilEmpty(reservoir, pots, left);
                var (r, p, sumR, sumP) = Pools.After(reservoir, pots, span);
                taken += (_wanted * span) + (_sweep * sumP);
                bled += bleed * sumR;
                // What rounding leaves under nought is nothing.
                (reservoir, pots, left) = (Math.Max(0, r), span < left ? 0 : Math.Max(0, p), left - span);
            }

            return new Outcome(reservoir, pots, taken, bled, wanting);
        }

        private TwoPools Pools
        {
            get
            {
                var feed = system.FeedPerDay;
                var drain = feed - water;
                return new TwoPools(
                    -(feed + bleed) / system.Reservoir,
                    drain / system.Reservoir,
                    feed / system.Pots,
                    -(drain + _sweep) / system.Pots,
                    _brought / system.Reservoir,
                    -_wanted / system.Pots
                );
            }
        }

        /// <summary>Time until the pots hold none, or the whole time.</summary>
        private double UntilEmpty(double reservoir, double pots, double left)
        {
            if (_wanted == 0)
            {
                return left;
            }

            // The curve is a sum of two exponentials and a constant, so it turns at most once: looked at there and at the
            // end, no dip below nought is missed.
            var curve = new Curve(Pools, reservoir, pots);
            double[] places = Pools.Turn(reservoir, pots) is { } turn && turn < left ? [0, turn, left] : [0, left];
            for (var i = 1; i < places.Length; i++)
            {
                if (curve.At(places[i]) < 0)
                {
                    // From nought it cannot have gone up at once: that is the edge itself, and a moment passes.
                    var moment = Math.Max(places[i - 1], left * 1e-9);
                    return curve.At(places[i - 1]) > 0 ? Bracket.Root(curve, places[i - 1], places[i]) : moment;
                }
            }

            return left;
        }

        /// <summary>With nothing in the pots all that drips in is taken; ends when the feed brings enough again.</summary>
        private (double Time, double Reservoir, double Sum) Starved(double reservoir, double left)
        {
            var rate = (system.FeedPerDay + bleed) / system.Reservoir;
            var rest = _brought / (system.FeedPerDay + bleed);
            var enough = _wanted / system.FeedPerDay;
            var time = left;
            if (rest > enough && reservoir < enough)
            {
                time = Math.Min(left, Math.Log((rest - reservoir) / (rest - enough)) / rate);
            }

            var end = time < left ? enough : rest + ((reservoir - rest) * Math.Exp(-rate * time));
            var sum = (rest * time) + ((reservoir - end) / rate);
            return (time, end, sum);
        }
    }

    private readonly struct Curve(TwoPools pools, double reservoir, double pots) : IOneNumber
    {
        public double At(double x) => pools.After(reservoir, pots, x).X2;
    }
}
