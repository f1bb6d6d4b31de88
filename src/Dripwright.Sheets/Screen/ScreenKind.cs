namespace Dripwright.Sheets.Screen;

/// <summary>From where the rig is seen.</summary>
public enum ScreenKind
{
    /// <summary>From above: every row, pot and pipe.</summary>
    Plan,

    /// <summary>One row from the front.</summary>
    Front,

    /// <summary>Across the rows, from the reservoir's end.</summary>
    End,
}

/// <summary>What the colour of the pots says.</summary>
public enum ScreenColour
{
    /// <summary>Nothing: planted pots are green, empty ones crossed out.</summary>
    None,

    /// <summary>How much water a pot gets.</summary>
    Flow,

    /// <summary>The pressure at its emitters.</summary>
    Pressure,

    /// <summary>How far the tubes of the stand and the wire are used up, in the round alone; a flat drawing stays as it is.</summary>
    Load,
}
