using CsCheck;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Parts;
using Dripwright.Engine.Printed;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Tests.Layout;
using Dripwright.Engine.Wires;
using static System.FormattableString;

namespace Dripwright.Engine.Tests.Parts;

public sealed class PartsPlanTests
{
    private static readonly PartsCatalogue s_catalogue = PartsCatalogue.Default;

    [Fact]
    public void The_ten_foot_row_takes_what_a_person_counts_by_hand()
    {
        var plan = Plan(TestRigs.TenPots);
        Assert.Equal(10, Needed(plan, "pot-square-3-gal"));
        Assert.Equal(20, Needed(plan, "drip-turbulent-1gph"));
        Assert.Equal(20, Needed(plan, "barb-1/4"));
        Assert.Equal(10, Needed(plan, "drain-elbow-3/4"));
        // One in the pot's wall, one in the drain.
        Assert.Equal(20, Needed(plan, "drain-seal-3/4"));
        Assert.Equal(1, Needed(plan, "hose-1/2-cap"));
        // Feed line: barb and cap.
        Assert.Equal(2, Needed(plan, "clamp-1/2"));
        // Three frames of two legs.
        Assert.Equal(6, Needed(plan, "joint-foot"));
        Assert.Equal(4, Needed(plan, "joint-three-way"));
        Assert.StartsWith("4 × J1, ", Line(plan, "joint-three-way").Where.Told(), StringComparison.Ordinal);
        Assert.Equal(2, Needed(plan, "joint-four-way"));
        Assert.Equal(3, Needed(plan, "drain-hanger"));
        // A kilogram of joints, more or less, printed solid.
        Assert.InRange(Needed(plan, "filament-petg"), 1, 3);
        Assert.Equal(1, Needed(plan, "pump-400gph"));
        Assert.Equal(1, Line(plan, "pump-400gph").Spares);
        Assert.Equal(1, Needed(plan, "timer-outlet"));
        Assert.Equal(1, Needed(plan, "gfci-adapter"));
        Assert.Equal(1, Needed(plan, "vent-screen"));
        // Twenty tubes of ten inches and three feet spare are under 20 ft: one coil of 100 ft.
        Assert.Equal(1, Line(plan, "microtube-0.165in").Buy);
        Assert.Empty(plan.CutTroubles);
        Assert.Equal(20 + 10, plan.Holes.Count);
        var pot = Assert.Single(plan.PotHoles);
        Assert.Equal((10, 1.125 * 0.0254), (pot.Count, pot.Diameter));
        Assert.Equal("hole saw 1 1/8 in", pot.Tool.Told());
        Assert.Equal((1.5 + 0.31) * 0.0254, pot.Height, 1e-12);
    }

    [Fact]
    public void A_tied_stand_takes_a_strap_and_two_anchors_at_each_module_joint_and_end()
    {
        var tied = Plan(TestRigs.TenPots with { Stand = TestRigs.TenPots.Stand with { Tied = true } });

        Assert.Equal((3, 6), (Needed(tied, "tie-strap"), Needed(tied, "wall-anchor")));
        Assert.DoesNotContain(Plan(TestRigs.TenPots).Lines, line => line.Part == "tie-strap");
    }

    [Fact]
    public void An_independent_recount_agrees()
    {
        var stands = 0;
        var framesTold = 0;
        TestRigs.Any.Holds(rig =>
        {
            var plan = Plan(rig);
            var recount = Recount.Of(rig, s_catalogue);
            stands += recount.ContainsKey("joint-foot") ? 1 : 0;
            framesTold += recount.ContainsKey("joint-three-way") ? 1 : 0;
            foreach ((var key, var count) in recount)
            {
                // Where no hanger can be printed a strap holds the drain.
                var other = key == "drain-hanger" ? "pipe-strap" : key;
                var needed = plan.Lines.Where(l => l.Part == key || l.Part == other).Sum(l => l.Needed);
                Assert.True(count == needed, Invariant($"{key}: recount {count}, plan {needed}"));
            }
        });
        // A recount that leaves most out would agree with anything.
        Assert.True(framesTold > 0.6 * stands, Invariant($"{framesTold} of {stands} frames told"));
    }

    [Fact]
    public void Every_part_stands_in_the_catalogue_with_a_place() =>
        TestRigs.Any.Holds(rig =>
        {
            foreach (var line in Plan(rig).Lines)
            {
                Assert.NotNull(s_catalogue.TryFind(line.Part));
                Assert.NotEqual("", line.Where.Told());
                Assert.True(line.Needed > 0);
            }
        });

