using Dripwright.Engine.Phrases;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Files;

/// <summary>A quantity with a unit; the property holds it in SI.</summary>
/// <param name="dimension">What it measures.</param>
/// <param name="min">Least value allowed, as a person writes it.</param>
/// <param name="max">Greatest value allowed, as a person writes it.</param>
[AttributeUsage(AttributeTargets.Property)]
public sealed class QuantityAttribute(Dimension dimension, string min, string max) : Attribute
{
    /// <summary>What it measures.</summary>
    public Dimension Dimension { get; } = dimension;

    /// <summary>Least value allowed.</summary>
    public string Min { get; } = min;

    /// <summary>Greatest value allowed.</summary>
    public string Max { get; } = max;

    /// <summary>Value assumed in a file that prefers US units.</summary>
    public string? Us { get; init; }

    /// <summary>Value assumed in a file that prefers metric units; the US one where null.</summary>
    public string? Metric { get; init; }
}

/// <summary>A whole number.</summary>
/// <param name="min">Least value allowed.</param>
/// <param name="max">Greatest value allowed.</param>
/// <param name="assumed">Value assumed where the file is silent.</param>
[AttributeUsage(AttributeTargets.Property)]
public sealed class WholeAttribute(int min, int max, int assumed) : Attribute
{
    /// <summary>Least value allowed.</summary>
    public int Min { get; } = min;

    /// <summary>Greatest value allowed.</summary>
    public int Max { get; } = max;

    /// <summary>Value assumed where the file is silent.</summary>
    public int Assumed { get; } = assumed;
}

/// <summary>Free text.</summary>
/// <param name="maxLength">Most characters allowed.</param>
/// <param name="assumed">Text assumed where the file is silent.</param>
[AttributeUsage(AttributeTargets.Property)]
public sealed class TextAttribute(int maxLength, string assumed = "") : Attribute
{
    /// <summary>Most characters allowed.</summary>
    public int MaxLength { get; } = maxLength;

    /// <summary>Text assumed where the file is silent.</summary>
    public string Assumed { get; } = assumed;

    /// <summary>True for the key of a row: lower case, digits, dashes, points and slashes, and not a word such as "none".</summary>
    public bool IsKey { get; init; }
}

/// <summary>Yes or no, or one of an enumeration's names in lower case with dashes.</summary>
/// <param name="assumed">Value assumed where the file is silent, as written in the file.</param>
[AttributeUsage(AttributeTargets.Property)]
public sealed class ChoiceAttribute(string assumed) : Attribute
{
    /// <summary>Value assumed where the file is silent.</summary>
    public string Assumed { get; } = assumed;
}

/// <summary>A plain number without a unit, or one whose unit stands in its name.</summary>
/// <param name="min">[-] Least value allowed.</param>
/// <param name="max">[-] Greatest value allowed.</param>
[AttributeUsage(AttributeTargets.Property)]
public sealed class NumberAttribute(double min, double max) : Attribute
{
    /// <summary>[-] Least value allowed.</summary>
    public double Min { get; } = min;

    /// <summary>[-] Greatest value allowed.</summary>
    public double Max { get; } = max;

    /// <summary>[-] Value assumed where the file is silent; not a number where there is none.</summary>
    public double Assumed { get; init; } = double.NaN;
}

/// <summary>A pH: a number without a unit.</summary>
/// <param name="min">[-] Least value allowed, 0 or more.</param>
/// <param name="max">[-] Greatest value allowed, 14 or less.</param>
[AttributeUsage(AttributeTargets.Property)]
public sealed class PhAttribute(double min, double max) : Attribute
{
    /// <summary>[-] Least value allowed.</summary>
    public double Min { get; } = min;

    /// <summary>[-] Greatest value allowed.</summary>
    public double Max { get; } = max;

    /// <summary>[-] Value assumed where the file is silent; not a number where there is none.</summary>
    public double Assumed { get; init; } = double.NaN;
}

/// <summary>A price: a decimal number in the one currency of the catalogue. The property is a <see cref="decimal"/>.</summary>
[AttributeUsage(AttributeTargets.Property)]
public sealed class PriceAttribute : Attribute
{
    /// <summary>Greatest price allowed; the least is nothing.</summary>
    public const int Most = 1_000_000;
}

