using Dripwright.Engine.Parts;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Tests.Parts;

/// <summary>Single jobs with a point to make.</summary>
public sealed class CutPlannerCases
{
    [Fact]
    public void Five_pieces_with_four_saw_cuts_fit_and_the_last_leaves_an_offcut()
    {
        // 3048 - 5·600 - 5·2 = 38: parting the fifth piece from the offcut is a cut too.
        var plan = Plan(new() { Kerf = 0.002 }, 3.048, new WantedPiece("P", 0.6, 5));

        Assert.Equal([0, 0.602, 1.204, 1.806, 2.408], plan.Stocks[0].Pieces.Select(piece => piece.Start));
        Assert.Equal(5, plan.Stocks[0].Cuts);
        Assert.Equal(0.038, plan.Stocks[0].Leftover, 9);
        Assert.Empty(plan.KerfTraps);
    }

    [Fact]
    public void A_squaring_cut_moves_the_first_piece_and_costs_its_width()
    {
        var plan = Plan(new() { Kerf = 0.002, FirstEndTrim = 0.002 }, 3.048, new WantedPiece("P", 0.6, 5));

        Assert.Equal(0.002, plan.Stocks[0].Pieces[0].Start, 9);
        Assert.Equal(6, plan.Stocks[0].Cuts);
        Assert.Equal(0.036, plan.Stocks[0].Leftover, 9);
    }

    [Fact]
    public void An_exact_division_of_the_stock_is_lost_to_any_saw_and_the_plan_says_so()
    {
        var without = Plan(new(), 3.048, new WantedPiece("P", 0.6096, 5));
        var with = Plan(new() { Kerf = 0.002 }, 3.048, new WantedPiece("P", 0.6096, 5));

        Assert.Single(without.Stocks);
        Assert.Equal(4, without.Stocks[0].Cuts);
        Assert.Equal(0, without.Waste, 9);
        Assert.Empty(without.KerfTraps);
        Assert.Equal(2, with.Stocks.Count);
        var trap = Assert.Single(with.KerfTraps);
        Assert.Equal((5, 4), (trap.WithoutKerf, trap.WithKerf));
        Assert.Equal(0.0016, trap.ShortenBy, 9);
    }

    [Fact]
    public void Shortening_by_what_the_trap_says_brings_the_piece_back()
    {
        var trap = Plan(new() { Kerf = 0.0032 }, 3.048, new WantedPiece("P", 0.6096, 5)).KerfTraps[0];

        var plan = Plan(new() { Kerf = 0.0032 }, 3.048, new WantedPiece("P", trap.PieceLength - trap.ShortenBy, 5));

        Assert.Single(plan.Stocks);
    }

    [Fact]
    public void Inches_that_are_not_exact_in_binary_lose_no_hundredth_of_a_millimetre()
    {
        var plan = Plan(new(), 10 * 0.3048, new WantedPiece("P", 24 * 0.0254, 500));

        Assert.Equal(100, plan.Stocks.Count);
    }

    [Fact]
    public void Pieces_on_hand_are_used_before_anything_is_bought()
    {
        var plan = Plan(
            new() { OnHand = [new("left from spring", 1.3)], MinimumUsableLeftover = 0.2 },
            3,
            new WantedPiece("P", 1.2, 3)
        );

        Assert.Equal("left from spring", plan.Stocks[0].OnHandLabel);
        Assert.Single(plan.Purchases);
        Assert.Equal(1, plan.Purchases[0].Count);
    }

    [Fact]
    public void What_is_on_hand_may_be_enough()
    {
        var plan = Plan(new() { OnHand = [new("H", 2, 3)] }, 3, new WantedPiece("P", 1, 6));

        Assert.Empty(plan.Purchases);
        Assert.Equal(0, plan.Purchase);
        Assert.True(plan.ProvenOptimal);
    }

    [Fact]
    public void The_leftover_is_kept_in_one_piece()
    {
        // Two stocks of 10 for 4 + 4 + 3 + 3: apart 2 + 4, together 0 + 6 (4 + 3 + 3 and 4).
        var plan = Plan(new(), 1.0, new("A", 0.4, 2), new("B", 0.3, 2));

        Assert.Equal([0.6], plan.Leftovers);
        Assert.True(plan.LongestLeftoverProven);
    }

