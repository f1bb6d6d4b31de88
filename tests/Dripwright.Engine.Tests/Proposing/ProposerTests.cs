using System.Globalization;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Proposing;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Tests.Planning;
using Dripwright.Language;

namespace Dripwright.Engine.Tests.Proposing;

public sealed class ProposerTests
{
    private static readonly PlanOptions s_whole = new() { Draws = 0 };
    private static readonly ProposalList s_small = Briefs.Propose(Briefs.Small);

    [Theory]
    [InlineData("""{ "crops": [{ "plants": 10 }] }""")]
    [InlineData(
        """
            { "units": "metric", "site": { "roomLength": "5 m", "roomWidth": "4 m" }, "tankShelf": "2.2 m",
              "crops": [{ "crop": "basil", "plants": 5 }, { "crop": "tomato", "plants": 7 }], "leastEmitters": 1, "daysWanted": "1 d" }
            """
    )]
    public void Every_rig_proposed_reads_back_and_passes_every_rule(string brief)
    {
        var answer = Proposer.Of(
            Briefs.From(brief),
            PartsCatalogue.Default,
            new() { MostPlans = 80 },
            null,
            TestContext.Current.CancellationToken
        );
        Assert.NotEmpty(answer.Proposals);
        foreach (var proposal in answer.Proposals)
        {
            foreach (var text in new[] { RigWriter.Write(proposal.Rig), RigWriter.WriteShort(proposal.Rig) })
            {
                var reading = RigReader.Read(text, "proposal", PartsCatalogue.Default);
                Assert.Empty(reading.Faults.Told().Select(f => f.ToString()));
                var plan = Planner.Completed(Plans.Of(reading.Rig!), s_whole);
                Assert.True(Briefs.Passes(plan));
                Assert.Equal(proposal.Cost, plan.Parts.Cost.Known);
                Assert.Equal(proposal.Uniformity, plan.Feed.Uniformity[0].Value);
            }

            Assert.False(Search.IsThirsty(proposal.Plan));
            Assert.Equal(
                BriefPots.Count(Briefs.From(brief), PartsCatalogue.Default),
                proposal.Plan.Layout.Rows.Sum(r => r.Pots.Count(p => p.Planted))
            );
        }
    }

    [Fact]
    public void The_list_is_cheapest_first_and_no_rig_of_it_beats_another()
    {
        Assert.True(s_small.Search.Complete);
        Assert.InRange(s_small.Proposals.Count, 2, UniformityMarks.All.Count);
        foreach ((var one, var next) in s_small.Proposals.Zip(s_small.Proposals.Skip(1)))
        {
            Assert.True(one.Cost < next.Cost && one.Uniformity < next.Uniformity);
        }

        Assert.All(
            s_small.Proposals,
            p =>
            {
                Assert.True(p.Proven);
                Assert.False(string.IsNullOrWhiteSpace(p.Why.Told()));
            }
        );
    }

