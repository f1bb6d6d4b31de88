using Dripwright.Engine.Findings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Water;

/// <summary>Judges emitters and strainer by what can happen to a single pot.</summary>
internal sealed class PotFeedRules(Rig rig, RigLayout layout, FeedPlan feed, Judgement judge)
{
    private const int FewestEmitters = 2;

    public void Judge()
    {
        Unlike();
        WeakPot();
        Strainer();
        Single();
        Empty();
        Unused();
    }

    /// <summary>Settings of valves that the rig does not have: the grower counts on them, and the plan does not.</summary>
    private void Unused()
    {
        if (rig.Feed.InlineValves)
        {
            return;
        }

        List<(string Field, double Open)> set =
        [
            .. rig.Feed.ValveOpen < 1 ? [("feed.valveOpen", rig.Feed.ValveOpen)] : (List<(string, double)>)[],
            .. rig
                .Rows.Index()
                .SelectMany(row =>
                    (row.Item.Planting ?? [])
                        .Index()
                        .Where(p => p.Item.ValveOpen < 1)
                        .Select(p =>
                            (
                                $"rows[{QuantityWords.Count(row.Index)}].planting[{QuantityWords.Count(p.Index)}].valveOpen",
                                p.Item.ValveOpen!.Value
                            )
                        )
                ),
        ];
        if (set.Count > 0)
        {
            judge.Add(
                "valves-missing",
                [Place.FeedLines],
                ["feed.inlineValves", .. set.Select(s => s.Field)],
                Phrase.Of("finding.valves-missing.what"),
                Phrase.Of("finding.valves-missing.value"),
                Phrase.Of("finding.valves-missing.limit"),
                Phrase.Of("finding.valves-missing.remedy"),
                // A valve that is shut would leave its plants dry: whether they are there is the grower's to say.
                set.TrueForAll(s => s.Open > 0)
                    ? RigCure.Offered(RigCure.Yes("feed.inlineValves"))
                    : []
            );
        }
    }

    private void Unlike()
    {
        var variation = layout.Parts.Emitter.Variation;
        var made = UniformityClasses.OfEmitters(variation);
        if (variation > RuleBook.Limit("emitters-unlike"))
        {
            judge.Add(
                "emitters-unlike",
                [Place.FeedLines],
                ["feed.emitter"],
                Phrase.Of("finding.emitters-unlike.what", Phrase.Of($"emitter.class.{made}")),
                Phrase.Of("finding.emitters-unlike.value", Measured.Share(variation)),
                Limit.AtMost(Measured.Share(RuleBook.Limit("emitters-unlike"))),
                Phrase.Of("finding.emitters-unlike.remedy")
            );
        }
    }

    private void WeakPot()
    {
        if (feed.Scatter is not { } scatter)
        {
            return;
        }

        List<PotFlow> planted = [.. feed.Pots.Where(p => p.Planted)];
        var worst = 0;
        for (var i = 1; i < scatter.ChanceOfBeingWeak.Count; i++)
        {
            worst = scatter.ChanceOfBeingWeak[i] > scatter.ChanceOfBeingWeak[worst] ? i : worst;
        }

        var chance = scatter.ChanceOfBeingWeak[worst];
        if (chance > RuleBook.Limit("weak-pot-likely"))
        {
            judge.Add(
                "weak-pot-likely",
                [Place.OfPot(planted[worst].Row, planted[worst].Pot)],
                ["feed.emittersPerPot", "feed.emitter", "feed.clogged"],
                Phrase.Of(
                    "finding.weak-pot-likely.what",
                    Measured.Share(rig.Feed.Clogged),
                    Math.Max(2, (int)Math.Round(1 / chance))
                ),
                Phrase.Of(Measured.Share(chance)),
                Limit.AtMost(Measured.Share(RuleBook.Limit("weak-pot-likely"))),
                Phrase.Of("finding.weak-pot-likely.remedy")
            );
        }
    }

