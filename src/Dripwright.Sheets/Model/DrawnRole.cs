namespace Dripwright.Sheets.Model;

/// <summary>What a line, surface or text stands for. Colours follow from it in <see cref="Palette"/>.</summary>
public enum DrawnRole
{
    /// <summary>What is built.</summary>
    Ink,

    /// <summary>What explains: dimensions, leaders, notes.</summary>
    Explain,

    /// <summary>Water under pressure.</summary>
    Water,

    /// <summary>Water running back.</summary>
    Return,

    /// <summary>Plants.</summary>
    Plant,

    /// <summary>What must be changed.</summary>
    Stop,

    /// <summary>What wants care.</summary>
    Care,

    /// <summary>Guides that may vanish: grids, rows to write on.</summary>
    Faint,

    /// <summary>The paper itself, to cover what lies beneath.</summary>
    Paper,
}
