using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Layout;

/// <summary>Places the slanting tubes of a row's stand.</summary>
/// <remarks>
/// A brace is clamped beside its two legs with clamps that turn, clear of foot and joint, so printed parts stay square and
/// the brace carries push and pull alone.
/// </remarks>
internal static class StandBraces
{
    /// <summary>[m] Least rise of a brace: under it the stand is too low to sway and has no room. Common practice.</summary>
    private const double LeastRise = 0.2;

    /// <summary>The braces between legs that stand.</summary>
    /// <param name="members">A row's tubes.</param>
    /// <param name="bracing">Which braces.</param>
    /// <param name="inset">[m] From foot and joint to the clamps.</param>
    /// <param name="outside">[m] Outside of the tube: a brace goes on past its clamps by as much.</param>
    public static IReadOnlyList<StandMember> Of(
        IReadOnlyList<StandMember> members,
        Bracing bracing,
        double inset,
        double outside
    )
    {
        List<StandMember> braces = [];
        StandMember[] legs = [.. members.Where(m => m.Role == MemberRole.Leg)];
        if (bracing == Bracing.None || legs.Length == 0)
        {
            return braces;
        }

        StandMember leg = legs[0];
        double low = leg.From.Z + inset;
        double high = leg.To.Z - inset;
        if (high - low < LeastRise)
        {
            return braces;
        }

        double front = legs.Min(m => m.From.Y);
        double back = legs.Max(m => m.From.Y);
        double[] frames = StandFrames.Of(legs);
        if (bracing.HasFlag(Bracing.Along))
        {
            for (int i = 0; i + 1 < frames.Length; i++)
            {
                if (i % 3 == 0 || i + 2 == frames.Length)
                {
                    Add("back-brace", new(frames[i], back, low), new(frames[i + 1], back, high));
                }
            }
        }

        if (bracing.HasFlag(Bracing.Across))
        {
            foreach (double x in frames)
            {
                Add("brace", new(x, front, low), new(x, back, high));
            }
        }

        return braces;

        void Add(string name, Point3 from, Point3 to) =>
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
        foreach (double x in members.Where(m => m.Role == MemberRole.Leg).Select(m => m.From.X).Order())
        {
            if (frames.Count == 0 || x - frames[^1] > Close)
            {
                frames.Add(x);
            }
        }

        return [.. frames];
    }
}
