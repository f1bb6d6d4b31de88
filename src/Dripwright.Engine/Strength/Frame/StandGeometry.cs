using Dripwright.Engine.Layout;

namespace Dripwright.Engine.Strength.Frame;

/// <summary>A row's tubes with the frames and braces that the options add to the layout.</summary>
internal static class StandGeometry
{
    private const double Close = 1e-6;

    public static List<StandMember> Members(StandLayout stand, RowLayout row, StandOptions options)
    {
        List<StandMember> members = [.. stand.Members.Where(m => m.Row == row.Number)];
        if (members.Count == 0)
        {
            return members;
        }

        if (options.ExtraFrames > 0)
        {
            members = WithExtraFrames(members, options.ExtraFrames + 1);
        }

        AddBraces(members, options.Bracing);
        return members;
    }

    /// <summary>[m] X of the frames, left to right.</summary>
    public static double[] FramesOf(IEnumerable<StandMember> members)
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

    // Every module is cut into equal parts: the frame at its left end is repeated, tubes along the row are shortened.
    private static List<StandMember> WithExtraFrames(List<StandMember> members, int parts)
    {
        double[] frames = FramesOf(members);
        List<StandMember> all = [];
        foreach (StandMember m in members)
        {
            if (Math.Abs(m.From.X - m.To.X) < Close)
            {
                int frame = Array.FindIndex(frames, x => Math.Abs(x - m.From.X) < Close);
                double step = frame + 1 < frames.Length ? (frames[frame + 1] - frames[frame]) / parts : 0;
                for (int k = 0; k < (step > 0 ? parts : 1); k++)
                {
                    double dx = k * step;
                    all.Add(m with { From = m.From with { X = m.From.X + dx }, To = m.To with { X = m.To.X + dx } });
                }
            }
            else
            {
                double span = m.From.DistanceTo(m.To);
                for (int k = 0; k < parts; k++)
                {
                    all.Add(
                        m with
                        {
                            From = Along(m, (double)k / parts),
                            To = Along(m, (k + 1.0) / parts),
                            Length = (span / parts) - (span - m.Length),
                        }
                    );
                }
            }
        }

        return all;
    }

    private static void AddBraces(List<StandMember> members, Bracing bracing)
    {
        if (bracing == Bracing.None)
        {
            return;
        }

        double[] frames = FramesOf(members);
        StandMember leg = members.First(m => m.Role == MemberRole.Leg);
        double front = members.Where(m => m.Role == MemberRole.Leg).Min(m => m.From.Y);
        double back = members.Where(m => m.Role == MemberRole.Leg).Max(m => m.From.Y);
        void Add(string name, Point3 foot, Point3 top) =>
            members.Add(
                new StandMember(
                    leg.Label.Replace("leg", name, StringComparison.Ordinal),
                    MemberRole.Brace,
                    leg.Row,
                    foot,
                    top,
                    foot.DistanceTo(top)
                )
            );

        if (bracing.HasFlag(Bracing.Along))
        {
            for (int i = 0; i + 1 < frames.Length; i++)
            {
                if (i % 3 == 0 || i + 2 == frames.Length)
                {
                    Add("back-brace", new(frames[i], back, leg.From.Z), new(frames[i + 1], back, leg.To.Z));
                }
            }
        }

        if (bracing.HasFlag(Bracing.Across))
        {
            foreach (double x in frames)
            {
                Add("brace", new(x, front, leg.From.Z), new(x, back, leg.To.Z));
            }
        }
    }

    private static Point3 Along(StandMember m, double share) =>
        new(
            m.From.X + (share * (m.To.X - m.From.X)),
            m.From.Y + (share * (m.To.Y - m.From.Y)),
            m.From.Z + (share * (m.To.Z - m.From.Z))
        );
}