    [Fact]
    public void Whole_packs_cover_what_is_needed_and_no_pack_is_idle() =>
        TestRigs.Any.Holds(rig =>
        {
            foreach (var line in Plan(rig).Lines)
            {
                var missing = line.Needed + line.Spares - line.OnHand;
                Assert.Equal(line.Packs * line.PackSize, line.Buy);
                Assert.True(line.Buy >= missing && line.Buy - line.PackSize < Math.Max(missing, 1));
            }
        });

    [Fact]
    public void Parts_on_hand_never_buy_more() =>
        Gen.Select(TestRigs.Any, Gen.Int[0, 1 << 30])
            .Holds(
                (rig, seed) =>
                {
                    var random = new Random(seed);
                    var bare = Plan(rig);
                    List<OnHand> have =
                    [
                        .. bare
                            .Lines.Where(_ => random.Next(2) == 0)
                            .Select(l => new OnHand
                            {
                                Part = l.Part,
                                Count = random.Next(1, 2 * l.Needed + 1),
                                Length = l.EachLength > 0 ? 0.1 + (random.NextDouble() * l.EachLength) : null,
                            }),
                    ];
                    var plan = Plan(rig with { OnHand = have });
                    foreach (var key in bare.Lines.Select(l => l.Part).Distinct())
                    {
                        var before = Bought(bare, key);
                        var after = Bought(plan, key);
                        Assert.True(after <= before + 1e-9, Invariant($"{key}: {before} became {after}"));
                    }

                    Assert.All(
                        plan.Lines,
                        l => Assert.True(l.OnHand <= have.Where(h => h.Part == l.Part).Sum(h => h.Count))
                    );
                },
                iter: 60
            );

    [Fact]
    public void More_spares_never_mean_fewer_parts() =>
        Gen.Select(TestRigs.Any, Gen.Double[0, 0.5], Gen.Double[0, 3])
            .Holds(
                (rig, more, tube) =>
                {
                    var s = rig.Spares;
                    var less = Plan(rig);
                    var plenty = Plan(
                        rig with
                        {
                            Spares = s with
                            {
                                Emitters = s.Emitters + more,
                                Seals = s.Seals + more,
                                Fittings = s.Fittings + more,
                                Pumps = s.Pumps + 1,
                                Tube = s.Tube + tube,
                            },
                        }
                    );
                    foreach (var key in less.Lines.Select(l => l.Part).Distinct())
                    {
                        Assert.True(Bought(plenty, key) >= Bought(less, key) - 1e-9, key);
                    }
                },
                iter: 60
            );

    [Fact]
    public void More_pots_never_mean_fewer_parts()
    {
        // Couplings alone may become fewer: where they must give way to holes, a run takes one more.
        Dictionary<string, int> last = [];
        for (var pots = 1; pots <= 40; pots++)
        {
            var plan = Plan(TestRigs.TenPots.WithPots(pots));
            var now = plan
                .Lines.Where(l => l.EachLength == 0 && !l.Part.EndsWith("coupling", StringComparison.Ordinal))
                .GroupBy(l => l.Part)
                .ToDictionary(g => g.Key, g => g.Sum(l => l.Needed));
            Assert.All(
                last,
                l => Assert.True(now.GetValueOrDefault(l.Key) >= l.Value, Invariant($"{l.Key} at {pots}"))
            );
            last = now;
        }
    }

    [Fact]
    public void A_tenth_of_twenty_emitters_is_two_spares() =>
        Assert.Equal(2, Line(Plan(TestRigs.TenPots), "drip-turbulent-1gph").Spares);

    [Fact]
    public void Tubes_on_hand_are_used_before_a_coil_is_bought()
    {
        // Eleven tubes of ten inches fit 3 m; nine more and three feet spare another 3 m; the third stays on its nail.
        OnHand rest = new()
        {
            Part = "microtube-0.165in",
            Count = 3,
            Length = 3,
        };
        var line = Line(Plan(TestRigs.TenPots with { OnHand = [rest] }), "microtube-0.165in");
        Assert.Equal((0, 2), (line.Buy, line.OnHand));
        // A tube is never joined from two ends: pieces shorter than a tube are worth nothing to the emitters.
        var scraps = Line(
            Plan(TestRigs.TenPots with { OnHand = [rest with { Count = 50, Length = 0.2 }] }),
            "microtube-0.165in"
        );
        Assert.Equal((1, 0), (scraps.Buy, scraps.OnHand));
    }