    [Fact]
    public void The_search_finds_what_trying_everything_finds_and_its_bounds_hold()
    {
        var found = Briefs.Propose(Briefs.Small, Briefs.Fewest);
        Assert.InRange(found.Proposals.Count, 2, UniformityMarks.All.Count);
        var brief = Briefs.From(Briefs.Small, Briefs.Fewest);
        var space = new SearchSpace(brief, Briefs.Fewest);
        var candidates = new CandidateList(brief, space);
        var quick = new CostFloor(brief, space, candidates, Briefs.Fewest);
        var placement = new FramePlacement(brief, space, Briefs.Fewest, new Shortage());
        List<(decimal Cost, double Uniformity, Rig Rig)> all = [];
        foreach (var frame in space.Frames)
        {
            if (placement.Place(frame) is not { } draft)
            {
                continue;
            }

            HashSet<(string?, string, string)> kept =
            [
                .. candidates.Of(draft).Select(c => (c.Pump?.Key, c.Emitter.Key, c.Strainer.Key)),
            ];
            foreach (var pump in space.Pumps)
            {
                foreach (var emitter in space.Emitters)
                {
                    foreach (var strainer in space.Strainers(emitter))
                    {
                        var floor =
                            draft.Floor
                            + candidates.PumpCost(pump)
                            + candidates.EmitterCost(emitter, draft.Emitters)
                            + candidates.Cost(strainer, 1, 0);
                        var best = CandidateList.Best(emitter, frame.Emitters);
                        if (new Candidate(draft, pump, emitter, strainer, floor, best).ToRig() is not { } rig)
                        {
                            continue;
                        }

                        var plan = Plans.Of(rig, Briefs.Fewest);
                        Assert.InRange(floor, quick.Of(frame), plan.Parts.Cost.Known);
                        // The stand of each that passes otherwise is loaded for itself, whatever others of its frame did.
                        if (!Briefs.Passes(plan) || Search.IsThirsty(plan))
                        {
                            continue;
                        }

                        plan = Planner.Completed(plan, s_whole);
                        if (!Briefs.Passes(plan))
                        {
                            continue;
                        }

                        var uniformity = plan.Feed.Uniformity[0].Value;
                        Assert.InRange(uniformity, 0, best + 1e-9);
                        Assert.Contains((pump.Key, emitter.Key, strainer.Key), kept);
                        all.Add((plan.Parts.Cost.Known, uniformity, rig));
                    }
                }
            }
        }

        var cheapest = UniformityMarks
            .All.Select(mark => all.Where(r => r.Uniformity >= mark).ToList())
            .Where(reach => reach.Count > 0)
            .Select(reach => reach.OrderBy(r => r.Cost).ThenByDescending(r => r.Uniformity).First())
            .Select(r => (r.Cost, r.Uniformity))
            .Distinct();
        Assert.Equal(cheapest, found.Proposals.Select(p => (p.Cost, p.Uniformity)));
        Assert.All(
            found.Proposals,
            p => Assert.DoesNotContain(all, r => r.Cost <= p.Cost && r.Uniformity > p.Uniformity)
        );
    }

    /// <summary>What may lie in stock; each takes a whole search.</summary>
    public static TheoryData<string> Stock =>
        [
            .. Trials.Of(
                2,
                [
                    """{ "part": "pump-400gph", "count": 2 }""",
                    """{ "part": "hose-1", "length": "60 ft" }""",
                    """{ "part": "tank-box-35-gal" }""",
                    """{ "part": "tube-round-1in-16ga", "length": "5 ft", "count": 4 }""",
                    """{ "part": "pump-1500lph" }""",
                    """{ "part": "drip-turbulent-1gph", "count": 7 }""",
                ]
            ),
        ];

    [Theory]
    [MemberData(nameof(Stock))]
    public void What_lies_in_stock_never_makes_the_cheapest_dearer(string have)
    {
        var with = Briefs.Propose(Briefs.Small.Replace("}],", $"}}], \"onHand\": [{have}],", StringComparison.Ordinal));
        Assert.True(with.Search.Complete);
        Assert.True(with.Proposals[0].Cost <= s_small.Proposals[0].Cost);
    }

    [Fact]
    public void More_budget_never_loses_a_proposal()
    {
        foreach (var last in s_small.Proposals)
        {
            var budget = (int)Math.Ceiling(last.Cost);
            var within = Briefs.Propose(WithBudget(budget));
            Assert.Equal(
                s_small.Proposals.Where(p => p.Cost <= budget).Select(p => (p.Cost, p.Uniformity)),
                within.Proposals.Select(p => (p.Cost, p.Uniformity))
            );
        }
    }

