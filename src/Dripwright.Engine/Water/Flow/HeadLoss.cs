using System.Runtime.InteropServices;

namespace Dripwright.Engine.Water;

/// <summary>The head a link takes from the water at one flow, and how steeply that grows with flow.</summary>
/// <param name="Head">[m] Head at the link's start less head at its end; negative where the link adds head.</param>
/// <param name="Slope">[s/m²] Derivative of the head by flow; never negative.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct HeadLoss(double Head, double Slope);
