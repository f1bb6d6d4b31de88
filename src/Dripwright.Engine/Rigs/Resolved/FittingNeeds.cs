using Dripwright.Engine.Catalogue;

namespace Dripwright.Engine.Rigs;

/// <summary>A fitting that the rig cannot be laid out without.</summary>
/// <param name="Path">Field of the rig file that names the pipe.</param>
/// <param name="Pipe">The pipe.</param>
/// <param name="Kind">What the fitting must do.</param>
internal readonly record struct FittingNeed(string Path, PipeSize Pipe, FittingKind Kind);

/// <summary>Every fitting that the layout of a rig may ask for: what it asks beyond these is a bug.</summary>
internal static class FittingNeeds
{
    public static IEnumerable<FittingNeed> Of(Rig rig, PipeSize line, PipeSize header, PipeSize drain) =>
        [
            .. OfLine(rig.Feed).Append(Straight(line)).Select(kind => new FittingNeed("feed.line", line, kind)),
            .. OfHeader(rig).Append(Straight(header)).Select(kind => new FittingNeed("feed.header.pipe", header, kind)),
            .. OfDrain(rig).Select(kind => new FittingNeed("drain.pipe", drain, kind)),
        ];

    /// <summary>What takes a pipe's end to a thread.</summary>
    public static FittingKind Straight(PipeSize pipe) => pipe.Flexible ? FittingKind.Barb : FittingKind.Adapter;

    // Every run may be longer than its stock: couplings always.
    private static FittingKind[] OfLine(Feed feed) =>
        feed.Entry switch
        {
            FeedEntry.Loop => [FittingKind.Coupling, FittingKind.Tee, FittingKind.Elbow90],
            FeedEntry.Middle => [FittingKind.Coupling, FittingKind.Tee, FittingKind.Cap],
            FeedEntry.BothEnds => [FittingKind.Coupling],
            _ => [FittingKind.Coupling, FittingKind.Cap],
        };

    private static IEnumerable<FittingKind> OfHeader(Rig rig)
    {
        var feed = rig.Feed;
        var both = feed.Entry is FeedEntry.BothEnds;
        var bypass = feed.Bypass is not null;
        yield return FittingKind.Coupling;
        if (feed.CheckValve)
        {
            yield return FittingKind.CheckValve;
        }

        if (bypass || feed.Throttle is not null)
        {
            yield return FittingKind.Valve;
        }

        if (bypass || both || feed.Header.Elbows > 0)
        {
            yield return FittingKind.Elbow90;
        }

        if (bypass || both || SeveralRows(rig))
        {
            yield return FittingKind.Tee;
        }
    }

    private static IEnumerable<FittingKind> OfDrain(Rig rig)
    {
        yield return FittingKind.Coupling;
        yield return FittingKind.Elbow90;
        if (!rig.Drain.Vent)
        {
            yield return FittingKind.Cap;
        }

        if (rig.Drain.Exit is DrainExit.Middle || SeveralRows(rig))
        {
            yield return FittingKind.Tee;
        }
    }

    private static bool SeveralRows(Rig rig) => rig.Rows.Sum(row => row.Count) > 1;
}
