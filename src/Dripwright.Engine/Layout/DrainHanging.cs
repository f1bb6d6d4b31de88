using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Layout;

/// <summary>Finds where the stand holds the drain: once at every frame along it.</summary>
/// <remarks>
/// A drain beside the stand passes the legs and is held by them, at whatever height the slope asks. One between two rails
/// hangs under the cross-members, one below a middle rail under that rail, close beside the joint; where it is too near to its
/// tube for a hanger it is tied straight to it. Each hanger is clear of the printed joints' sockets where the tubes leave room
/// for it.
/// </remarks>
internal static class DrainHanging
{
    /// <summary>[m] Half the length of a hanger along its tube, for clearance; the part itself may be a little shorter.</summary>
    public const double HalfLength = 0.018;

    /// <summary>[m] Between a hanger and a joint's socket. Common practice.</summary>
    private const double Gap = 0.002;

    /// <summary>[m] Between tube and pipe under which a hanger has no room: two walls and a tie on the foot, a wall of the ring.</summary>
    private const double Room = 0.0125;

    private const double Near = 1e-6;

    /// <summary>The hangers of a row's drain, left to right; none where the pots stand on the floor.</summary>
    /// <param name="stand">What the rig says of the stand.</param>
    /// <param name="row">The row.</param>
    /// <param name="drain">Its drain.</param>
    /// <param name="members">The tubes of its stand.</param>
    /// <param name="outside">[m] Outside of these tubes.</param>
    public static IReadOnlyList<DrainHanger> Of(
        Stand stand,
        RowPlace row,
        PipeRun drain,
        IReadOnlyList<StandMember> members,
        double outside
    )
    {
        double[] frames =
        [
            .. StandFrames
                .Of(members)
                .Where(x => x - row.OriginX >= drain.Start - 1e-9 && x - row.OriginX <= drain.End + 1e-9),
        ];
        if (frames.Length == 0)
        {
            return [];
        }

        double[] rails =
        [
            .. members.Where(m => m.Role == MemberRole.Rail).Select(m => Math.Round(m.From.Y, 6)).Distinct().Order(),
        ];
        var top = members.First(m => m.Role == MemberRole.Rail).From.Z;
        var y = drain.Path[0].Y;
        var rail = rails.MinBy(r => Math.Abs(r - y));
        var joint = stand.JointCentre + stand.SocketDepth;
        var clear = joint + Gap + HalfLength;
        var mount =
            y < rails[0] || y > rails[^1] ? HangerMount.Leg
            : Math.Abs(rail - y) < Near ? HangerMount.Rail
            : Math.Abs(rail - y) >= clear ? HangerMount.Cross
            : HangerMount.Leg;
        Vector3 Pipe(double x) => drain.At(x - row.OriginX);
        if (mount == HangerMount.Leg)
        {
            // One part for all: as low as the highest of them must be to stay clear of the joint over it. Whole half
            // centimetres, so that rows share it.
            var highest = frames.Max(x => Pipe(x).Z);
            var low = Math.Max(0, Math.Ceiling((clear - (top - highest) - 1e-9) / 0.005) * 0.005);
            return
            [
                .. frames.Select(x => new DrainHanger(
                    row.Number,
                    mount,
                    x - row.OriginX,
                    new(x, rail, Pipe(x).Z - low),
                    Pipe(x),
                    Math.Abs(y - rail),
                    low
                )),
            ];
        }

        var beside = mount == HangerMount.Rail ? clear : 0;
        var least = ((outside + drain.Pipe.OutsideDiameter) / 2) + Room;
        return
        [
            .. frames.Select(frame =>
            {
                var x = frame == frames[^1] ? frame - beside : frame + beside;
                var reach = top - Pipe(x).Z;
                var own = reach < least - Near ? HangerMount.Tie : mount;
                return new DrainHanger(row.Number, own, x - row.OriginX, new(x, y, top), Pipe(x), reach, 0);
            }),
        ];
    }
}
