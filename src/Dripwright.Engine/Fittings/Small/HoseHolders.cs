using Dripwright.Engine.Layout;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Fittings;

/// <summary>Where a header of hose is held.</summary>
internal static class HoseHolders
{
    /// <summary>[-] Heights of the two clips on their leg, by its length: clear of foot, ties and joint. Common practice.</summary>
    private static readonly double[] s_heights = [0.45, 0.85];

    /// <summary>Clips on the leg of the frame where the header comes in.</summary>
    public static SmallUse Clips(Rig rig, RigLayout layout)
    {
        if (!layout.Parts.Header.Flexible)
        {
            return SmallUse.None("hoseClips", "a header of rigid pipe", "a header of hose", "hold it with pipe straps");
        }

        if (layout.Rows.FirstOrDefault(row => row.Frames.Count > 0) is not { } row)
        {
            return SmallUse.None(
                "hoseClips",
                "no stand",
                "a leg of the stand near the header",
                "hold it with pipe straps"
            );
        }

        PrintedSpot[] spots = [.. row.FeedEntries.SelectMany(entry => OnLeg(layout, row, row.OriginX + entry))];
        return new(
            [
                new(
                    start => start with { HoseOutside = layout.Parts.Header.OutsideDiameter },
                    spots.Length,
                    $"hold the header to the leg next to where it comes into row {Text.Of(row.Number)}",
                    spots
                ),
            ],
            null
        );
    }

    /// <summary>The clamp at the reservoir's rim.</summary>
    public static SmallUse Clamp(RigLayout layout)
    {
        if (layout.Parts.Pump is null || !layout.Parts.Header.Flexible)
        {
            return SmallUse.None(
                "hoseClamp",
                layout.Parts.Pump is null ? "no pump" : "a header of rigid pipe",
                "a pump in the reservoir and a header of hose",
                "hold the header with a pipe strap"
            );
        }

        return new(
            [
                new(
                    start => start with { HoseOutside = layout.Parts.Header.OutsideDiameter },
                    1,
                    "around the header at the reservoir's rim, through its lid or a board",
                    [new(0, layout.Tank.PumpOutlet with { Z = layout.Tank.Rim })]
                ),
            ],
            null
        );
    }

    private static IEnumerable<PrintedSpot> OnLeg(RigLayout layout, RowLayout row, double x)
    {
        // The front leg: it is within reach.
        StandMember leg = layout
            .Stand.Members.Where(tube => tube.Row == row.Number && tube.Role == MemberRole.Leg)
            .MinBy(tube => (Math.Round(Math.Abs(tube.From.X - x), 6), tube.From.Y))!;
        return s_heights.Select(share => new PrintedSpot(
            row.Number,
            leg.From with
            {
                Z = leg.From.Z + (share * (leg.To.Z - leg.From.Z)),
            }
        ));
    }
}
