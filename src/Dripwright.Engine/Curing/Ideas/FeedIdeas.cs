using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Curing.Ideas;

/// <summary>What a grower changes at pump, feed line and emitters.</summary>
internal static class FeedIdeas
{
    private static readonly double[] s_less = [0.75, 0.5, 0.35, 0.25, 0.15, 0.1, 0.05];

    /// <summary>Every valve between the pump and the pots wide open.</summary>
    public static IEnumerable<Cure> OpenUp(Asked asked)
    {
        var feed = asked.Rig.Feed;
        List<FieldChange> all = [];
        if (feed.Throttle is not null)
        {
            all.Add(Set.Out("feed.throttle"));
            yield return Cure.Of([all[^1]]);
        }

        if (feed.Bypass is not null)
        {
            all.Add(Set.Out("feed.bypass"));
            yield return Cure.Of([all[^1]]);
        }

        if (all.Count > 1)
        {
            yield return Cure.Of([.. all]);
        }

        List<FieldChange> valves = [.. Valves(asked.Rig)];
        if (valves.Count > 0)
        {
            yield return Cure.Of(valves);
            if (all.Count > 0)
            {
                yield return Cure.Of([.. all, .. valves]);
            }
        }
    }

    private static IEnumerable<FieldChange> Valves(Rig rig)
    {
        if (!rig.Feed.InlineValves)
        {
            yield break;
        }

        if (rig.Feed.ValveOpen < 1)
        {
            yield return Set.Share("feed.valveOpen", 1);
        }

        foreach (var (r, row) in rig.Rows.Index())
        {
            foreach (var (p, planting) in (row.Planting ?? []).Index())
            {
                if (planting.ValveOpen < 1)
                {
                    yield return Set.Share(Asked.Row(r, $"planting[{Units.QuantityWords.Count(p)}].valveOpen"), 1);
                }
            }
        }
    }

    /// <summary>The pump throttled in the header.</summary>
    public static IEnumerable<Cure> Throttle(Asked asked) =>
        s_less
            .Where(s => s < (asked.Rig.Feed.Throttle ?? 1) - 0.01)
            .Select(s => Cure.Of([Set.Share("feed.throttle", s)]));

    /// <summary>Part of the water let back before it is lifted.</summary>
    public static IEnumerable<Cure> LetBack(Asked asked) =>
        asked.Parts.Pump is null
            ? []
            : new[] { 0.25, 0.5, 0.75, 1 }
                .Where(s => s > (asked.Rig.Feed.Bypass ?? 0) + 0.01)
                .Select(s => Cure.Of([Set.Share("feed.bypass", s)]));

    /// <summary>A pump that lifts higher or gives more, the one with the least power first; throttles and bypass as they are.</summary>
    public static IEnumerable<Cure> StrongerPump(Asked asked)
    {
        var now = asked.Parts.Pump;
        return asked
            .Sold(asked.Catalogue.Pumps)
            .Where(p => now is null || p.Curve[0].Head > now.Curve[0].Head || p.Curve[^1].Flow > now.Curve[^1].Flow)
            .OrderBy(p => p.Power)
            .ThenBy(p => p.Key, StringComparer.Ordinal)
            .Select(p => Pump(asked.Rig, p.Key));
    }

    /// <summary>A stronger pump with every valve behind it open.</summary>
    public static IEnumerable<Cure> StrongerOpened(Asked asked) =>
        OpenUp(asked).LastOrDefault() is { } open
            ? StrongerPump(asked).Select(pump => Cure.Of([.. pump.Changes, .. open.Changes]))
            : [];

    /// <summary>A pump that takes less power, the strongest of them first.</summary>
    public static IEnumerable<Cure> SmallerPump(Asked asked) =>
        asked.Parts.Pump is not { } now
            ? []
            : asked
                .Sold(asked.Catalogue.Pumps)
                .Where(p => p.Power < now.Power)
                .OrderByDescending(p => p.Power)
                .ThenBy(p => p.Key, StringComparer.Ordinal)
                .Select(p => Pump(asked.Rig, p.Key));

    /// <summary>The change to a pump of the catalogue; figures of the grower's own pump go with it.</summary>
    public static Cure Pump(Rig rig, string model)
    {
        var own = rig.Pump;
        List<FieldChange> changes = [Set.To("pump.model", model)];
        Drop("pump.curve", own.Curve);
        Drop("pump.shutOffHead", own.ShutOffHead);
        Drop("pump.openFlow", own.OpenFlow);
        Drop("pump.power", own.Power);
        Drop("pump.cord", own.Cord);
        Drop("pump.inletHeight", own.InletHeight);
        return Cure.Of(changes);

        void Drop(string path, object? said)
        {
            if (said is not null)
            {
                changes.Add(Set.Out(path));
            }
        }
    }

