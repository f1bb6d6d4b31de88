namespace Dripwright.Engine.Water;

/// <summary>How much of the difference between emitters comes from what. The four shares add up to 1.</summary>
/// <remarks>
/// A share may be negative: then that cause works against the others (a line that loses pressure downhill, say).
/// When <see cref="CoefficientOfVariation"/> is 0 all shares are 0.
/// </remarks>
/// <param name="Pressure">[-] Share of the pressure lost along the line.</param>
/// <param name="Height">[-] Share of the outlets standing at different heights.</param>
/// <param name="Manufacture">[-] Share of the emitters not being alike.</param>
/// <param name="Rest">[-] What the first three do not explain: they act together, and flow is not linear in head.</param>
/// <param name="CoefficientOfVariation">[-] Standard deviation over mean of the emitter flows from all causes.</param>
public sealed record SpreadShares(
    double Pressure,
    double Height,
    double Manufacture,
    double Rest,
    double CoefficientOfVariation
);
