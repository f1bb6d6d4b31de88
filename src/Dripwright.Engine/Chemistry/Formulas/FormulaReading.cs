using System.Globalization;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Chemistry.Formulas;

/// <summary>What came of reading a formula.</summary>
/// <param name="Formula">The formula; null when there is a fault.</param>
/// <param name="Fault">What is wrong; null when nothing is.</param>
public readonly record struct FormulaReading(Formula? Formula, FormulaFault? Fault);

/// <summary>One thing wrong in a formula.</summary>
/// <param name="Position">Character, counted from 1.</param>
/// <param name="Found">What stands there.</param>
/// <param name="Expected">What is allowed there.</param>
public readonly record struct FormulaFault(int Position, Phrase Found, Phrase Expected)
{
    /// <inheritdoc/>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"found {Found} at character {Position}; expected {Expected}");
}
