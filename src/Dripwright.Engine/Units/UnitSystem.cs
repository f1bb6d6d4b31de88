namespace Dripwright.Engine.Units;

/// <summary>The unit system a rig prefers for display. It never changes what is computed.</summary>
public enum UnitSystem
{
    /// <summary>Inches, feet, US gallons, psi, °F.</summary>
    Us,

    /// <summary>Millimetres, metres, litres, kPa, °C.</summary>
    Metric,
}
