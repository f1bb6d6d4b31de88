namespace Dripwright.Engine.Catalogue;

/// <summary>A plain number without a unit in a catalogue file, or one whose unit stands in its name.</summary>
/// <param name="min">[-] Least value allowed.</param>
/// <param name="max">[-] Greatest value allowed.</param>
[AttributeUsage(AttributeTargets.Property)]
public sealed class NumberAttribute(double min, double max) : Attribute
{
    /// <summary>[-] Least value allowed.</summary>
    public double Min { get; } = min;

    /// <summary>[-] Greatest value allowed.</summary>
    public double Max { get; } = max;

    /// <summary>Name of the field in the file where it is not the property's own.</summary>
    public string? Name { get; init; }
}
