namespace Dripwright.Engine.Rigs;

/// <summary>A value that the rig file did not say.</summary>
/// <param name="Path">JSON path of the field.</param>
/// <param name="Value">The value assumed, as a person writes it; empty where the plan finds it.</param>
/// <param name="How">Why this value.</param>
public sealed record Assumed(string Path, string Value, string How);