    [Fact]
    public void Prices_decide_when_every_length_has_one()
    {
        var job = new CutJob
        {
            Material = "pipe",
            Offers = [new(3, 5m), new(6, 12m)],
            Wanted = [new("P", 1.4, 8)],
        };

        var byPrice = CutPlanner.Plan(job).Plan!;
        var byLength = CutPlanner.Plan(job with { Offers = [new(3, 5m), new(6)] }).Plan!;

        Assert.Equal(20m, byPrice.Price);
        Assert.Equal(PurchaseMeasure.Price, byPrice.Measure);
        Assert.Null(byLength.Price);
        Assert.Equal(12, byLength.BoughtLength, 9);
    }

    [Fact]
    public void A_piece_longer_than_every_stock_is_a_fault_that_names_it()
    {
        var result = CutPlanner.Plan(
            new()
            {
                Material = "pipe",
                Offers = [new(3)],
                FirstEndTrim = 0.01,
                Wanted = [new("P1", 1), new("P2", 2.995)],
            }
        );

        Assert.Null(result.Plan);
        Assert.Equal("P2", Assert.Single(result.Faults).Place);
    }

    [Fact]
    public void Running_out_of_pieces_on_hand_is_a_fault_when_nothing_can_be_bought()
    {
        var result = CutPlanner.Plan(
            new()
            {
                Material = "pipe",
                OnHand = [new("H", 3, 2)],
                Wanted = [new("P", 1.4, 5)],
            }
        );

        Assert.Null(result.Plan);
        var fault = Assert.Single(result.Faults);
        Assert.Equal(("P", "1 × 140 cm"), (fault.Place, fault.Found.Told(UnitSystem.Metric)));
    }

    [Theory]
    [InlineData(double.NaN, 1, 0)]
    [InlineData(-1, 1, 0)]
    [InlineData(double.PositiveInfinity, 1, 0)]
    [InlineData(1, 0, 0)]
    [InlineData(1, -3, 0)]
    [InlineData(1, 1, -0.001)]
    [InlineData(1, 1, double.NaN)]
    [InlineData(1, 2_000_000, 0)]
    public void Nonsense_is_a_fault_and_not_an_exception(double length, int count, double kerf)
    {
        var result = CutPlanner.Plan(
            new()
            {
                Material = "pipe",
                Kerf = kerf,
                Offers = [new(3)],
                Wanted = [new("P", length, count)],
            }
        );

        Assert.Null(result.Plan);
        Assert.NotEmpty(result.Faults);
    }

    [Fact]
    public void A_trim_thinner_than_the_saw_is_a_fault()
    {
        var result = CutPlanner.Plan(
            new()
            {
                Material = "pipe",
                Kerf = 0.003,
                FirstEndTrim = 0.002,
                Offers = [new(3)],
            }
        );

        Assert.Equal(nameof(CutJob.FirstEndTrim), Assert.Single(result.Faults).Place);
    }

    [Fact]
    public void Nothing_wanted_is_an_empty_plan()
    {
        var plan = Plan(new(), 3);

        Assert.Empty(plan.Stocks);
        Assert.Equal(0, plan.WasteShare);
        Assert.True(plan.ProvenOptimal);
    }

    [Theory]
    [InlineData(5000, 1)]
    [InlineData(5000, 3)]
    [InlineData(2000, 15)]
    public void A_large_job_is_planned_and_proven(int pieces, int lengths)
    {
        var wanted = Enumerable
            .Range(0, lengths)
            .Select(i => new WantedPiece("L" + (char)('A' + i), 0.3 + 0.0871 * i, pieces / lengths))
            .ToArray();

        var plan = Plan(new() { Kerf = 0.003, FirstEndTrim = 0.01 }, 6.0, wanted);

        Assert.True(plan.ProvenOptimal);
        Assert.Equal(pieces / lengths * lengths, plan.Stocks.Sum(stock => stock.Pieces.Count));
    }

    private static CutPlan Plan(Settings settings, double stock, params WantedPiece[] wanted)
    {
        var job = new CutJob
        {
            Material = "pipe",
            Kerf = settings.Kerf,
            FirstEndTrim = settings.FirstEndTrim,
            MinimumUsableLeftover = settings.MinimumUsableLeftover,
            OnHand = settings.OnHand,
            Offers = [new(stock)],
            Wanted = wanted,
        };
        var result = CutPlanner.Plan(job);
        Assert.Empty(result.Faults);
        Assert.Null(CutPlanCheck.Mistake(job, result.Plan!));
        return result.Plan!;
    }

    private sealed record Settings
    {
        public double Kerf { get; init; }
        public double FirstEndTrim { get; init; }
        public double MinimumUsableLeftover { get; init; }
        public StockOnHand[] OnHand { get; init; } = [];
    }
}
