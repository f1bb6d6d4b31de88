using CsCheck;
using Dripwright.Engine.Parts;

namespace Dripwright.Engine.Tests.Parts;

/// <summary>The longest leftover against trying every sharing of a few pieces.</summary>
public sealed class LongestLeftover
{
    private static readonly Gen<int[]> s_lengths = Gen.Int[8, 90].Array[2, 7];

    [Fact]
    public void A_leftover_called_longest_is_the_longest_of_all_sharings()
    {
        s_lengths.Holds(
            lengths =>
            {
                var plan = Plan(lengths);
                var longest = plan.Stocks.Max(stock => stock.Leftover);
                var (stocks, rest) = Exhaust(lengths);
                Assert.Equal(stocks, plan.Stocks.Count);
                Assert.True(longest <= rest / 100.0 + 1e-9);
                Assert.True(!plan.LongestLeftoverProven || longest > rest / 100.0 - 1e-9);
            },
            iter: 150
        );
    }

    [Fact]
    public void The_exchange_finds_the_longest_leftover_of_nearly_all_small_jobs()
    {
        // A fixed set of jobs: the search may miss a few, and a change that makes it miss more should be seen.
        var random = new Random(7);
        var missed = 0;
        for (var n = 0; n < 200; n++)
        {
            var lengths = Enumerable.Range(0, random.Next(4, 9)).Select(_ => random.Next(8, 90)).ToArray();
            var longest = Plan(lengths).Stocks.Max(stock => stock.Leftover);
            missed += longest < Exhaust(lengths).Longest / 100.0 - 1e-9 ? 1 : 0;
        }

        Assert.True(missed <= 4, missed.ToString(System.Globalization.CultureInfo.InvariantCulture) + " of 200 missed");
    }

    private static CutPlan Plan(int[] lengths) =>
        CutPlanner
            .Plan(
                new()
                {
                    Material = "pipe",
                    Offers = [new(1)],
                    Wanted = [.. lengths.Select(length => new WantedPiece("P", length / 100.0))],
                }
            )
            .Plan!;

    /// <summary>Least number of stocks of 100, and with it the longest rest.</summary>
    private static (int Stocks, int Longest) Exhaust(int[] lengths)
    {
        var best = (Stocks: int.MaxValue, Longest: 0);
        var stocks = new List<int>();
        Place(0);
        return best;

        void Place(int piece)
        {
            if (piece == lengths.Length)
            {
                if (stocks.Count < best.Stocks || (stocks.Count == best.Stocks && stocks.Max() > best.Longest))
                {
                    best = (stocks.Count, stocks.Max());
                }

                return;
            }

            for (var s = 0; s < stocks.Count; s++)
            {
                if (stocks[s] >= lengths[piece])
                {
                    stocks[s] -= lengths[piece];
                    Place(piece + 1);
                    stocks[s] += lengths[piece];
                }
            }

            if (stocks.Count < best.Stocks)
            {
                stocks.Add(100 - lengths[piece]);
                Place(piece + 1);
                stocks.RemoveAt(stocks.Count - 1);
            }
        }
    }
}