    /// <summary>A wider feed line, a wider header, or both.</summary>
    public static IEnumerable<Cure> WiderLine(Asked asked)
    {
        PipeSize[] hoses = [.. Hoses(asked)];
        foreach (var wider in hoses.Where(p => p.InsideDiameter > asked.Parts.Line.InsideDiameter))
        {
            yield return Cure.Of([Set.To("feed.line", wider.Key)]);
        }
    }

    public static IEnumerable<Cure> WiderHeader(Asked asked)
    {
        foreach (var wider in Hoses(asked).Where(p => p.InsideDiameter > asked.Parts.Header.InsideDiameter))
        {
            yield return Cure.Of([Set.To("feed.header.pipe", wider.Key)]);
        }
    }

    public static IEnumerable<Cure> WiderBoth(Asked asked)
    {
        var least = Math.Max(asked.Parts.Line.InsideDiameter, asked.Parts.Header.InsideDiameter);
        foreach (var wider in Hoses(asked).Where(p => p.InsideDiameter > least))
        {
            yield return Cure.Of([Set.To("feed.line", wider.Key), Set.To("feed.header.pipe", wider.Key)]);
        }
    }

    public static IEnumerable<Cure> NarrowerHeader(Asked asked) =>
        Hoses(asked)
            .Where(p => p.InsideDiameter < asked.Parts.Header.InsideDiameter)
            .Reverse()
            .Select(p => Cure.Of([Set.To("feed.header.pipe", p.Key)]));

    private static IEnumerable<PipeSize> Hoses(Asked asked) =>
        asked
            .Sold(asked.Catalogue.Pipes)
            .Where(p => p.Flexible)
            .OrderBy(p => p.InsideDiameter)
            .ThenBy(p => p.Key, StringComparer.Ordinal);

    /// <summary>The line fed at another place.</summary>
    public static IEnumerable<Cure> OtherEntry(Asked asked) =>
        new[]
        {
            (FeedEntry.Middle, "middle"),
            (FeedEntry.Loop, "loop"),
            (FeedEntry.BothEnds, "both-ends"),
            (FeedEntry.End, "end"),
        }
            .Where(e => e.Item1 != asked.Rig.Feed.Entry)
            .Select(e => Cure.Of([Set.To("feed.entry", e.Item2)]));

    /// <summary>Emitters that give less, the next smaller first.</summary>
    public static IEnumerable<Cure> SmallerEmitter(Asked asked) =>
        Emitters(asked, e => e.RatedFlow < asked.Parts.Emitter.RatedFlow)
            .OrderByDescending(e => e.RatedFlow)
            .Select(Take);

    /// <summary>Emitters that give more, the next larger first.</summary>
    public static IEnumerable<Cure> LargerEmitter(Asked asked) =>
        Emitters(asked, e => e.RatedFlow > asked.Parts.Emitter.RatedFlow).OrderBy(e => e.RatedFlow).Select(Take);

    /// <summary>Other emitters: those that need least pressure first.</summary>
    public static IEnumerable<Cure> EmitterForLowPressure(Asked asked) =>
        Emitters(asked, e => e.MinPressure <= asked.Parts.Emitter.MinPressure)
            .OrderBy(e => e.MinPressure)
            .ThenBy(e => Math.Abs(Math.Log(e.RatedFlow / asked.Parts.Emitter.RatedFlow)))
            .Select(Take);

    /// <summary>Other emitters: those that stand most pressure first.</summary>
    public static IEnumerable<Cure> EmitterForHighPressure(Asked asked) =>
        Emitters(asked, e => e.MaxPressure > asked.Parts.Emitter.MaxPressure)
            .OrderBy(e => Math.Abs(Math.Log(e.RatedFlow / asked.Parts.Emitter.RatedFlow)))
            .Select(Take);

    /// <summary>Emitters that are made more alike, and those that keep their flow under any pressure first.</summary>
    public static IEnumerable<Cure> AlikeEmitter(Asked asked) =>
        Emitters(asked, e => true)
            .OrderBy(e => e.Exponent > 0.3)
            .ThenBy(e => e.Variation)
            .ThenBy(e => Math.Abs(Math.Log(e.RatedFlow / asked.Parts.Emitter.RatedFlow)))
            .Select(Take);

    private static IEnumerable<EmitterType> Emitters(Asked asked, Func<EmitterType, bool> wanted) =>
        asked
            .Sold(asked.Catalogue.Emitters)
            .Where(e => e.Key != asked.Parts.Emitter.Key && wanted(e))
            .OrderBy(e => e.Key, StringComparer.Ordinal);

    private static Cure Take(EmitterType emitter) => Cure.Of([Set.To("feed.emitter", emitter.Key)]);

    /// <summary>More emitters at every pot.</summary>
    public static IEnumerable<Cure> MoreEmitters(Asked asked) => Emitters(asked, 1, 2, 4);

