namespace Dripwright.Sheets.Model;

/// <summary>How a surface is filled. Patterns are lines and dots, so that they survive a black-and-white printer.</summary>
public enum FillPattern
{
    /// <summary>The role's full colour.</summary>
    Solid,

    /// <summary>The role's pale colour.</summary>
    Tint,

    /// <summary>Lines rising to the right at 45°: a cut surface.</summary>
    Hatch,

    /// <summary>Lines falling to the right at 45°: the neighbouring cut part.</summary>
    BackHatch,

    /// <summary>Both directions.</summary>
    CrossHatch,

    /// <summary>Dots: coir, soil, growing medium.</summary>
    Dots,

    /// <summary>Level lines: standing water.</summary>
    Levels,
}

/// <summary>A filled surface: what it stands for and its pattern.</summary>
/// <param name="Role">What it stands for.</param>
/// <param name="Pattern">Pattern.</param>
public sealed record Fill(DrawnRole Role, FillPattern Pattern = FillPattern.Solid)
{
    /// <summary>Solid ink.</summary>
    public static Fill Ink { get; } = new(DrawnRole.Ink);

    /// <summary>Covers what lies beneath.</summary>
    public static Fill Paper { get; } = new(DrawnRole.Paper);

    /// <summary>A cut surface.</summary>
    public static Fill Section { get; } = new(DrawnRole.Explain, FillPattern.Hatch);

    /// <summary>Growing medium.</summary>
    public static Fill Medium { get; } = new(DrawnRole.Explain, FillPattern.Dots);

    /// <summary>Standing water.</summary>
    public static Fill StandingWater { get; } = new(DrawnRole.Water, FillPattern.Levels);

    /// <summary>Whether the pattern is made of lines or dots.</summary>
    public bool IsPattern => Pattern is not (FillPattern.Solid or FillPattern.Tint);
}