    [Fact]
    public void A_budget_too_small_says_how_much_is_missing()
    {
        var answer = Briefs.Propose(WithBudget(100));
        Assert.Empty(answer.Proposals);
        var said = Assert.Single(answer.Obstacles);
        Assert.Contains(
            s_small.Proposals[0].Cost.ToString("0.00", CultureInfo.InvariantCulture),
            said.What.Told(),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void The_same_brief_gets_the_same_answer_in_every_culture()
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal(Briefs.Text(s_small), Briefs.Text(Briefs.Propose(Briefs.Small)));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void Lengths_in_other_units_get_the_same_answer()
    {
        var metric = Briefs
            .Small.Replace("14 ft", "426.72 cm", StringComparison.Ordinal)
            .Replace("6 ft", "1828.8 mm", StringComparison.Ordinal)
            .Replace("12 in", "30.48 cm", StringComparison.Ordinal);
        Assert.Equal(
            s_small.Proposals.Select(p => (p.Cost, p.Why)),
            Briefs.Propose(metric).Proposals.Select(p => (p.Cost, p.Why))
        );
    }

    [Fact]
    public void A_search_that_is_stopped_keeps_the_best_so_far()
    {
        using var stop = new CancellationTokenSource();
        var progress = new StopAtFirst(stop);
        var answer = Proposer.Of(Briefs.From(Briefs.Small, Briefs.Few), Briefs.Few, null, progress, stop.Token);
        Assert.True(answer.Search.Stopped);
        Assert.NotEmpty(answer.Proposals);
        Assert.All(answer.Proposals, p => Assert.True(Briefs.Passes(p.Plan)));
        Assert.InRange(answer.Search.Planned, 1, s_small.Search.Planned);

        stop.Cancel();
        var none = Proposer.Of(Briefs.From(Briefs.Small, Briefs.Few), Briefs.Few, null, null, stop.Token);
        Assert.True(none.Search.Stopped);
        Assert.Empty(none.Proposals);
        Assert.NotEmpty(none.Obstacles);
    }

    [Fact]
    public void A_bounded_search_states_a_gap_that_is_true()
    {
        var brief = Briefs.From(Briefs.Small, Briefs.Few);
        foreach (var plans in new[] { 0, 3, 10, 30 })
        {
            var bounded = Proposer.Of(
                brief,
                Briefs.Few,
                new() { MostPlans = plans, MostPlacings = 40 },
                null,
                TestContext.Current.CancellationToken
            );
            if (bounded.Search.Complete)
            {
                continue;
            }

            var least = bounded.Search.LeastCostUnexamined!.Value;
            // What the whole search found and this one did not must cost at least the bound.
            var missed = s_small
                .Proposals.Select(p => (p.Cost, p.Uniformity))
                .Except(bounded.Proposals.Select(p => (p.Cost, p.Uniformity)));
            Assert.All(missed, p => Assert.True(p.Cost >= least));
            Assert.All(
                bounded.Proposals.Where(p => p.Proven),
                p => Assert.Contains(s_small.Proposals, q => q.Cost == p.Cost && q.Uniformity == p.Uniformity)
            );
        }
    }

    [Theory]
    [InlineData(
        """{ "site": { "roomLength": "6 ft", "roomWidth": "5 ft" }, "crops": [{ "plants": 40 }] }""",
        "holds at most"
    )]
    [InlineData("""{ "site": { "otherLoads": "1500 W" }, "crops": [{ "plants": 4 }] }""", "not even the smallest pump")]
    [InlineData("""{ "crops": [{ "plants": 10 }], "daysWanted": "60 d" }""", "the largest tank")]
    [InlineData("""{ "crops": [{ "plants": 10 }], "aisle": "20 in" }""", "aisle-narrow")]
    [InlineData(
        """{ "crops": [{ "plants": 6 }], "pot": "pot-round-5-gal", "site": { "roomHeight": "3 ft" } }""",
        "room-low"
    )]
    [InlineData(
        """{ "crops": [{ "plants": 6, "spacing": "12 in" }], "aisle": "24 in", "site": { "roomLength": "4 ft", "roomWidth": "4 ft" } }""",
        "than the room"
    )]
    public void An_impossible_brief_says_why_and_what_would_help(string brief, string words)
    {
        var answer = Proposer.Of(
            Briefs.From(brief),
            PartsCatalogue.Default,
            new() { MostPlans = 60, MostPlacings = 300 },
            null,
            TestContext.Current.CancellationToken
        );
        Assert.True(answer.Proposals.Count == 0, "something passes");
        Assert.Contains(answer.Obstacles, o => o.What.Told().Contains(words, StringComparison.Ordinal));
        Assert.All(answer.Obstacles, o => Assert.False(string.IsNullOrWhiteSpace(o.Remedy.Told())));
    }

    private static string WithBudget(int budget) =>
        Briefs.Small.Replace(
            "}],",
            string.Create(CultureInfo.InvariantCulture, $"}}], \"budget\": {budget},"),
            StringComparison.Ordinal
        );

    private sealed class StopAtFirst(CancellationTokenSource stop) : IProgress<ProposeProgress>
    {
        public void Report(ProposeProgress value)
        {
            Assert.InRange(value.Share, 0, 1);
            if (value.Found > 0)
            {
                stop.Cancel();
            }
        }
    }
}
