namespace Dripwright.Engine.Parts;

/// <summary>Which piece is cut from which stock, and how good the plan is.</summary>
public sealed record CutPlan
{
    /// <summary>Name of the material.</summary>
    public required string Material { get; init; }

    /// <summary>Every stock that is cut, pieces on hand first.</summary>
    public required IReadOnlyList<CutStock> Stocks { get; init; }

    /// <summary>What to buy.</summary>
    public required IReadOnlyList<StockPurchase> Purchases { get; init; }

    /// <summary>[m] Total length bought.</summary>
    public required double BoughtLength { get; init; }

    /// <summary>Price of what is bought; null unless every offer has a price.</summary>
    public decimal? Price { get; init; }

    /// <summary>[m] Length of all stocks that are cut, on hand and bought.</summary>
    public required double UsedLength { get; init; }

    /// <summary>[m] Length that becomes neither a piece nor a usable leftover: dust, trims and short ends.</summary>
    public required double Waste { get; init; }

    /// <summary>[-] <see cref="Waste"/> over <see cref="UsedLength"/>; 0 when nothing is cut.</summary>
    public double WasteShare => UsedLength > 0 ? Waste / UsedLength : 0;

    /// <summary>[m] Usable leftovers, longest first.</summary>
    public required IReadOnlyList<double> Leftovers { get; init; }

    /// <summary>Unit of <see cref="Purchase"/>, <see cref="LowerBound"/> and <see cref="Gap"/>.</summary>
    public required PurchaseMeasure Measure { get; init; }

    /// <summary>[m or currency] What the plan buys, in <see cref="Measure"/>.</summary>
    public required double Purchase { get; init; }

    /// <summary>[m or currency] No plan can buy less than this.</summary>
    public required double LowerBound { get; init; }

    /// <summary>[m or currency] How much less a better plan could still buy; 0 when the plan is proven.</summary>
    public double Gap => Purchase - LowerBound;

    /// <summary>True when no plan can buy less.</summary>
    public required bool ProvenOptimal { get; init; }

    /// <summary>True when no other sharing of the pieces among the same stocks leaves a longer single leftover.</summary>
    public required bool LongestLeftoverProven { get; init; }

    /// <summary>How the purchase was found.</summary>
    public required CutMethod Method { get; init; }

    /// <summary>Number of different ways in which a stock is cut: how often the saw's stop must be set anew.</summary>
    public required int SetUps { get; init; }

    /// <summary>Lengths of which the saw's width alone costs a piece per bought stock; see <see cref="KerfTrap"/>.</summary>
    public required IReadOnlyList<KerfTrap> KerfTraps { get; init; }
}

/// <summary>What "least stock" is counted in.</summary>
public enum PurchaseMeasure
{
    /// <summary>Total length bought [m].</summary>
    Length,

    /// <summary>Total price, when every offer has one.</summary>
    Price,
}

/// <summary>How a plan's purchase was found.</summary>
public enum CutMethod
{
    /// <summary>Filling stock after stock, and a lower bound by hand.</summary>
    Filling,

    /// <summary>Linear program over cutting patterns, rounded.</summary>
    RoundedPatterns,

    /// <summary>Integer program over cutting patterns.</summary>
    IntegerPatterns,
}

/// <summary>How many to buy of one length.</summary>
/// <param name="Length">[m] Length as bought.</param>
/// <param name="Count">Number to buy.</param>
public sealed record StockPurchase(double Length, int Count);

/// <summary>A length that just misses fitting once more into a stock, and only because of the saw's width.</summary>
/// <param name="PieceLength">[m] Length wanted.</param>
/// <param name="StockLength">[m] Stock it is cut from.</param>
/// <param name="WithoutKerf">Pieces per stock if the saw took nothing.</param>
/// <param name="WithKerf">Pieces per stock with this saw.</param>
/// <param name="ShortenBy">[m] Shortening of each piece that brings <see cref="WithoutKerf"/> pieces back.</param>
public sealed record KerfTrap(double PieceLength, double StockLength, int WithoutKerf, int WithKerf, double ShortenBy);
