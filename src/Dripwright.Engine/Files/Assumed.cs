namespace Dripwright.Engine.Files;

/// <summary>A value the file does not give.</summary>
/// <param name="Path">Path of the field.</param>
/// <param name="Value">The value assumed, as it would stand in the file; empty where the plan finds it.</param>
/// <param name="How">Why this value, or how the plan finds it.</param>
public sealed record Assumed(string Path, string Value, string How);
