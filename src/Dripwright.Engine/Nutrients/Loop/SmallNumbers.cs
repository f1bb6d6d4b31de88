namespace Dripwright.Engine.Nutrients.Loop;

/// <summary>e^x - 1 and ln(1 + x) that keep their digits when x is small.</summary>
/// <remarks>The rounding of 1 + x is undone by a quotient; W. Kahan's trick, from memory.</remarks>
internal static class SmallNumbers
{
    public static double ExpMinusOne(double x)
    {
        double e = Math.Exp(x);
        if (e == 1)
        {
            return x;
        }

        return e is 0 or double.PositiveInfinity ? e - 1 : (e - 1) * x / Math.Log(e);
    }

    public static double LogOnePlus(double x)
    {
        double sum = 1 + x;
        return sum == 1 ? x : Math.Log(sum) * x / (sum - 1);
    }
}
