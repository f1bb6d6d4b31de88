using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Proposing;

/// <summary>Everything that is tried for a brief. What the grower has in stock only ever adds to it.</summary>
internal sealed class SearchSpace
{
    /// <summary>Tanks tried for each frame: the cheapest that last long enough.</summary>
    private const int MostTanks = 2;

    private readonly Brief _brief;
    private readonly PartsCatalogue _catalogue;
    private readonly HashSet<string> _stock;

    public SearchSpace(Brief brief, PartsCatalogue catalogue)
    {
        _brief = brief;
        _catalogue = catalogue;
        _stock = [.. brief.OnHand.Select(h => h.Part)];
        Pot = catalogue.Pots[brief.Pot];
        Use = BriefPots.Use(brief, catalogue);
        Start = RigReader.Starter(brief.Units, catalogue);
        Patterns = RowPatterns.Of(brief, Pot, catalogue);
        Emitters = [.. Sold(catalogue.Emitters).OrderBy(e => e.Key, StringComparer.Ordinal)];
        AllPumps = [.. Sold(catalogue.Pumps).OrderBy(p => p.Key, StringComparer.Ordinal)];
        Pumps = [.. AllPumps.Where(Powered)];
        Frames = [.. FramesOf()];
    }

    public PartsCatalogue Catalogue => _catalogue;

    public PotType Pot { get; }

    /// <summary>A rig of defaults, from which all that is not searched is taken.</summary>
    public Rig Start { get; }

    public IReadOnlyList<RowPattern> Patterns { get; }

    public IReadOnlyList<EmitterType> Emitters { get; }

    /// <summary>Pumps that are sold, whether the circuit bears them or not.</summary>
    public IReadOnlyList<PumpModel> AllPumps { get; }

    /// <summary>Pumps that the circuit bears.</summary>
    public IReadOnlyList<PumpModel> Pumps { get; }

    public IReadOnlyList<Frame> Frames { get; }

    /// <summary>[m] The brief's room along the rows of a pattern, and across them.</summary>
    public (double Along, double Across) Room(RowPattern pattern) =>
        pattern.Across
            ? (_brief.Site.RoomWidth, _brief.Site.RoomLength)
            : (_brief.Site.RoomLength, _brief.Site.RoomWidth);

    /// <summary>[m³] What the plants drink in the days wanted.</summary>
    public double VolumeWanted => Use * _brief.DaysWanted;

    /// <summary>[m³/s] What all plants drink in a hot week.</summary>
    public double Use { get; }

    /// <summary>[m³] Most that a tank holds among those whose rim lies under the wall outlet.</summary>
    public double LargestFilled =>
        Sold(_catalogue.Tanks)
            .Where(t => t.Height <= _brief.Site.OutletHeight)
            .Select(FilledVolume)
            .DefaultIfEmpty(0)
            .Max();

    /// <summary>[m³] What a tank holds up to the mark of a rig file's default.</summary>
    public double FilledVolume(TankType tank)
    {
        var shape = tank.Inside;
        return shape.VolumeAt(Start.Reservoir.Fill * shape.Height);
    }

    /// <summary>Strainers for an emitter: the cheapest that is fine enough, and any in stock that is.</summary>
    public IReadOnlyList<StrainerType> Strainers(EmitterType emitter)
    {
        var allowed = emitter.Passage * RuleBook.Limit("strainer-coarse") * (1 + 1e-9);
        List<StrainerType> fine =
        [
            .. Sold(_catalogue.Strainers)
                .Where(s => s.Opening <= allowed)
                .OrderBy(Cheap)
                .ThenByDescending(s => s.Opening)
                .ThenBy(s => s.Key, StringComparer.Ordinal),
        ];
        return [.. fine.Take(1).Concat(fine.Where(s => _stock.Contains(s.Key))).Distinct()];
    }

    /// <summary>True where the circuit bears the pump beside its other loads.</summary>
    public bool Powered(PumpModel pump) =>
        (pump.Power + _brief.Site.OtherLoads) / _brief.Site.Voltage
        <= _brief.Site.Breaker * RuleBook.Limit("circuit-load");

    /// <summary>What of a group is sold in sizes the grower can buy, and what of it lies in stock.</summary>
    private IEnumerable<T> Sold<T>(IReadOnlyDictionary<string, T> group)
        where T : CatalogueEntry => group.Values.Where(p => Market.Sells(p, _brief.Units) || _stock.Contains(p.Key));

