using MathNet.Numerics.RootFinding;

namespace Dripwright.Engine.Wires;

/// <summary>Sag, tension and support pulls of a wire that stretches, with loads anywhere along it.</summary>
/// <remarks>
/// Between two loads the wire is an elastic catenary; its ends are known in closed form from the pull at its start
/// (H. M. Irvine, Cable Structures, 1981, ch. 1; from memory). The two parts H and V of the pull at the left support are
/// sought so that the wire ends at the right support. The place of the far end is the gradient of the wire's complementary
/// energy, ∫(T + T²/2EA) ds, which is convex in H and V: Newton's method that does not overshoot finds the one answer from
/// anywhere. Method page: docs/methods/crop-wire.md
/// </remarks>
public static class ElasticCatenary
{
    /// <summary>[-] Weight of a stretch over its tension below which it is taken as straight: its sag is then lost in rounding.</summary>
    private const double Straight = 1e-7;

    private const int MostSteps = 200;

    /// <summary>[-] Own weight of the empty wire over its level pull, at most: it then hangs deeper than the span is long.</summary>
    public const double MostSagging = 10;

    /// <summary>Length of the wire without any pull, from how it was tightened when it hung empty.</summary>
    /// <param name="span">The span.</param>
    /// <returns>[m] Slack length.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value of the span lies outside its range.</exception>
    public static double SlackLength(WireSpan span)
    {
        Check(span);
        var chord = double.Hypot(span.Length, span.Rise);
        var pull = span.Tightened * chord / span.Length;
        // The straight wire under that pull is the shortest; the level catenary's length and the rise are more than enough.
        var shortest = chord / (1 + (pull / span.Kind.Stiffness)) * (1 - 1e-3);
        var sagging = Guard.Between(span.Kind.Weight * span.Length / span.Tightened, 0, MostSagging);
        var longest = (Math.Abs(span.Rise) + (span.Length * 2 / sagging * Math.Sinh(sagging / 2))) * (1 + 1e-3);
        double Excess(double length) => Pull(span, length, []).Level - span.Tightened;
        return Brent.FindRoot(Excess, shortest, longest, 1e-13 * chord, 500);
    }

    /// <summary>Shape and forces of the wire under loads.</summary>
    /// <param name="span">The span.</param>
    /// <param name="loads">What hangs on it, in any order.</param>
    /// <returns>The loaded wire.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range, or a load beside the span.</exception>
    /// <exception cref="ArithmeticException">No answer to nine digits was found: not seen with any sane wire.</exception>
    public static WireShape Solve(WireSpan span, IReadOnlyList<WireLoad> loads) =>
        Solve(span, SlackLength(span), loads);

    /// <summary>Shape and forces of a wire of known slack length under loads.</summary>
    /// <param name="span">The span; how it was tightened is not used.</param>
    /// <param name="slackLength">[m] Length without any pull, over 0.</param>
    /// <param name="loads">What hangs on it, in any order.</param>
    /// <returns>The loaded wire.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range, or a load beside the span.</exception>
    /// <exception cref="ArithmeticException">No answer to nine digits was found: not seen with any sane wire.</exception>
    public static WireShape Solve(WireSpan span, double slackLength, IReadOnlyList<WireLoad> loads)
    {
        Check(span);
        Guard.Positive(slackLength);
        ArgumentNullException.ThrowIfNull(loads);
        foreach (var load in loads)
        {
            Guard.Between(load.Station, 0, span.Length);
            Guard.NotNegative(load.Force);
        }

        WireLoad[] sorted = [.. loads.OrderBy(l => l.Station)];
        var left = Pull(span, slackLength, sorted);
        List<WirePoint> points = [];
        double greatest = 0;
        double x = 0;
        double drop = 0;
        var vertical = left.Down;
        double deepest = 0;
        double deepestAt = 0;

        void Mark(double station, double below, double tension)
        {
            points.Add(new WirePoint(station, below, tension));
            greatest = Math.Max(greatest, tension);
            var sag = below + (span.Rise * station / span.Length);
            if (sag > deepest)
            {
                (deepest, deepestAt) = (sag, station);
            }
        }

        Mark(0, 0, left.Total);
        foreach ((var length, var force) in Stretches(span, slackLength, sorted))
        {
            MarkLowest(span, left.Level, vertical, length, x, drop, Mark);
            var reach = Reach.Of(span.Kind, left.Level, vertical, length);
            x += reach.Along;
            drop += reach.Down;
            var before = vertical - (span.Kind.Weight * length);
            vertical = before - force;
            Mark(x, drop, Math.Max(double.Hypot(left.Level, before), double.Hypot(left.Level, vertical)));
        }

        return new WireShape(
            slackLength,
            points,
            deepest,
            deepestAt,
            greatest,
            left,
            new SupportPull(left.Level, -vertical)
        );
    }