    [Fact]
    public void What_is_often_forgotten_names_the_sizes_of_this_rig()
    {
        var block = Plan(TestRigs.TenPots).Forgotten;
        Assert.Contains(
            block,
            f => f.Name.Told() == "Hole saw" && f.Why.Told().Contains("1 1/8 in", StringComparison.Ordinal)
        );
        Assert.Contains(
            block,
            f => f.Name.Told() == "Hose clamps" && f.Why.Told().Contains("12", StringComparison.Ordinal)
        );
        foreach (var name in (string[])["Deburring tool", "Primer", "Thread-seal tape", "Flush caps", "Strainer"])
        {
            Assert.Contains(block, f => f.Name.Told() == name);
        }
    }

    [Fact]
    public void Shops_are_walked_shelf_by_shelf() =>
        TestRigs.Any.Holds(rig =>
        {
            string[] sections = [.. Plan(rig).Lines.Select(l => l.Section)];
            var changes = sections.Zip(sections.Skip(1)).Count(p => p.First != p.Second);
            Assert.Equal(sections.Distinct().Count() - 1, changes);
        });

    [Fact]
    public void Cost_counts_each_bought_line_once()
    {
        var priced = s_catalogue with
        {
            Pots = s_catalogue.Pots.ToDictionary(p => p.Key, p => p.Value with { Price = 3.5m }),
            Emitters = s_catalogue.Emitters.ToDictionary(p => p.Key, p => p.Value with { Price = 4m, Pack = 10 }),
        };
        var rig = TestRigs.TenPots;
        var plan = Plan(rig, RigLayout.Of(ResolvedRig.Of(rig, priced)));
        // Ten pots at 3.50, and twenty-two emitters in three packs at 4: these two are the user's own prices.
        Assert.Equal(47m, plan.Lines.Where(l => l.Price is not null && !l.InventedPrice).Sum(l => l.Price!.Value));
        Assert.Equal(plan.Lines.Where(l => l.Buy > 0).Sum(l => l.Price ?? 0), plan.Cost.Known);
        Assert.Equal(plan.Lines.Count(l => l.Buy > 0), plan.Cost.LinesPriced + plan.Cost.LinesUnpriced);
        Assert.True(plan.Cost.AnyInvented);
        Assert.Equal("USD", plan.Currency);
    }

    [Fact]
    public void Every_part_of_ours_that_is_bought_has_a_typical_price_and_the_sum_its_currency() =>
        TestRigs.Any.Holds(
            rig =>
            {
                var plan = Plan(rig);
                Assert.Empty(plan.Lines.Where(l => l.Buy > 0 && l.Price is null).Select(l => l.Part));
                Assert.Equal("USD", plan.Currency);
            },
            iter: 30
        );

    [Fact]
    public void A_longer_pipe_costs_in_proportion_and_does_not_choose_the_cut()
    {
        var pipe = s_catalogue.Pipes["pvc40-1-1/2"];
        Assert.Equal(2 * pipe.TypicalPrice, PartLines.TypicalPriceOf(pipe, pipe.StockLengths[1]));
        Assert.All(Plan(TestRigs.TenPots).Cuts, cut => Assert.Null(cut.Price));
    }

    [Fact]
    public void Same_rig_same_plan() =>
        TestRigs.Any.Holds(
            rig =>
            {
                var a = Plan(rig);
                var b = Plan(rig);
                Assert.Equal(a.Lines, b.Lines);
                Assert.Equal(a.Holes, b.Holes);
                Assert.Equal(a.Forgotten, b.Forgotten);
            },
            iter: 20
        );

    internal static PartsPlan Plan(Rig rig) => Plan(rig, TestRigs.Layout(rig));

    internal static PartsPlan Plan(Rig rig, RigLayout layout) =>
        PartsPlanner.Plan(
            rig,
            layout,
            new CropWirePlanner(rig, layout).Plan(),
            PrintedParts.Of(rig, layout, strength: null),
            nutrients: null
        );

    private static PartLine Line(PartsPlan plan, string key) => Assert.Single(plan.Lines, l => l.Part == key);

    private static int Needed(PartsPlan plan, string key) => Line(plan, key).Needed;

    // By length where things are sold in several lengths.
    private static double Bought(PartsPlan plan, string key) =>
        plan.Lines.Where(l => l.Part == key).Sum(l => l.Buy * (l.EachLength > 0 ? l.EachLength : 1));
}
