using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Layout;

/// <summary>A row's feed line with its emitters.</summary>
/// <param name="Runs">Front leg, and for a loop the back leg, near and far cross pieces.</param>
/// <param name="Emitters">Emitters, left to right.</param>
/// <param name="Entries">[m] Stations at which the header enters.</param>
/// <param name="Height">[m] Height of the line's centre.</param>
internal sealed record RowFeed(
    IReadOnlyList<PipeRun> Runs,
    IReadOnlyList<EmitterPlace> Emitters,
    IReadOnlyList<double> Entries,
    double Height
);

/// <summary>Lays the feed line of a row.</summary>
internal static class FeedPlacement
{
    /// <summary>[m] Height of a row's feed line over the reservoir's floor level.</summary>
    public static double HeightOf(RowPlace row, Feed feed, RigParts parts) =>
        row.Base + (feed.LineHeight ?? (row.Pot.Height + (parts.Line.OutsideDiameter / 2)));

    /// <summary>Lays one row's line.</summary>
    public static RowFeed Lay(RowPlace row, Rig rig, RigParts parts)
    {
        var z = HeightOf(row, rig.Feed, parts);
        var emitters = Emitters(row, rig.Feed, z);
        var loop = rig.Feed.Entry == FeedEntry.Loop;
        var near = rig.Reservoir.At == RowEnd.Left ? 0 : row.Length;
        var far = row.Length - near;
        var label = $"F{Labels.Of(row.Number)}";
        var legOffset = loop ? LegOffset(row, parts) : 0;

        RunDraft Leg(string legLabel, double y, int leg)
        {
            var draft = new RunDraft(legLabel, RunService.Feed, row.Number, parts.Line, parts)
            {
                Path = [new Vector3(row.OriginX, y, z), new Vector3(row.OriginX + row.Length, y, z)],
                Start = 0,
                End = row.Length,
                FromEnd = near == 0,
            };
            foreach (var emitter in emitters.Where(e => e.Leg == leg))
            {
                draft.Drill(emitter.Station, HoleUse.Emitter, emitter.Pot, parts.Emitter.Punch);
            }

            draft.SortHoles();
            return draft;
        }

        if (loop)
        {
            var front = Leg($"{label}a", row.CentreY - legOffset, 0);
            var back = Leg($"{label}b", row.CentreY + legOffset, 1);
            foreach (var leg in (RunDraft[])[front, back])
            {
                leg.Fit(FittingKind.Elbow90, 0);
                leg.Fit(FittingKind.Elbow90, row.Length);
            }

            return new RowFeed(
                [
                    front.Finish(row.Joints),
                    back.Finish(row.Joints),
                    Cross($"{label}n", row, near, legOffset, z, parts, true),
                    Cross($"{label}f", row, far, legOffset, z, parts, false),
                ],
                emitters,
                [near],
                z
            );
        }

        var line = Leg(label, row.CentreY, 0);
        var end = FittingNeeds.Straight(parts.Line);
        double[] entries;
        switch (rig.Feed.Entry)
        {
            case FeedEntry.Middle:
                var tee = parts.Fitting(parts.Line, FittingKind.Tee);
                var clear = new ClearStations([.. line.Holes.Select(h => (h.Station, h.Diameter / 2))]);
                var reach = tee.LayingLength + tee.SocketDepth;
                var middle =
                    clear.Nearest(row.Length / 2, reach, reach, row.Length - reach, near > 0) ?? (row.Length / 2);
                line.Fit(FittingKind.Tee, middle);
                line.Fit(FittingKind.Cap, 0);
                line.Fit(FittingKind.Cap, row.Length);
                entries = [middle];
                break;
            case FeedEntry.BothEnds:
                line.Fit(end, 0);
                line.Fit(end, row.Length);
                entries = [near, far];
                break;
            default:
                line.Fit(end, near);
                line.Fit(FittingKind.Cap, far);
                entries = [near];
                break;
        }

        return new RowFeed([line.Finish(row.Joints)], emitters, entries, z);
    }

    private static double LegOffset(RowPlace row, RigParts parts)
    {
        var tee = parts.Fitting(parts.Line, FittingKind.Tee);
        var elbow = parts.Fitting(parts.Line, FittingKind.Elbow90);
        // The near cross piece must hold its tee between the two elbows.
        var least = tee.LayingLength + tee.SocketDepth + elbow.LayingLength + elbow.SocketDepth;
        var wanted = row.Spec.Arrangement == Arrangement.Staggered ? row.Spec.LineDistance / 2 : row.Pot.Width / 4;
        return Math.Max(least, wanted);
    }

    private static PipeRun Cross(
        string label,
        RowPlace row,
        double station,
        double offset,
        double z,
        RigParts parts,
        bool withTee
    )
    {
        var x = row.OriginX + station;
        var elbow = parts.Fitting(parts.Line, FittingKind.Elbow90).LayingLength;
        var draft = new RunDraft(label, RunService.Feed, row.Number, parts.Line, parts)
        {
            Path = [new Vector3(x, row.CentreY - offset, z), new Vector3(x, row.CentreY + offset, z)],
            Start = 0,
            End = 2 * offset,
            StartLaying = elbow,
            EndLaying = elbow,
        };
        if (withTee)
        {
            draft.Fit(FittingKind.Tee, offset);
        }

        return draft.Finish([]);
    }

    private static List<EmitterPlace> Emitters(RowPlace row, Feed feed, double z)
    {
        List<EmitterPlace> places = [];
        foreach (var pot in row.Pots)
        {
            foreach (var (i, offset) in Offsets(row.Spec, row.Pot, feed, pot.Emitters).Index())
            {
                places.Add(
                    new EmitterPlace(
                        pot.Number,
                        i + 1,
                        LegOf(row, feed, pot, i),
                        pot.Station + offset,
                        z + feed.OutletHeight,
                        pot.ValveOpen
                    )
                );
            }
        }

        return places;
    }

    /// <summary>[m] Where the emitters of a pot sit on the line, from the pot's station.</summary>
    /// <remarks>
    /// Evenly spread over the pot's share of the line, so that the whole line keeps one pitch; but in a wide row no farther
    /// than the small tube, laid slack, still reaches the pot.
    /// </remarks>
    public static IEnumerable<double> Offsets(Row row, PotType pot, Feed feed, int emitters)
    {
        var pitch = row.Spacing / emitters;
        if (emitters > 1)
        {
            var farthest = (pot.Length / 2) + (feed.MicrotubeLength / 2);
            pitch = Math.Min(pitch, 2 * farthest / (emitters - 1));
        }

        for (var i = 0; i < emitters; i++)
        {
            yield return (i - ((emitters - 1) / 2.0)) * pitch;
        }
    }

    private static int LegOf(RowPlace row, Feed feed, PotPlace pot, int emitter)
    {
        if (feed.Entry != FeedEntry.Loop)
        {
            return 0;
        }

        if (row.Spec.Arrangement == Arrangement.Staggered)
        {
            return pot.BackLine ? 1 : 0;
        }

        return pot.Emitters == 1 ? (pot.Number + 1) % 2 : emitter % 2;
    }
}