    /// <summary>Fewer emitters at every pot.</summary>
    public static IEnumerable<Cure> FewerEmitters(Asked asked) => Emitters(asked, -1, -2);

    private static IEnumerable<Cure> Emitters(Asked asked, params int[] more)
    {
        var rig = asked.Rig;
        foreach (var by in more)
        {
            List<FieldChange?> changes = [Fewest(rig.Feed.EmittersPerPot + by, "feed.emittersPerPot")];
            foreach (var (r, row) in rig.Rows.Index())
            {
                foreach (var (p, planting) in (row.Planting ?? []).Index())
                {
                    if (planting.Emitters is { } own)
                    {
                        changes.Add(
                            Fewest(own + by, Asked.Row(r, $"planting[{Units.QuantityWords.Count(p)}].emitters"))
                        );
                    }
                }
            }

            foreach (var cure in Set.Cure([.. changes]))
            {
                yield return cure;
            }
        }
    }

    private static FieldChange? Fewest(int count, string path) => Set.Whole(path, Math.Max(1, count));

    /// <summary>The line as low as the plan lays it, or lower.</summary>
    public static IEnumerable<Cure> LowerLine(Asked asked)
    {
        if (asked.Rig.Feed.LineHeight is null)
        {
            return [];
        }

        return [Cure.Of([Set.Out("feed.lineHeight")])];
    }

    /// <summary>Drip points level with the line, or above it.</summary>
    public static IEnumerable<Cure> HigherDrip(Asked asked) =>
        new[] { 0, 0.05, 0.1, 0.2, 0.3 }
            .Where(h => h > asked.Rig.Feed.OutletHeight + 1e-6)
            .SelectMany(h => Set.Cure(RigCure.LengthUp(asked.Rig, "feed.outletHeight", h)));

    public static IEnumerable<Cure> LowerDrip(Asked asked) =>
        asked.Rig.Feed.OutletHeight > 0 ? Set.Cure(RigCure.LengthDown(asked.Rig, "feed.outletHeight", 0)) : [];

    /// <summary>Shorter microtubes.</summary>
    public static IEnumerable<Cure> ShorterTubes(Asked asked) =>
        new[] { 0.5, 0.25, 0 }
            .Where(_ => asked.Rig.Feed.MicrotubeLength > 0.02)
            .SelectMany(s =>
                Set.Cure(RigCure.LengthDown(asked.Rig, "feed.microtubeLength", s * asked.Rig.Feed.MicrotubeLength))
            );

    /// <summary>A wider bore of the microtubes.</summary>
    public static IEnumerable<Cure> WiderTubes(Asked asked) =>
        asked.Rig.Feed.MicrotubeLength > 0.02 && asked.Rig.Feed.MicrotubeBore < 0.0039
            ? Set.Cure(RigCure.Text("feed.microtubeBore", "4 mm"))
            : [];

    /// <summary>A check valve at the pump.</summary>
    public static IEnumerable<Cure> CheckValve(Asked asked) =>
        asked.Rig.Feed.CheckValve ? [] : Set.Cure(RigCure.Yes("feed.checkValve"));

    /// <summary>The header as the plan lays it, without what the file says of its way.</summary>
    public static IEnumerable<Cure> ShorterHeader(Asked asked)
    {
        var header = asked.Rig.Feed.Header;
        List<FieldChange> changes = [];
        if (header.Run is not null)
        {
            changes.Add(Set.Out("feed.header.run"));
        }

        if (header.Rise is not null)
        {
            changes.Add(Set.Out("feed.header.rise"));
        }

        return changes.Count > 0 ? [Cure.Of(changes)] : [];
    }

    /// <summary>All rows on one floor: none stands so much higher that the water goes to the others.</summary>
    public static IEnumerable<Cure> EvenRows(Asked asked)
    {
        var rows = asked.Rig.Rows;
        if (rows.Select(r => r.FloorLevel + r.StandHeight).Distinct().Count() > 1)
        {
            var lowest = rows.Min(r => r.FloorLevel + r.StandHeight);
            List<FieldChange?> stands = [];
            foreach (var (i, row) in rows.Index().Where(r => r.Item.FloorLevel + r.Item.StandHeight > lowest + 1e-6))
            {
                stands.Add(RigCure.LengthDown(asked.Rig, Asked.Row(i, "standHeight"), lowest - row.FloorLevel));
            }

            foreach (var cure in Set.Cure([.. stands]))
            {
                yield return cure;
            }

            foreach (
                var cure in Asked.Each(asked.AllSpecs, i => RigCure.LengthUp(asked.Rig, Asked.Row(i, "floorLevel"), 0))
            )
            {
                yield return Cure.Of([
                    .. cure.Changes,
                    .. asked.AllSpecs.Select(i =>
                        RigCure.LengthUp(asked.Rig, Asked.Row(i, "standHeight"), rows.Max(r => r.StandHeight))!
                    ),
                ]);
            }
        }
    }
}
