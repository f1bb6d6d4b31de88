namespace Dripwright.Engine.Printed;

/// <summary>What a socket has to carry.</summary>
/// <param name="Moment">[N·m] Greatest bending moment that one tube brings, 0 or more.</param>
/// <param name="Temperature">[K] Of the part on the warmest day; a dark part in the sun is warmer than the air.</param>
public readonly record struct JointLoad(double Moment, double Temperature)
{
    /// <summary>A light stand in a warm room: 5 N·m (a firm push of 10 kg on a half-metre lever) at 35 °C.</summary>
    public static JointLoad Usual => new(5, 308.15);
}
