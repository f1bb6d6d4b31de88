using System.Runtime.InteropServices;

namespace Dripwright.Engine.Water;

/// <summary>One point of a pump's published curve.</summary>
/// <param name="Flow">[m³/s] Flow.</param>
/// <param name="Head">[m] Head the pump gives at that flow.</param>
/// <param name="InputPower">[W] Electrical power drawn at that flow, if it is known.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct PumpPoint(double Flow, double Head, double? InputPower = null);
