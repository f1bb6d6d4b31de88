using Dripwright.Engine.Layout;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Stands.Frame;

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

        if (options.MostModules is { } most && row.Modules > most)
        {
            var end = row.OriginX + (most * row.Spec.ModuleLength) + Close;
            members.RemoveAll(m => m.From.X > end || m.To.X > end);
        }

        // Braces are placed anew, since frames may come between and the row may be cut off.
        var has = members.Where(m => m.Role == MemberRole.Brace).Aggregate(Bracing.None, (b, m) => b | KindOf(m));
        members.RemoveAll(m => m.Role == MemberRole.Brace);
        if (options.ExtraFrames > 0)
        {
            members = WithExtraFrames(members, options.ExtraFrames + 1);
        }

        members.AddRange(
            StandBraces.Of(members, has | options.Bracing, stand.BraceInset, stand.Tube.Outside, row.Hangers)
        );
        return members;
    }

    // Every module is cut into equal parts: the frame at its left end is repeated, tubes along the row are shortened.
    private static List<StandMember> WithExtraFrames(List<StandMember> members, int parts)
    {
        var frames = StandFrames.Of(members);
        List<StandMember> all = [];
        foreach (var m in members)
        {
            if (Math.Abs(m.From.X - m.To.X) < Close)
            {
                var frame = Array.FindIndex(frames, x => Math.Abs(x - m.From.X) < Close);
                var step = frame + 1 < frames.Length ? (frames[frame + 1] - frames[frame]) / parts : 0;
                for (var k = 0; k < (step > 0 ? parts : 1); k++)
                {
                    var dx = k * step;
                    all.Add(m with { From = m.From with { X = m.From.X + dx }, To = m.To with { X = m.To.X + dx } });
                }
            }
            else
            {
                var span = m.From.DistanceTo(m.To);
                for (var k = 0; k < parts; k++)
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

    private static Bracing KindOf(StandMember brace) =>
        Math.Abs(brace.From.X - brace.To.X) < Close ? Bracing.Across : Bracing.Along;

    private static Vector3 Along(StandMember m, double share) =>
        new(
            m.From.X + (share * (m.To.X - m.From.X)),
            m.From.Y + (share * (m.To.Y - m.From.Y)),
            m.From.Z + (share * (m.To.Z - m.From.Z))
        );
}