    /// <summary>Where the stretch runs level with the chord, it is deepest; marked when that is inside it.</summary>
    private static void MarkLowest(
        WireSpan span,
        double level,
        double vertical,
        double length,
        double x,
        double drop,
        Action<double, double, double> mark
    )
    {
        var weight = span.Kind.Weight;
        var wanted = -level * span.Rise / span.Length;
        var s = (vertical - wanted) / weight;
        if (s > 0 && s < length)
        {
            var reach = Reach.Of(span.Kind, level, vertical, s);
            mark(x + reach.Along, drop + reach.Down, double.Hypot(level, wanted));
        }
    }

    /// <summary>Pull on the left support.</summary>
    private static SupportPull Pull(WireSpan span, double slackLength, IReadOnlyList<WireLoad> sorted)
    {
        (double Length, double Force)[] stretches = [.. Stretches(span, slackLength, sorted)];
        var weight = (span.Kind.Weight * slackLength) + sorted.Sum(l => l.Force);
        var level = Math.Max(Math.Max(span.Tightened, weight), 1e-3 * span.Kind.BreakingForce);
        var vertical = (weight / 2) - (level * span.Rise / span.Length);
        var end = End.Of(span.Kind, level, vertical, stretches);
        var tolerance = 1e-13 * Math.Max(span.Length, slackLength);
        for (var step = 0; step < MostSteps; step++)
        {
            var missAlong = end.Along - span.Length;
            var missDown = end.Down + span.Rise;
            if (double.Hypot(missAlong, missDown) <= tolerance)
            {
                break;
            }

            var determinant = (end.LevelLevel * end.VerticalVertical) - (end.LevelVertical * end.LevelVertical);
            var moveLevel = ((end.LevelVertical * missDown) - (end.VerticalVertical * missAlong)) / determinant;
            var moveVertical = ((end.LevelVertical * missAlong) - (end.LevelLevel * missDown)) / determinant;
            var descent = (missAlong * moveLevel) + (missDown * moveVertical);
            var part = level + moveLevel > 0 ? 1 : -0.9 * level / moveLevel;
            End next = default;
            var better = false;
            while (!better && part > 1e-12)
            {
                next = End.Of(span.Kind, level + (part * moveLevel), vertical + (part * moveVertical), stretches);
                var ahead = ((next.Along - span.Length) * moveLevel) + ((next.Down + span.Rise) * moveVertical);
                // On a convex function the slope along the way may shrink or stay negative, but not turn steeply up.
                better = ahead <= 0.5 * Math.Abs(descent);
                if (!better)
                {
                    part /= 2;
                }
            }

            if (!better)
            {
                break;
            }

            level += part * moveLevel;
            vertical += part * moveVertical;
            end = next;
        }

        // Convexity promises an answer; should rounding ever cheat it of one, no wrong figure may leave here.
        return double.Hypot(end.Along - span.Length, end.Down + span.Rise) <= 1e-9 * Math.Max(span.Length, slackLength)
            ? new SupportPull(level, vertical)
            : throw new ArithmeticException(
                "The wire's pull could not be found; its slack length or loads are absurd."
            );
    }

