namespace Dripwright.Engine.Units;

/// <summary>What is wrong with a text that is no quantity, beyond that it looks like none.</summary>
public enum QuantityFlaw
{
    /// <summary>Nothing, or nothing that can be told apart.</summary>
    None,

    /// <summary>It is over <see cref="QuantityText.MaxLength"/> characters.</summary>
    TooLong,

    /// <summary>Its commas cannot be those of a decimal.</summary>
    Commas,

    /// <summary>Its comma may be a decimal one or part thousands.</summary>
    EitherComma,

    /// <summary>Its number is beyond all bounds.</summary>
    TooLarge,

    /// <summary>A smaller unit stands before a greater one, or one stands twice.</summary>
    Order,

    /// <summary>Its number has no unit.</summary>
    NoUnit,

    /// <summary>It gives a strength in ppm, which is a scale of the meter.</summary>
    Ppm,
}

/// <summary>What came of reading a quantity: a value, or why there is none.</summary>
/// <param name="Dimension">What it measures.</param>
/// <param name="Value">[SI unit of its dimension] The value; null where the text is no such quantity.</param>
/// <param name="Flaw">What is wrong with the text.</param>
/// <param name="Nearest">The text that was most likely meant; null where nothing is near.</param>
/// <param name="Number">The number whose comma can be read in two ways; else empty.</param>
public sealed record QuantityReading(
    Dimension Dimension,
    double? Value,
    QuantityFlaw Flaw = QuantityFlaw.None,
    string? Nearest = null,
    string Number = ""
);
