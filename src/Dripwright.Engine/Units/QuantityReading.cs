namespace Dripwright.Engine.Units;

/// <summary>What came of reading a quantity: a value, or why there is none.</summary>
/// <param name="Value">[SI unit of its dimension] The value; null where the text is no such quantity.</param>
/// <param name="Expected">What a good text looks like, such as <c>a length such as "1 ft" or "30 cm"</c>.</param>
/// <param name="Nearest">The text that was most likely meant; null where nothing is near.</param>
public sealed record QuantityReading(double? Value, string Expected, string? Nearest);
