using Dripwright.Engine.Units;

namespace Dripwright.Engine.Files;

/// <summary>A quantity with a unit in the rig file; the property holds it in SI.</summary>
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

    /// <summary>Value assumed in a rig that prefers US units.</summary>
    public string? Us { get; init; }

    /// <summary>Value assumed in a rig that prefers metric units; the US one where null.</summary>
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
}

/// <summary>Yes or no, or one of an enumeration's names in lower case with dashes.</summary>
/// <param name="assumed">Value assumed where the file is silent, as written in the file.</param>
[AttributeUsage(AttributeTargets.Property)]
public sealed class ChoiceAttribute(string assumed) : Attribute
{
    /// <summary>Value assumed where the file is silent.</summary>
    public string Assumed { get; } = assumed;
}

/// <summary>The key of a catalogue part.</summary>
/// <param name="shelf">Where it must stand.</param>
/// <param name="us">Key assumed in a rig that prefers US units; empty where the field must be given.</param>
/// <param name="metric">Key assumed in a rig that prefers metric units.</param>
[AttributeUsage(AttributeTargets.Property)]
public sealed class PartKeyAttribute(PartGroup shelf, string us, string metric) : Attribute
{
    /// <summary>Where it must stand.</summary>
    public PartGroup PartGroup { get; } = shelf;

    /// <summary>Key assumed with US units.</summary>
    public string Us { get; } = us;

    /// <summary>Key assumed with metric units.</summary>
    public string Metric { get; } = metric;
}

/// <summary>A list; the element type says what stands in it.</summary>
/// <param name="min">Fewest elements.</param>
/// <param name="max">Most elements.</param>
[AttributeUsage(AttributeTargets.Property)]
public sealed class ItemsAttribute(int min, int max) : Attribute
{
    /// <summary>Fewest elements. Where a list may not be empty and the file is silent, one element of all defaults stands in.</summary>
    public int Min { get; } = min;

    /// <summary>Most elements.</summary>
    public int Max { get; } = max;
}

/// <summary>One sentence for the person who writes the rig file; it goes into the schema and the handbook.</summary>
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
