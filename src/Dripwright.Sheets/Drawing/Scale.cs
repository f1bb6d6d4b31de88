namespace Dripwright.Sheets.Drawing;

/// <summary>How much smaller the drawing is than the thing.</summary>
/// <param name="Denominator">[-] How many times the thing is larger than the drawing; 1 or more.</param>
/// <param name="Words">As the title block says it.</param>
public sealed record Scale(double Denominator, string Words)
{
    /// <summary>Full size, for patterns that are laid on the work.</summary>
    public static Scale Full => new(1, Language.Words.Of("sheet.scale.full"));

    /// <summary>
    /// Scales of ISO 5455 (from memory), largest first, and between its 1:20 and 1:50 the 1:25 and 1:30 that are read off the
    /// 1:250 and 1:300 edges of a ruler (common practice): many rows just miss 1:20.
    /// </summary>
    public static IReadOnlyList<Scale> Metric =>
        [Full, .. new[] { 2, 5, 10, 20, 25, 30, 50, 100, 200 }.Select(n => new Scale(n, $"1:{Text(n)}"))];

    /// <summary>Inch-to-the-foot scales of a US scale ruler (common practice), largest first.</summary>
    public static IReadOnlyList<Scale> UnitedStates =>
        [
            Full,
            new(2, "6 in = 1 ft (1:2)"),
            new(4, "3 in = 1 ft (1:4)"),
            new(8, "1 ½ in = 1 ft (1:8)"),
            new(12, "1 in = 1 ft (1:12)"),
            new(16, "¾ in = 1 ft (1:16)"),
            new(24, "½ in = 1 ft (1:24)"),
            new(48, "¼ in = 1 ft (1:48)"),
            new(96, "⅛ in = 1 ft (1:96)"),
            new(192, "¹⁄₁₆ in = 1 ft (1:192)"),
        ];

    /// <summary>The standard scales of a system of units, largest first.</summary>
    public static IReadOnlyList<Scale> Of(Units units) => units == Units.Metric ? Metric : UnitedStates;

    /// <summary>[mm] Length on paper.</summary>
    /// <param name="metres">[m] Length of the thing.</param>
    public double OnPaper(double metres) => metres * 1000 / Denominator;

    private static string Text(int number) => number.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
