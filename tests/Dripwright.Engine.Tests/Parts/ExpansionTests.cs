using CsCheck;
using Dripwright.Engine.Extending;
using Dripwright.Engine.Parts;
using Dripwright.Engine.Tests.Planning;
using Dripwright.Engine.Tests.Rigs;

namespace Dripwright.Engine.Tests.Parts;

public sealed class ExpansionTests
{
    [Fact]
    public void From_a_rig_to_itself_nothing_is_bought() =>
        RigGen.Rigs.Holds(
            rig =>
            {
                var plan = Plans.Of(rig);
                // What could not be cut is on the list by estimate, with no lengths that could be used again.
                if (plan.Parts.CutTroubles.Count == 0)
                {
                    Assert.Empty(Expansion.Of(plan, plan).Buy);
                }
            },
            iter: 15
        );

    [Fact]
    public void No_piece_is_bought_that_the_new_rig_alone_would_not_need_and_none_is_missing() =>
        Gen.Select(RigGen.Rigs, RigGen.Rigs)
            .Holds(
                (old, wanted) =>
                {
                    var from = Plans.Of(old);
                    var to = Plans.Of(wanted);
                    var expansion = Expansion.Of(from, to);
                    foreach (var line in to.Parts.Lines.Where(line => line.EachLength <= 0))
                    {
                        var held = from.Parts.Lines.Where(l => l.Part == line.Part).Sum(l => l.OnHand + l.Buy);
                        var buy = expansion.Buy.Where(l => l.Part == line.Part).Sum(l => l.Buy);
                        var left = expansion.Left.Where(l => l.Part == line.Part).Sum(l => l.Count);
                        Assert.InRange(buy, 0, line.Buy);
                        if (line.Part.StartsWith("filament", StringComparison.Ordinal))
                        {
                            // Joints that are at hand take none, and what was printed is no filament any more.
                            Assert.Equal(0, left);
                            continue;
                        }

                        Assert.True(held - left + buy + line.OnHand >= line.Needed + line.Spares, line.Part);
                        Assert.True(left <= held, line.Part);
                    }
                },
                iter: 12
            );

    [Fact]
    public void Every_piece_that_is_cut_comes_from_a_length_of_the_old_rig_or_a_bought_one()
    {
        var from = Plans.From("""{ "rows": [ { "pots": 6 } ] }""");
        var to = Plans.From("""{ "rows": [ { "pots": 9 } ] }""");
        var expansion = Expansion.Of(from, to);
        Assert.Equal(
            to.Parts.Cuts.Select(cut => cut.Stocks.Sum(stock => stock.Pieces.Count)),
            expansion.Cuts.Select(cut => cut.Stocks.Sum(stock => stock.Pieces.Count))
        );
        foreach (var cut in expansion.Cuts)
        {
            List<double> had =
            [
                .. from
                    .Parts.Cuts.Where(old => old.Material == cut.Material)
                    .SelectMany(old =>
                        old.Stocks.SelectMany(stock => stock.Pieces.Select(p => p.Length)).Concat(old.Leftovers)
                    ),
            ];
            foreach (var stock in cut.Stocks.Where(stock => !stock.IsBought))
            {
                var at = had.FindIndex(length => Math.Abs(length - stock.Length) < 1e-5);
                Assert.True(at >= 0, $"{cut.Material}: {stock.OnHandLabel}");
                had.RemoveAt(at);
            }
        }
    }

    [Fact]
    public void Three_more_pots_take_three_more_pots_and_no_second_pump()
    {
        var from = Plans.From("""{ "rows": [ { "pots": 6 } ] }""");
        var to = Plans.From("""{ "rows": [ { "pots": 9 } ] }""");
        var expansion = Expansion.Of(from, to);
        var pot = to.Rig.Rows[0].Pot;
        Assert.Equal(3, Assert.Single(expansion.Buy, line => line.Part == pot).Buy);
        Assert.DoesNotContain(expansion.Buy, line => line.Part == to.Rig.Pump.Model);
        Assert.True(expansion.Buy.Count < to.Parts.Lines.Count(line => line.Buy > 0));
        var back = Expansion.Of(to, from);
        Assert.Equal(3, Assert.Single(back.Left, left => left.Part == pot).Count);
    }

    [Fact]
    public void What_was_on_hand_and_is_built_in_is_not_counted_twice()
    {
        const string OnHand = """ "onHand": [ { "part": "pump-800gph", "count": 2 } ] """;
        var from = Plans.From($$"""{ "pump": { "model": "pump-800gph" }, {{OnHand}} }""");
        var to = Plans.From($$"""{ "pump": { "model": "pump-800gph" }, "spares": { "pumps": 2 }, {{OnHand}} }""");
        var used = from.Parts.Lines.Single(line => line.Part == "pump-800gph").OnHand;
        Assert.True(used > 0);
        PartLine line = Assert.Single(Expansion.Of(from, to).Buy, line => line.Part == "pump-800gph");
        Assert.Equal(1, line.Buy);
    }
}