    /// <summary>Slack lengths between the loads, each with the force at its right end.</summary>
    private static IEnumerable<(double Length, double Force)> Stretches(
        WireSpan span,
        double slackLength,
        IReadOnlyList<WireLoad> sorted
    )
    {
        var perMetre = slackLength / span.Length;
        double from = 0;
        foreach (var load in sorted)
        {
            yield return ((load.Station - from) * perMetre, load.Force);
            from = load.Station;
        }

        yield return ((span.Length - from) * perMetre, 0);
    }

    private static void Check(WireSpan span)
    {
        ArgumentNullException.ThrowIfNull(span);
        Guard.Positive(span.Length);
        Guard.Finite(span.Rise);
        Guard.Positive(span.Kind.Stiffness);
        Guard.Positive(span.Kind.Weight);
        Guard.Positive(span.Tightened);
        Guard.Between(span.Tightened, 0, span.Kind.BreakingForce);
    }

    /// <summary>How far one unloaded stretch reaches, with the derivatives by the pull at its start.</summary>
    private readonly record struct Reach(
        double Along,
        double Down,
        double LevelLevel,
        double LevelVertical,
        double VerticalVertical
    )
    {
        /// <summary>[m] Along and down from its start, for a slack length s that starts with the pull (H, V).</summary>
        public static Reach Of(WireKind kind, double level, double vertical, double s)
        {
            var stretch = s / kind.Stiffness;
            var start = double.Hypot(level, vertical);
            var weight = kind.Weight * s;
            if (weight <= Straight * start)
            {
                // A straight stretch with the mean pull; what is left out is of the order (weight/tension)².
                var middle = vertical - (weight / 2);
                var tension = double.Hypot(level, middle);
                var cube = s / (tension * tension * tension);
                return new Reach(
                    level * (stretch + (s / tension)),
                    middle * (stretch + (s / tension)),
                    stretch + (middle * middle * cube),
                    -level * middle * cube,
                    stretch + (level * level * cube)
                );
            }

            var lower = vertical - weight;
            var end = double.Hypot(level, lower);
            // asinh(V/H) - asinh((V-ws)/H) without the loss of digits where both are nearly alike.
            var a = vertical / level;
            var b = lower / level;
            var product = a * Math.Sqrt(1 + (b * b));
            var other = b * Math.Sqrt(1 + (a * a));
            var sine = a * b > 0 ? (a - b) * (a + b) / (product + other) : product - other;
            var turn = Math.Asinh(sine) / kind.Weight;
            var along = level * (stretch + turn);
            var middleForce = vertical - (weight / 2);
            var down = (stretch * middleForce) + (s * 2 * middleForce / (start + end));
            var tilt = ((vertical / start) - (lower / end)) / kind.Weight;
            var mixed = level * ((1 / start) - (1 / end)) / kind.Weight;
            return new Reach(along, down, stretch + turn - tilt, mixed, stretch + tilt);
        }
    }

    /// <summary>The far end of the whole wire.</summary>
    private readonly record struct End(
        double Along,
        double Down,
        double LevelLevel,
        double LevelVertical,
        double VerticalVertical
    )
    {
        public static End Of(WireKind kind, double level, double vertical, (double Length, double Force)[] stretches)
        {
            var end = default(End);
            foreach ((var length, var force) in stretches)
            {
                var reach = Reach.Of(kind, level, vertical, length);
                end = new End(
                    end.Along + reach.Along,
                    end.Down + reach.Down,
                    end.LevelLevel + reach.LevelLevel,
                    end.LevelVertical + reach.LevelVertical,
                    end.VerticalVertical + reach.VerticalVertical
                );
                vertical -= (kind.Weight * length) + force;
            }

            return end;
        }
    }
}
