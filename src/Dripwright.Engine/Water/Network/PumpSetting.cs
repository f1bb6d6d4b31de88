namespace Dripwright.Engine.Water;

/// <summary>How a pump stands in the line.</summary>
/// <param name="Running">True when it runs; a stopped pump is a choke that water may pass either way.</param>
/// <param name="HasCheckValve">True when water cannot pass it backward.</param>
/// <param name="PortDiameter">[m] Bore whose velocity the next coefficient belongs to, greater than 0.</param>
/// <param name="StoppedLossCoefficient">[-] K of the stopped pump, or of a running one that is overpowered backward.</param>
public sealed record PumpSetting(bool Running, bool HasCheckValve, double PortDiameter, double StoppedLossCoefficient);
