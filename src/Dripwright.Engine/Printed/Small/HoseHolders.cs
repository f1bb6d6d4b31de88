using Dripwright.Engine.Layout;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Printed;

/// <summary>Where a header of hose is held.</summary>
internal static class HoseHolders
{
    /// <summary>[-] Heights of the two clips on their leg, by its length, where they are free. Common practice.</summary>
    private static readonly double[] s_heights = [0.45, 0.85];

    /// <summary>[m] Half a clip with room for fingers. Common practice.</summary>
    private const double Half = 0.010;

    private const double Near = 1e-6;

    /// <summary>Clips on the leg of the frame where the header comes in.</summary>
    public static SmallUse Clips(Rig rig, RigLayout layout, PrintParameters start)
    {
        if (!layout.Parts.Header.Flexible)
        {
            return SmallUse.None(
                "hoseClips",
                Phrase.Of("print.found.rigid"),
                Phrase.Of("print.limit.hose"),
                Phrase.Of("print.remedy.straps")
            );
        }

        if (layout.Rows.FirstOrDefault(row => row.Frames.Count > 0) is not { } row)
        {
            return SmallUse.None(
                "hoseClips",
                Phrase.Of("print.found.no-stand"),
                Phrase.Of("print.limit.leg"),
                Phrase.Of("print.remedy.straps")
            );
        }

        PrintedSpot[] spots = [.. row.FeedEntries.SelectMany(entry => OnLeg(rig, layout, row, row.OriginX + entry))];
        if (spots.Length == 0)
        {
            return SmallUse.None(
                "hoseClips",
                Phrase.Of("print.found.legs"),
                Phrase.Of("print.limit.free-leg"),
                Phrase.Of("print.remedy.tie")
            );
        }

        return new(
            [
                new(
                    start with
                    {
                        HoseOutside = layout.Parts.Header.OutsideDiameter,
                    },
                    spots.Length,
                    Phrase.Of("print.use.hose-clip", row.Number),
                    spots
                ),
            ],
            null
        );
    }

    /// <summary>The clamp at the reservoir's rim.</summary>
    public static SmallUse Clamp(RigLayout layout, PrintParameters start)
    {
        if (layout.Parts.Pump is null || !layout.Parts.Header.Flexible)
        {
            return SmallUse.None(
                "hoseClamp",
                layout.Parts.Pump is null ? Phrase.Of("print.found.no-pump") : Phrase.Of("print.found.rigid"),
                Phrase.Of("print.limit.pump"),
                Phrase.Of("print.remedy.strap")
            );
        }

        return new(
            [
                new(
                    start with
                    {
                        HoseOutside = layout.Parts.Header.OutsideDiameter,
                    },
                    1,
                    Phrase.Of("print.use.hose-clamp"),
                    [new(0, layout.Tank.PumpOutlet with { Z = layout.Tank.Rim })]
                ),
            ],
            null
        );
    }

    private static IEnumerable<PrintedSpot> OnLeg(Rig rig, RigLayout layout, RowLayout row, double x)
    {
        // The front leg: it is within reach.
        var leg = layout
            .Stand.Members.Where(tube => tube.Row == row.Number && tube.Role == MemberRole.Leg)
            .MinBy(tube => (Math.Round(Math.Abs(tube.From.X - x), 6), tube.From.Y))!;
        var tall = leg.To.Z - leg.From.Z;
        var least = StandLayout.FootFloor + rig.Stand.SocketDepth + Half;
        var most = tall - rig.Stand.JointCentre - rig.Stand.SocketDepth - Half;
        List<(double At, double Half)> taken = [.. Things(layout, leg)];
        foreach (var share in s_heights)
        {
            var clear = new ClearStations([.. taken.Order()]);
            if (clear.Nearest(share * tall, Half, least, most) is { } height)
            {
                taken.Add((height, Half));
                yield return new(row.Number, leg.From with { Z = leg.From.Z + height });
            }
        }
    }

    /// <summary>[m] What is around a leg already, from its foot up, and how far each reaches.</summary>
    private static IEnumerable<(double At, double Half)> Things(RigLayout layout, StandMember leg) =>
        layout
            .Stand.Joints.Where(joint =>
                Math.Abs(joint.At.X - leg.From.X) < Near && Math.Abs(joint.At.Y - leg.From.Y) < Near
            )
            .Select(joint =>
                (
                    joint.At.Z - leg.From.Z,
                    joint.Part switch
                    {
                        StandLayout.Hanger => DrainHanging.HalfLength,
                        StandLayout.Clamp => layout.Stand.Tube.Outside,
                        // A clip's block and the tie in it.
                        StandPlacement.Clip => layout.Stand.Tube.Outside,
                        _ => 0.0,
                    }
                )
            );
}
