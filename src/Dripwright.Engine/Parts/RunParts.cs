using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Parts;

/// <summary>Counts fittings and what joins them: clamps, cement, primer, tape, screens.</summary>
internal static class RunParts
{
    /// <summary>Joints that a small tin of cement makes in sizes up to 2 in. Common practice.</summary>
    private const int JointsPerCement = 25;

    /// <summary>Joints that a small tin of primer makes in sizes up to 2 in. Common practice.</summary>
    private const int JointsPerPrimer = 50;

    /// <summary>Threads that a roll of tape seals. Common practice.</summary>
    private const int ThreadsPerTape = 20;

    public static void Count(PartsTally tally, Rig rig, RigLayout layout)
    {
        var parts = layout.Parts;
        var sockets = 0;
        var threads = 0;

        void Add(FittingType type, PipeSize pipe, Phrase where)
        {
            tally.Add(type.Key, 1, where, rig.Spares.Fittings);
            if (type.Clamps > 0)
            {
                tally.Add(
                    parts.ClampKey(pipe),
                    type.Clamps,
                    Phrase.Of("part.where.clamp", pipe.Name),
                    rig.Spares.Fittings
                );
            }

            threads += type.Kind is FittingKind.Barb or FittingKind.Adapter ? 1 : 0;
            sockets += pipe.Flexible ? 0 : Sockets(type.Kind);
        }

        foreach (var run in layout.Runs)
        {
            foreach (var fitting in run.Fittings)
            {
                Add(fitting.Type, run.Pipe, PlaceOf(run));
            }
        }

        foreach ((var pipe, var where) in Ends(layout))
        {
            Add(parts.Fitting(pipe, FittingNeeds.Straight(pipe)), pipe, where);
        }

        var entries = layout.Rows.Sum(r => r.FeedEntries.Count);
        tally.Add("thread-coupling", entries, Phrase.Of("part.where.coupling"), rig.Spares.Fittings);
        if (parts.Pump is null)
        {
            tally.Add("bulkhead-fitting", 1, Phrase.Of("part.where.bulkhead"));
        }

        tally.Add(
            "pvc-cement",
            Share(sockets, JointsPerCement),
            Phrase.Of("part.where.welded"),
            note: Phrase.Counted("part.note.joints", sockets)
        );
        tally.Add(
            "pvc-primer",
            Share(sockets, JointsPerPrimer),
            Phrase.Of("part.where.welded"),
            note: Phrase.Counted("part.note.joints", sockets)
        );
        tally.Add(
            "thread-tape",
            Share(threads, ThreadsPerTape),
            Phrase.Of("part.where.threads"),
            note: Phrase.Counted("part.note.threads", threads)
        );
        tally.Add("vent-screen", layout.Returns.Count(IsVent), Phrase.Of("part.where.vents"));
    }

    /// <summary>Short pieces of pipe between a tee's branch and the thread beside it; the drawings show them as one joint.</summary>
    public static IEnumerable<(PipeSize Pipe, string Label, double Length)> Nipples(RigLayout layout)
    {
        var number = 0;
        foreach ((var pipe, var where) in Ends(layout))
        {
            if (where != StrainerPlace)
            {
                number++;
                var tee = layout.Parts.Fitting(pipe, FittingKind.Tee);
                var straight = layout.Parts.Fitting(pipe, FittingNeeds.Straight(pipe));
                yield return (pipe, $"N{Labels.Of(number)}", tee.SocketDepth + straight.SocketDepth);
            }
        }
    }

    private static Phrase StrainerPlace { get; } = Phrase.Of("part.where.strainer.sides");

    /// <summary>Thread ends that no run carries: beside the branches of tees, and at an inline strainer.</summary>
    private static IEnumerable<(PipeSize Pipe, Phrase Where)> Ends(RigLayout layout)
    {
        var parts = layout.Parts;
        for (var i = 0; i < layout.Rows.Count; i++)
        {
            foreach (var entry in layout.Rows[i].FeedEntries)
            {
                if (i < layout.Rows.Count - 1)
                {
                    yield return (parts.Header, Phrase.Of("part.where.tee.header"));
                }

                var atEnd = layout.Rows[i].Feed is [PipeRun line] && (entry <= line.Start || entry >= line.End);
                if (!atEnd)
                {
                    yield return (parts.Line, Phrase.Of("part.where.tee.entry"));
                }
            }
        }

        if (parts.Strainer is { Loss: > 0 })
        {
            yield return (parts.Header, StrainerPlace);
            yield return (parts.Header, StrainerPlace);
        }
    }

    private static bool IsVent(PipeRun run) => run.Label[0] == 'V';

    private static int Sockets(FittingKind kind) =>
        kind switch
        {
            FittingKind.Tee => 3,
            FittingKind.Cap or FittingKind.Adapter or FittingKind.Barb => 1,
            _ => 2,
        };

    private static int Share(int count, int each) => (count + each - 1) / each;

    private static Phrase PlaceOf(PipeRun run) =>
        run.Service switch
        {
            RunService.Header => Phrase.Of("part.where.header"),
            RunService.Feed => Phrase.Of("part.where.feed-line"),
            RunService.Drain => Phrase.Of("part.where.drain"),
            RunService.Bypass => Phrase.Of("part.where.bypass"),
            _ => IsVent(run) ? Phrase.Of("part.where.vent") : Phrase.Of("part.where.return"),
        };
}
