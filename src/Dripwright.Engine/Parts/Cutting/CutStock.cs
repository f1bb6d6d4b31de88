namespace Dripwright.Engine.Parts;

/// <summary>One stock and the pieces cut from it, in the order of sawing from the first end.</summary>
public sealed record CutStock
{
    /// <summary>The mark of a piece on hand; null when the stock is bought.</summary>
    public string? OnHandLabel { get; init; }

    /// <summary>True when the stock must be bought.</summary>
    public bool IsBought => OnHandLabel is null;

    /// <summary>[m] Length of the stock.</summary>
    public required double Length { get; init; }

    /// <summary>Pieces in the order of sawing, longest first.</summary>
    public required IReadOnlyList<PlacedPiece> Pieces { get; init; }

    /// <summary>Saw cuts, the squaring cut of the first end and that of the far end included.</summary>
    public required int Cuts { get; init; }

    /// <summary>[m] What remains beyond the last cut, an unsquared far end included.</summary>
    public required double Leftover { get; init; }

    /// <summary>True when the leftover is at least as long as the job's minimum.</summary>
    public required bool LeftoverUsable { get; init; }
}

/// <summary>A piece on its stock.</summary>
/// <param name="Label">The label in the drawings.</param>
/// <param name="Start">[m] Distance of the piece's first end from the first end of the stock as it is bought.</param>
/// <param name="Length">[m] Length as cut: the wanted length rounded up to a hundredth of a millimetre.</param>
public sealed record PlacedPiece(string Label, double Start, double Length)
{
    /// <summary>True for a spare, which has no label in the drawings.</summary>
    public bool IsSpare => Label == CutList.SparePiece;
}