    private static decimal Cheap(CatalogueEntry part) => part.Price ?? part.TypicalPrice ?? decimal.MaxValue;

    private IEnumerable<Frame> FramesOf()
    {
        PipeSize[] sold =
        [
            .. Sold(_catalogue.Pipes)
                .Where(p => p.Flexible)
                .OrderBy(p => p.InsideDiameter)
                .ThenBy(p => p.Key, StringComparer.Ordinal),
        ];
        // In small rigs a wide line gains nothing that could be measured, so it is not tried.
        var sizes = BriefPots.Count(_brief, _catalogue) switch
        {
            <= FewPots => 2,
            <= ManyPots => 3,
            _ => sold.Length,
        };
        PipeSize[] hoses = [.. sold.Where((p, i) => i < sizes || _stock.Contains(p.Key))];
        int[] emitters =
        [
            .. new[]
            {
                _brief.LeastEmitters,
                Math.Max(2, _brief.LeastEmitters),
                Math.Max(4, _brief.LeastEmitters),
            }.Distinct(),
        ];
        bool[] sources =
        [
            .. Pumps.Count > 0 && Emitters.Count > 0 ? new[] { false } : [],
            .. _brief.TankShelf is not null && Emitters.Count > 0 ? new[] { true } : [],
        ];
        var index = 0;
        foreach (var gravity in sources)
        {
            var tanks = TanksFor(gravity);
            foreach (var pattern in Patterns)
            {
                foreach (var entry in Enum.GetValues<FeedEntry>())
                {
                    foreach (var exit in Enum.GetValues<DrainExit>())
                    {
                        foreach ((var line, var header) in Lines(hoses))
                        {
                            foreach (var drain in Drains(header))
                            {
                                foreach (var tank in tanks)
                                {
                                    foreach (var count in emitters)
                                    {
                                        yield return new Frame(
                                            index++,
                                            pattern,
                                            entry,
                                            exit,
                                            line.Key,
                                            header.Key,
                                            drain.Key,
                                            Start.Drain.Outlet,
                                            tank.Key,
                                            count,
                                            gravity
                                        );
                                    }
                                }
                            }
                        }
                    }
                }
            }
        }
    }

    // The header is as wide as the line or one size wider.
    private static IEnumerable<(PipeSize Line, PipeSize Header)> Lines(PipeSize[] hoses)
    {
        for (var i = 0; i < hoses.Length; i++)
        {
            yield return (hoses[i], hoses[i]);
            if (i + 1 < hoses.Length)
            {
                yield return (hoses[i], hoses[i + 1]);
            }
        }
    }

    // The narrowest drain that the rule of its bore allows, one wider where many pots run into it, and what is in stock.
    private IEnumerable<PipeSize> Drains(PipeSize header)
    {
        var hole = _catalogue.Outlets[Start.Drain.Outlet].PipeHole;
        var bore = 0.98 * RuleBook.Limit("drain-narrow") * header.InsideDiameter;
        PipeSize[] wide =
        [
            .. Sold(_catalogue.Pipes)
                .Where(p => !p.Flexible && p.InsideDiameter >= bore && p.InsideDiameter > hole)
                .OrderBy(p => p.InsideDiameter)
                .ThenBy(p => p.Key, StringComparer.Ordinal),
        ];
        var first = BriefPots.Count(_brief, _catalogue) > ManyPots ? 2 : 1;
        return wide.Take(first).Concat(wide.Where(p => _stock.Contains(p.Key))).Distinct();
    }

    /// <summary>Pots from which a second drain size is tried. Under it the narrowest never runs half full at a usual slope.</summary>
    private const int ManyPots = 60;

    /// <summary>Pots up to which only the two narrowest hoses are tried.</summary>
    private const int FewPots = 30;

    private List<TankType> TanksFor(bool gravity)
    {
        List<TankType> lasting =
        [
            .. Sold(_catalogue.Tanks)
                .Where(t => FilledVolume(t) >= VolumeWanted && (gravity || t.Height <= _brief.Site.OutletHeight))
                .OrderBy(Cheap)
                .ThenBy(t => t.Key, StringComparer.Ordinal),
        ];
        return
        [
            .. lasting
                .Where(t => Market.Sells(t, _brief.Units))
                .Take(MostTanks)
                .Concat(lasting.Where(t => _stock.Contains(t.Key)))
                .Distinct(),
        ];
    }
}
