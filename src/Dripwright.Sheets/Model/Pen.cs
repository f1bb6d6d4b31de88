namespace Dripwright.Sheets.Model;

/// <summary>Two widths, two to one, after ISO 128 (from memory).</summary>
public enum LineWidth
{
    /// <summary>0.25 mm: what explains.</summary>
    Narrow,

    /// <summary>0.5 mm: what exists.</summary>
    Wide,
}

/// <summary>The line types used here, after ISO 128 (from memory).</summary>
public enum LineType
{
    /// <summary>Unbroken.</summary>
    Continuous,

    /// <summary>Hidden edges; water running back.</summary>
    Dashed,

    /// <summary>Centre lines.</summary>
    LongDashDot,

    /// <summary>Neighbouring parts and outer positions.</summary>
    LongDashDoubleDot,
}

/// <summary>How a line is drawn: what it stands for, how wide, which pattern.</summary>
/// <param name="Role">What it stands for.</param>
/// <param name="Width">Wide or narrow.</param>
/// <param name="Type">Pattern.</param>
public sealed record Pen(DrawnRole Role, LineWidth Width = LineWidth.Narrow, LineType Type = LineType.Continuous)
{
    /// <summary>Outlines of what is built.</summary>
    public static Pen Built { get; } = new(DrawnRole.Ink, LineWidth.Wide);

    /// <summary>Built, but small or seen lightly.</summary>
    public static Pen Thin { get; } = new(DrawnRole.Ink);

    /// <summary>Hidden edges of what is built.</summary>
    public static Pen Hidden { get; } = new(DrawnRole.Ink, LineWidth.Narrow, LineType.Dashed);

    /// <summary>Dimensions, leaders, hatching.</summary>
    public static Pen Explain { get; } = new(DrawnRole.Explain);

    /// <summary>Centre lines.</summary>
    public static Pen Centre { get; } = new(DrawnRole.Explain, LineWidth.Narrow, LineType.LongDashDot);

    /// <summary>Neighbouring parts and outer positions.</summary>
    public static Pen Neighbour { get; } = new(DrawnRole.Explain, LineWidth.Narrow, LineType.LongDashDoubleDot);

    /// <summary>Water under pressure.</summary>
    public static Pen Water { get; } = new(DrawnRole.Water, LineWidth.Wide);

    /// <summary>Water running back.</summary>
    public static Pen Return { get; } = new(DrawnRole.Return, LineWidth.Wide, LineType.Dashed);

    /// <summary>Plants.</summary>
    public static Pen Plant { get; } = new(DrawnRole.Plant);

    /// <summary>What must be changed.</summary>
    public static Pen Stop { get; } = new(DrawnRole.Stop, LineWidth.Wide);

    /// <summary>What wants care.</summary>
    public static Pen Care { get; } = new(DrawnRole.Care, LineWidth.Wide);

    /// <summary>Grids and lines to write on.</summary>
    public static Pen Faint { get; } = new(DrawnRole.Faint);

    /// <summary>[mm] Width on paper.</summary>
    public double Millimetres => Width == LineWidth.Wide ? 0.5 : 0.25;

    /// <summary>[mm] Lengths of dashes and gaps in turn; empty for an unbroken line.</summary>
    public IReadOnlyList<double> Dashes =>
        Type switch
        {
            LineType.Dashed => Width == LineWidth.Wide ? [4, 1.5] : [2.5, 1],
            LineType.LongDashDot => [7, 1, 0.6, 1],
            LineType.LongDashDoubleDot => [7, 1, 0.6, 1, 0.6, 1],
            _ => [],
        };
}
