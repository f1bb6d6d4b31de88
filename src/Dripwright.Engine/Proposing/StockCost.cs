using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Parts;

namespace Dripwright.Engine.Proposing;

/// <summary>A bound under what pipe, hose or tube of a total length costs.</summary>
internal static class StockCost
{
    /// <summary>No less than this must be paid for so much of it, with nothing on hand.</summary>
    /// <remarks>
    /// Whole stock lengths are bought. Where all are multiples of the shortest, so is what is bought; else the length itself
    /// is the bound. Taken at the cheapest price per metre.
    /// </remarks>
    /// <param name="part">Pipe or tube.</param>
    /// <param name="sold">[m] Stock lengths.</param>
    /// <param name="length">[m] Total length needed.</param>
    public static decimal AtLeast(CatalogueEntry part, IReadOnlyList<double> sold, double length)
    {
        var shortest = sold[0];
        var even = sold.All(l => Math.Abs((l / shortest) - Math.Round(l / shortest)) < 1e-9);
        var bought = even ? Math.Ceiling((length / shortest) - 1e-6) * shortest : length;
        var perMetre = sold.Min(l => (PriceOf(part, l) ?? 0) / (decimal)l);
        return perMetre * (decimal)Math.Max(0, bought);
    }

    private static decimal? PriceOf(CatalogueEntry part, double length) =>
        PartLines.OwnPriceOf(part, length) ?? PartLines.TypicalPriceOf(part, length);
}