    private void Strainer()
    {
        var passage = layout.Parts.Emitter.Passage;
        var allowed = passage * RuleBook.Limit("strainer-coarse") * (1 + 1e-9);
        if (layout.Parts.Strainer is not { } strainer)
        {
            judge.Add(
                "strainer-missing",
                [Place.Pump],
                ["feed.strainer"],
                Phrase.Of("finding.strainer-missing.what"),
                Phrase.Of("finding.strainer-missing.value"),
                Phrase.Of("finding.strainer-missing.limit", Measured.Opening(allowed)),
                Phrase.Of("finding.strainer-missing.remedy"),
                FineEnough(allowed)
            );
        }
        else if (strainer.Opening > allowed)
        {
            judge.Add(
                "strainer-coarse",
                [Place.Of("place.strainer")],
                ["feed.strainer", "feed.emitter"],
                Phrase.Of("finding.strainer-coarse.what", Measured.Opening(passage)),
                Phrase.Of(Measured.Opening(strainer.Opening)),
                Limit.AtMost(Measured.Opening(allowed)),
                Phrase.Of("finding.strainer-coarse.remedy"),
                FineEnough(allowed)
            );
        }
    }

    // The coarsest that is fine enough: the finer ones want cleaning more often.
    private IReadOnlyList<Cure> FineEnough(double allowed)
    {
        var fine = layout
            .Parts.Catalogue.Strainers.Values.Where(s => s.Opening <= allowed)
            .OrderByDescending(s => s.Opening)
            .ThenBy(s => s.Key, StringComparer.Ordinal)
            .FirstOrDefault();
        return RigCure.Offered(fine is null ? null : RigCure.Text("feed.strainer", fine.Key));
    }

    private void Single()
    {
        List<Place> single =
        [
            .. layout
                .Rows.Select(r => (r.Number, Pots: Single(r)))
                .Where(r => r.Pots.Count > 0)
                .Select(r => Place.OfPots(r.Number, r.Pots)),
        ];
        if (single.Count > 0)
        {
            judge.Add(
                "one-emitter",
                single,
                ["feed.emittersPerPot", "feed.emitter"],
                Phrase.Of("finding.one-emitter.what"),
                Phrase.Counted("count.emitters", 1),
                Phrase.Counted("count.emitters", FewestEmitters),
                Phrase.Of("finding.one-emitter.remedy"),
                RigCure.Offered([.. TwoEach()])
            );
        }
    }

    private static List<int> Single(RowLayout row) =>
        [.. row.Pots.Where(p => p.Planted && p.Emitters < FewestEmitters).Select(p => p.Number)];

    // What the feed says for all pots, and what a planting says for its own.
    private IEnumerable<FieldChange> TwoEach()
    {
        if (rig.Feed.EmittersPerPot < FewestEmitters)
        {
            yield return RigCure.Whole("feed.emittersPerPot", FewestEmitters);
        }

        foreach (var (r, row) in rig.Rows.Index())
        {
            foreach (var (p, planting) in (row.Planting ?? []).Index())
            {
                if (planting.Emitters < FewestEmitters)
                {
                    yield return RigCure.Whole(
                        $"rows[{QuantityWords.Count(r)}].planting[{QuantityWords.Count(p)}].emitters",
                        FewestEmitters
                    );
                }
            }
        }
    }

    private void Empty()
    {
        if (feed.EmptyPots is { } empty)
        {
            judge.Add(
                "empty-pots",
                [Place.FeedLines],
                ["feed.inlineValves", "feed.emittersAtEmptyPots"],
                Phrase.Counted(
                    "finding.empty-pots.what",
                    empty.EmptyPots,
                    Measured.Flow(empty.WastedOpen),
                    Measured.Flow(empty.PlantedFlowOpen),
                    Measured.Flow(empty.PlantedFlowShut)
                ),
                Phrase.Of(Measured.Flow(empty.WastedOpen)),
                Phrase.Of("finding.empty-pots.limit"),
                rig.Feed.InlineValves
                    ? Phrase.Of("finding.empty-pots.valves.remedy")
                    : Phrase.Of("finding.empty-pots.plugs.remedy")
            );
        }
    }
}
