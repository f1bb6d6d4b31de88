using Dripwright.Engine.Files;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Catalogue;

/// <summary>Cross-section of a stand tube.</summary>
public enum TubeShape
{
    /// <summary>Round tube or conduit.</summary>
    Round,

    /// <summary>Square tube.</summary>
    Square,
}

/// <summary>Steel tube for the stand.</summary>
public sealed record TubeSize : CatalogueEntry
{
    /// <summary>Cross-section.</summary>
    [Choice(""), Says("Round or square.")]
    public required TubeShape Shape { get; init; }

    /// <summary>[m] Outside diameter or side.</summary>
    [Quantity(Dimension.Length, "3 mm", "1 ft"), Says("Outside diameter or side.")]
    public required double Outside { get; init; }

    /// <summary>[m] Wall.</summary>
    [Quantity(Dimension.Length, "0.3 mm", "2 in"), Says("Wall.")]
    public required double Wall { get; init; }

    /// <summary>[m] Lengths it is sold in, shortest first.</summary>
    [Items(1, 20), Quantity(Dimension.Length, "1 in", "100 ft"), Says("Lengths it is sold in, shortest first.")]
    public required IReadOnlyList<double> StockLengths { get; init; }
}
