using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Layout;

/// <summary>Places the slanting tubes of a row's stand.</summary>
/// <remarks>
/// A brace is clamped beside its two legs with clamps that turn, clear of foot and joint and of the drain's hangers, so printed
/// parts stay square and the brace carries push and pull alone.
/// </remarks>
internal static class StandBraces
{
    /// <summary>[m] Least rise of a brace: under it the stand is too low to sway and has no room. Common practice.</summary>
    private const double LeastRise = 0.2;

    private const double Near = 1e-6;

    /// <summary>[m] Between the middles of a clamp and of a hanger on one leg: a clamp is about as high as two tubes are wide.
    /// Common practice.</summary>
    /// <param name="outside">[m] Outside of the tube.</param>
    public static double ClearOfHanger(double outside) => DrainHanging.HalfLength + outside;

    /// <summary>The braces between legs that stand.</summary>
    /// <param name="members">A row's tubes.</param>
    /// <param name="bracing">Which braces.</param>
    /// <param name="inset">[m] From foot and joint to the clamps.</param>
    /// <param name="outside">[m] Outside of the tube: a brace goes on past its clamps by as much.</param>
    /// <param name="hangers">What holds the row's drain.</param>
    public static IReadOnlyList<StandMember> Of(
        IReadOnlyList<StandMember> members,
        Bracing bracing,
        double inset,
        double outside,
        IReadOnlyList<DrainHanger> hangers
    )
    {
        List<StandMember> braces = [];
        StandMember[] legs = [.. members.Where(m => m.Role == MemberRole.Leg)];
        if (bracing == Bracing.None || legs.Length == 0)
        {
            return braces;
        }

        var leg = legs[0];
        var low = leg.From.Z + inset;
        var high = leg.To.Z - inset;
        if (high - low < LeastRise)
        {
            return braces;
        }

        var clear = ClearOfHanger(outside);
        var front = legs.Min(m => m.From.Y);
        var back = legs.Max(m => m.From.Y);
        var frames = StandFrames.Of(legs);
        if (bracing.HasFlag(Bracing.Along))
        {
            int[] bays = [.. Enumerable.Range(0, frames.Length - 1).Where(i => i % 3 == 0 || i + 2 == frames.Length)];
            (var from, var to) = Ends(
                [.. bays.Select(i => (frames[i], back))],
                [.. bays.Select(i => (frames[i + 1], back))]
            );
            foreach (var i in bays)
            {
                Add("back-brace", new(frames[i], back, from), new(frames[i + 1], back, to));
            }
        }

        if (bracing.HasFlag(Bracing.Across))
        {
            // Its high end goes to the side where no hanger is in the way.
            (double Y, double Other, double From, double To) best = new[] { (front, back), (back, front) }
                .Select(way =>
                {
                    (var from, var to) = Ends(
                        [.. frames.Select(x => (x, way.Item1))],
                        [.. frames.Select(x => (x, way.Item2))]
                    );
                    return (way.Item1, way.Item2, from, to);
                })
                .MaxBy(way => Math.Round(way.to - way.from, 6));
            foreach (var x in frames)
            {
                Add("brace", new(x, best.Y, best.From), new(x, best.Other, best.To));
            }
        }

        return braces;

        void Add(string name, Vector3 from, Vector3 to) =>
            braces.Add(
                new StandMember(
                    leg.Label.Replace("leg", name, StringComparison.Ordinal),
                    MemberRole.Brace,
                    leg.Row,
                    from,
                    to,
                    from.DistanceTo(to) + (2 * outside)
                )
            );

        // One pair of heights for all, so that all are cut alike; where the hangers leave too little, the clamps meet them.
        (double From, double To) Ends((double X, double Y)[] starts, (double X, double Y)[] ends)
        {
            var from = Moved(starts, low, 1);
            var to = Moved(ends, high, -1);
            return to - from < LeastRise ? (low, high) : (from, to);
        }

        double Moved((double X, double Y)[] places, double z, int way)
        {
            DrainHanger[] here =
            [
                .. hangers.Where(hanger =>
                    hanger.Mount == HangerMount.Leg
                    && places.Any(p => Math.Abs(hanger.At.X - p.X) < Near && Math.Abs(hanger.At.Y - p.Y) < Near)
                ),
            ];
            while (here.FirstOrDefault(hanger => Math.Abs(hanger.At.Z - z) < clear - Near) is { } hanger)
            {
                z = hanger.At.Z + (way * clear);
            }

            return z;
        }
    }
}

/// <summary>Where the frames of a row stand.</summary>
internal static class StandFrames
{
    private const double Close = 1e-6;

    /// <summary>[m] X of the frames, left to right.</summary>
    /// <param name="members">A row's tubes.</param>
    public static double[] Of(IEnumerable<StandMember> members)
    {
        List<double> frames = [];
        foreach (var x in members.Where(m => m.Role == MemberRole.Leg).Select(m => m.From.X).Order())
        {
            if (frames.Count == 0 || x - frames[^1] > Close)
            {
                frames.Add(x);
            }
        }

        return [.. frames];
    }
}