/// <summary>Plain numbers by name, any of a few; those that are not given count as not said.</summary>
/// <param name="max">[-] Greatest value allowed; the least is 0.</param>
/// <param name="names">The names, one space between them.</param>
[AttributeUsage(AttributeTargets.Property)]
public sealed class AmountsAttribute(double max, string names) : Attribute
{
    /// <summary>[-] Greatest value allowed.</summary>
    public double Max { get; } = max;

    /// <summary>The names, in order.</summary>
    public IReadOnlyList<string> Names { get; } = names.Split(' ');
}

/// <summary>The key of something that stands elsewhere, such as a part of the catalogue.</summary>
/// <param name="us">Key assumed in a file that prefers US units; empty where the field must be given.</param>
/// <param name="metric">Key assumed in a file that prefers metric units.</param>
[AttributeUsage(AttributeTargets.Property)]
public abstract class KeyAttribute(string us, string metric) : Attribute
{
    /// <summary>Key assumed with US units.</summary>
    public string Us { get; } = us;

    /// <summary>Key assumed with metric units.</summary>
    public string Metric { get; } = metric;

    /// <summary>A word that may stand instead of a key, such as "none"; null where none may.</summary>
    public string? Or { get; init; }

    /// <summary>Name of the group in which the key must stand.</summary>
    public abstract string GroupName { get; }

    /// <summary>What a key of the group is, such as "a pump of the catalogue", for schema and handbook.</summary>
    public abstract string Group { get; }

    /// <summary>What is allowed in the field, such as <c>a pump of the catalogue, or "none"</c>, for schema and handbook.</summary>
    public string Allowed => Or is null ? Group : $"{Group}, or \"{Or}\"";

    /// <summary>The same, to say.</summary>
    public Phrase Expected
    {
        get
        {
            var group = Phrase.Of($"fault.key.{GroupName}");
            return Or is null ? group : Phrase.Of("fault.key.or", group, Or);
        }
    }
}

/// <summary>A list; the element type, or the other attributes beside this one, say what stands in it.</summary>
/// <param name="min">Fewest elements.</param>
/// <param name="max">Most elements.</param>
[AttributeUsage(AttributeTargets.Property)]
public sealed class ItemsAttribute(int min, int max) : Attribute
{
    /// <summary>Fewest elements. Where a list of records may not be empty and the file is silent, one of all defaults stands in.</summary>
    public int Min { get; } = min;

    /// <summary>Most elements.</summary>
    public int Max { get; } = max;
}

/// <summary>The field had another name before; a file that still has that one is told the new one.</summary>
/// <param name="name">The old name, as a file writes it.</param>
[AttributeUsage(AttributeTargets.Property)]
public sealed class FormerlyAttribute(string name) : Attribute
{
    /// <summary>The old name.</summary>
    public string Name { get; } = name;
}

/// <summary>One sentence for the person who writes the file; it goes into the schema and the handbook.</summary>
/// <param name="text">The sentence.</param>
[AttributeUsage(AttributeTargets.Property)]
public sealed class SaysAttribute(string text) : Attribute
{
    /// <summary>The sentence.</summary>
    public string Text { get; } = text;
}

/// <summary>The field may be left out; the plan then finds the value itself and says so.</summary>
/// <param name="how">How the plan finds it, as the end of the sentence "left out: …".</param>
[AttributeUsage(AttributeTargets.Property)]
public sealed class FoundByPlanAttribute(string how) : Attribute
{
    /// <summary>How the plan finds it.</summary>
    public string How { get; } = how;
}

/// <summary>
/// A record that stands in a group under its key. It may take what it leaves out from another row of the group: the one of
/// the same key that was there before, or the one that the field <see cref="BasedOn"/> names.
/// </summary>
[AttributeUsage(AttributeTargets.Class)]
public sealed class RowAttribute : Attribute
{
    /// <summary>Name of the field that holds a row's key.</summary>
    public const string Key = "key";

    /// <summary>Name of the field that names the row to start from.</summary>
    public const string BasedOn = "basedOn";
}
