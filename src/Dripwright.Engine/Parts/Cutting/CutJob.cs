namespace Dripwright.Engine.Parts;

/// <summary>One material to be sawn: what can be bought, what is on hand, what is wanted, and what the saw takes.</summary>
/// <remarks>
/// n pieces fit a stock when Σ length + (n - 1)·kerf + trims ≤ stock length: the last piece needs no cut of its own
/// when it ends exactly at the end of the stock. Lengths are worked in whole hundredths of a millimetre, wanted
/// lengths, kerf and trims rounded up and stock lengths rounded down, so that a plan can never come out short.
/// Method page: docs/methods/cutting.md
/// </remarks>
public sealed record CutJob
{
    /// <summary>Name of the material, as the parts list has it.</summary>
    public required string Material { get; init; }

    /// <summary>Lengths that can be bought, in any number.</summary>
    public IReadOnlyList<StockOffer> Offers { get; init; } = [];

    /// <summary>Pieces already on hand; they are used before anything is bought.</summary>
    public IReadOnlyList<StockOnHand> OnHand { get; init; } = [];

    /// <summary>Pieces wanted.</summary>
    public IReadOnlyList<WantedPiece> Wanted { get; init; } = [];

    /// <summary>[m] Width the saw turns to dust at each cut; zero or more.</summary>
    public double Kerf { get; init; }

    /// <summary>[m] Length lost at the first end of each stock to square it, the saw's width included; 0 or at least
    /// <see cref="Kerf"/>.</summary>
    public double FirstEndTrim { get; init; }

    /// <summary>[m] Length at the far end that no piece may use, the saw's width included; 0 or at least
    /// <see cref="Kerf"/>.</summary>
    public double FarEndTrim { get; init; }

    /// <summary>[m] Shortest leftover worth keeping; zero or more.</summary>
    public double MinimumUsableLeftover { get; init; }
}

/// <summary>A length that can be bought.</summary>
/// <param name="Length">[m] Length as bought.</param>
/// <param name="Price">Price of one, in any currency; prices count only when every offer has one.</param>
public sealed record StockOffer(double Length, decimal? Price = null);

/// <summary>Pieces on hand of one length.</summary>
/// <param name="Label">The mark on the piece.</param>
/// <param name="Length">[m] Length.</param>
/// <param name="Count">Number of them, one or more.</param>
/// <param name="AlreadySquare">Both ends are square already, so that no trim is taken.</param>
public sealed record StockOnHand(string Label, double Length, int Count = 1, bool AlreadySquare = false);

/// <summary>Pieces wanted of one length.</summary>
/// <param name="Label">The label in the drawings.</param>
/// <param name="Length">[m] Finished length.</param>
/// <param name="Count">Number of them, one or more.</param>
public sealed record WantedPiece(string Label, double Length, int Count = 1);
