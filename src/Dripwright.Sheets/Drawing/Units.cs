namespace Dripwright.Sheets.Drawing;

/// <summary>The units a sheet speaks.</summary>
public enum Units
{
    /// <summary>Millimetres and metres.</summary>
    Metric,

    /// <summary>Inches and feet.</summary>
    UnitedStates,
}
