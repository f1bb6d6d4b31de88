namespace Dripwright.Engine.Units;

/// <summary>What a quantity in a rig file measures.</summary>
public enum Dimension
{
    /// <summary>[m]</summary>
    Length,

    /// <summary>[m³]</summary>
    Volume,

    /// <summary>[m³/s]</summary>
    Flow,

    /// <summary>[Pa] gauge.</summary>
    Pressure,

    /// <summary>[m/m] drop per length.</summary>
    Slope,

    /// <summary>[K]</summary>
    Temperature,

    /// <summary>[W]</summary>
    Power,

    /// <summary>[V]</summary>
    Voltage,

    /// <summary>[Hz]</summary>
    Frequency,

    /// <summary>[A]</summary>
    Current,

    /// <summary>[s]</summary>
    Duration,

    /// <summary>[-] share, 1 is the whole; written "80 %".</summary>
    Share,

    /// <summary>[kg]</summary>
    Mass,

    /// <summary>[N]</summary>
    Force,

    /// <summary>[S/m] at 25 °C.</summary>
    Conductivity,
}
