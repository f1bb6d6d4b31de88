namespace Dripwright.Engine.Catalogue.Salts;

/// <summary>All fertilisers, acids and bases that a recipe can name: ours with the grower's own laid over them.</summary>
public sealed record SaltCatalogue
{
    /// <summary>Our own generic rows. None names a maker; none has a price, which only the grower knows.</summary>
    public static SaltCatalogue Default => PartsCatalogue.Default.Salts;

    /// <summary>A catalogue without rows, to lay a file over that stands alone.</summary>
    public static SaltCatalogue Empty { get; } = new() { Salts = new Dictionary<string, Salt>() };

    /// <summary>Rows by key, in the order of the file.</summary>
    public required IReadOnlyDictionary<string, Salt> Salts { get; init; }

    /// <summary>The row with this key.</summary>
    /// <exception cref="KeyNotFoundException">There is none.</exception>
    public Salt this[string key] =>
        Salts.TryGetValue(key, out var salt) ? salt : throw new KeyNotFoundException($"There is no salt '{key}'.");

    /// <summary>The rows with these keys.</summary>
    /// <exception cref="KeyNotFoundException">One of them is missing.</exception>
    public IReadOnlyList<Salt> Of(params IEnumerable<string> keys) => [.. keys.Select(key => this[key])];
}
