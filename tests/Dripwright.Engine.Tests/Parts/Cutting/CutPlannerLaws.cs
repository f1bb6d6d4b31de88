using System.Globalization;
using CsCheck;
using Dripwright.Engine.Parts;

namespace Dripwright.Engine.Tests.Parts;

/// <summary>What must hold for every plan, whatever the job.</summary>
public sealed class CutPlannerLaws
{
    private static readonly Gen<WantedPiece[]> s_wanted = Gen.Select(Gen.Int[50, 2900], Gen.Int[1, 9], Gen.Bool)
        .Array[1, 10]
        .Select(rows =>
            rows.Select(
                    (row, i) =>
                        new WantedPiece(
                            "P" + i.ToString(CultureInfo.InvariantCulture),
                            row.Item3 ? row.Item1 / 1000.0 : row.Item1 / 16 * 0.0254 / 4,
                            row.Item2
                        )
                )
                .Where(piece => piece.Length >= 0.01)
                .ToArray()
        );

    private static readonly Gen<StockOnHand[]> s_onHand = Gen.Select(Gen.Int[100, 3200], Gen.Int[1, 3], Gen.Bool)
        .Array[0, 4]
        .Select(rows =>
            rows.Select(
                    (row, i) =>
                        new StockOnHand(
                            "H" + i.ToString(CultureInfo.InvariantCulture),
                            row.Item1 / 1000.0,
                            row.Item2,
                            row.Item3
                        )
                )
                .ToArray()
        );

    private static readonly Gen<StockOffer[]> s_offers = Gen.OneOf<StockOffer[]>(
        new StockOffer[][]
        {
            [new(3.048)],
            [new(6.096), new(3.048)],
            [new(3), new(4), new(6)],
            [new(3.048, 9.5m), new(6.096, 17.25m)],
        }
    );

    private static readonly Gen<CutJob> s_jobs = Gen.Select(
        s_wanted,
        s_onHand,
        s_offers,
        Gen.OneOf(0.0, 0.002, 0.0032),
        Gen.OneOf(0.0, 0.005),
        Gen.OneOf(0.0, 0.01),
        (wanted, onHand, offers, kerf, first, far) =>
            new CutJob
            {
                Material = "pipe",
                Wanted = wanted,
                OnHand = onHand,
                Offers = offers,
                Kerf = kerf,
                FirstEndTrim = first,
                FarEndTrim = far,
                MinimumUsableLeftover = 0.3,
            }
    );

    [Fact]
    public void Every_piece_is_cut_once_with_its_label_and_no_stock_is_overfilled()
    {
        s_jobs.Holds(job => Assert.Null(CutPlanCheck.Mistake(job, Plan(job))), iter: 100);
    }

    [Fact]
    public void Never_more_stock_than_first_fit_decreasing()
    {
        s_jobs.Holds(
            job =>
            {
                job = job with { Offers = [new(3.048)], OnHand = [] };
                Assert.True(Plan(job).Stocks.Count <= CutPlanCheck.FirstFitDecreasing(job));
            },
            iter: 100
        );
    }

    [Fact]
    public void The_bound_never_exceeds_the_purchase_and_a_proven_plan_has_no_gap()
    {
        s_jobs.Holds(
            job =>
            {
                var plan = Plan(job);
                Assert.True(plan.LowerBound <= plan.Purchase + 1e-9);
                Assert.Equal(plan.ProvenOptimal, plan.Gap < 1e-9);
            },
            iter: 100
        );
    }

    [Fact]
    public void Pieces_on_hand_never_increase_the_purchase()
    {
        s_jobs.Holds(
            job => Assert.True(Plan(job).Purchase <= Plan(job with { OnHand = [] }).Purchase + 1e-9),
            iter: 100
        );
    }

    [Fact]
    public void The_order_of_the_wanted_pieces_does_not_change_the_purchase()
    {
        s_jobs.Holds(
            job =>
            {
                var turned = job with { Wanted = [.. job.Wanted.Reverse()], Offers = [.. job.Offers.Reverse()] };
                Assert.Equal(Plan(job).Purchases, Plan(turned).Purchases);
            },
            iter: 100
        );
    }

    [Fact]
    public void The_same_job_gives_the_same_plan_piece_by_piece()
    {
        s_jobs.Holds(job => Assert.Equal(CutPlanCheck.Text(Plan(job)), CutPlanCheck.Text(Plan(job))), iter: 100);
    }

    [Fact]
    public void All_lengths_twice_as_long_buy_as_many_stocks()
    {
        s_jobs.Holds(
            job =>
            {
                job = job with { Wanted = [.. job.Wanted.Select(p => p with { Length = Grain(p.Length) })] };
                var twice = new CutJob
                {
                    Material = job.Material,
                    Kerf = 2 * job.Kerf,
                    FirstEndTrim = 2 * job.FirstEndTrim,
                    FarEndTrim = 2 * job.FarEndTrim,
                    MinimumUsableLeftover = 2 * job.MinimumUsableLeftover,
                    Offers = [.. job.Offers.Select(offer => offer with { Length = 2 * offer.Length })],
                    OnHand = [.. job.OnHand.Select(stock => stock with { Length = 2 * stock.Length })],
                    Wanted = [.. job.Wanted.Select(piece => piece with { Length = 2 * piece.Length })],
                };
                Assert.Equal(Plan(job).Purchases.Select(p => p.Count), Plan(twice).Purchases.Select(p => p.Count));
            },
            iter: 100
        );
    }

    private static double Grain(double metres) => Math.Ceiling(metres * 100_000 - 1e-4) / 100_000;

    private static CutPlan Plan(CutJob job)
    {
        var result = CutPlanner.Plan(job);
        Assert.Empty(result.Faults);
        return result.Plan!;
    }
}
