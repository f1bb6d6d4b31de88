using Dripwright.Engine.Units;

namespace Dripwright.Engine.Phrases;

/// <summary>What is expected of a quantity, to say.</summary>
public static class QuantityPhrases
{
    /// <summary>What a quantity of the dimension looks like, such as "a length such as "1 ft" or "30 cm"".</summary>
    /// <param name="dimension">What it measures.</param>
    public static Phrase Example(Dimension dimension) =>
        Phrase.Of(
            $"quantity.{dimension}",
            new Several([.. QuantityText.Examples(dimension).Select(one => Phrase.Plain($"\"{one}\""))], Joint.Or)
        );

    /// <summary>What was expected where a text is no such quantity.</summary>
    /// <param name="reading">What came of reading it.</param>
    public static Phrase Expected(this QuantityReading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        var example = Example(reading.Dimension);
        return reading.Flaw switch
        {
            QuantityFlaw.TooLong => Phrase.Of("quantity.too-long", example, QuantityText.MaxLength),
            QuantityFlaw.Commas or QuantityFlaw.EitherComma => Comma(example, reading.Number),
            QuantityFlaw.TooLarge => Phrase.Of("quantity.too-large", example),
            QuantityFlaw.Order => Phrase.Of("quantity.order", example),
            QuantityFlaw.NoUnit => Phrase.Of(
                "quantity.no-unit",
                example,
                string.Join(", ", UnitTable.Of(reading.Dimension).Select(unit => unit.Symbol))
            ),
            QuantityFlaw.Ppm => Phrase.Of("quantity.ppm", example),
            _ => example,
        };
    }

    /// <summary>What was expected where a comma can be misread.</summary>
    /// <param name="example">What a good text looks like.</param>
    /// <param name="number">The number that can be read in two ways; empty where its commas cannot be decimal ones.</param>
    internal static Phrase Comma(Phrase example, string number) =>
        number.Length == 0
            ? Phrase.Of("quantity.commas", example)
            : Phrase.Of(
                "quantity.either-comma",
                example,
                number,
                number.Replace(",", "", StringComparison.Ordinal),
                number.Replace(',', '.')
            );
}
