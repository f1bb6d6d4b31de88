namespace Dripwright.Engine.Water;

/// <summary>What came of reading a pump's points: a curve, or all that is wrong with them.</summary>
/// <param name="Curve">The curve, or null when there are faults.</param>
/// <param name="Faults">Every fault found, in plain words; empty when there is a curve.</param>
public sealed record PumpCurveReading(PumpCurve? Curve, IReadOnlyList<string> Faults);
