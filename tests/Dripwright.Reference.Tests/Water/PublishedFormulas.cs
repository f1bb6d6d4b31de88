namespace Dripwright.Reference.Tests.Water;

/// <summary>Rival friction formulas, kept here only to check ours against; the engine does not use them.</summary>
internal static class PublishedFormulas
{
    public static double SwameeJain(double re, double e) =>
        0.25 / Math.Pow(Math.Log10(e / 3.7 + 5.74 / Math.Pow(re, 0.9)), 2);

    public static double Haaland(double re, double e) =>
        Math.Pow(-1.8 * Math.Log10(Math.Pow(e / 3.7, 1.11) + 6.9 / re), -2);

    public static double Churchill(double re, double e)
    {
        var a = Math.Pow(2.457 * Math.Log(1 / (Math.Pow(7 / re, 0.9) + 0.27 * e)), 16);
        var b = Math.Pow(37530 / re, 16);
        return 8 * Math.Pow(Math.Pow(8 / re, 12) + Math.Pow(a + b, -1.5), 1.0 / 12);
    }
}
