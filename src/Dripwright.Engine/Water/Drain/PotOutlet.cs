using System.Runtime.InteropServices;
using Dripwright.Engine.Physics;
using MathNet.Numerics.Integration;

namespace Dripwright.Engine.Water;

/// <summary>Flow through a pot's round outlet: a weir while it is partly covered, an orifice once it is under water.</summary>
/// <remarks>
/// Every strip of the opening at height z passes Cd √(2g (h - z)) times its width, or, where it lies under standing
/// water behind the outlet at height b, Cd √(2g (h - b)). Summed over the opening this is the classical theory of the
/// round sharp-edged weir for h ≤ d and of the large orifice for h > d, one smooth law with one coefficient; 0.6 for
/// both is from memory (published values for round weirs 0.57 to 0.61). A mouthpiece passes more.
/// All heights are over the lowest inside point of the outlet, its sill.
/// Method page: docs/methods/pot-drain.md
/// </remarks>
public static class PotOutlet
{
    /// <summary>[-] Discharge coefficient of a sharp-edged opening, from memory.</summary>
    public const double SharpEdged = 0.6;

    // The integrand is smooth once the ends are taken by the sine, so twenty points give all digits that matter.
    private static readonly GaussLegendreRule s_rule = new(0, Math.PI / 2, 20);

    /// <summary>Flow out of the pot.</summary>
    /// <param name="head">[m] Water level in the pot over the sill, 0 or more.</param>
    /// <param name="bore">[m] Inside diameter of the outlet, over 0.</param>
    /// <param name="behind">[m] Standing water behind the outlet over the sill; 0 for none, at most the head.</param>
    /// <param name="coefficient">[-] Discharge coefficient, over 0, at most 1.</param>
    /// <returns>[m³/s] Flow.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside the range above.</exception>
    public static double Flow(double head, double bore, double behind = 0, double coefficient = SharpEdged)
    {
        Guard.NotNegative(head);
        Guard.Positive(bore);
        Guard.Between(behind, 0, head);
        Guard.Between(coefficient, double.Epsilon, 1);
        return FlowUnchecked(head, bore, behind, coefficient);
    }

    /// <summary>Water level needed in the pot for a flow to leave.</summary>
    /// <param name="flow">[m³/s] Flow, 0 or more.</param>
    /// <param name="bore">[m] Inside diameter of the outlet, over 0.</param>
    /// <param name="behind">[m] Standing water behind the outlet over the sill, 0 or more.</param>
    /// <param name="coefficient">[-] Discharge coefficient, over 0, at most 1.</param>
    /// <returns>[m] Head over the sill, at least the standing water behind.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside the range above.</exception>
    public static double HeadFor(double flow, double bore, double behind = 0, double coefficient = SharpEdged)
    {
        Guard.NotNegative(flow);
        Guard.Positive(bore);
        Guard.NotNegative(behind);
        Guard.Between(coefficient, double.Epsilon, 1);
        if (flow == 0)
        {
            return behind;
        }

        var high = behind + bore;
        while (FlowUnchecked(high, bore, behind, coefficient) < flow)
        {
            high = behind + 2 * (high - behind);
        }

        return Bracket.Root(new FlowBalance(flow, bore, behind, coefficient), behind, high);
    }

    /// <summary>Time to fall from one level to another over an orifice that stays under water, in upright walls.</summary>
    /// <remarks>
    /// t = 2 A (√h₁ - √h₂) / (Cd a √(2g)). The usual closed form; with a pipe behind the orifice Cd = 1/√(4 f L/d + K),
    /// f after Fanning. Kept as a check of the general calculation. Heads here are over the middle of the opening.
    /// </remarks>
    /// <param name="area">[m²] Area of the vessel, over 0.</param>
    /// <param name="orificeArea">[m²] Area of the opening, over 0.</param>
    /// <param name="from">[m] Head at the start, 0 or more.</param>
    /// <param name="to">[m] Head at the end, 0 to the start.</param>
    /// <param name="coefficient">[-] Discharge coefficient, over 0, at most 1.</param>
    /// <returns>[s] Time.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside the range above.</exception>
    public static double TimeByOrifice(
        double area,
        double orificeArea,
        double from,
        double to,
        double coefficient = SharpEdged
    )
    {
        Guard.Positive(area);
        Guard.Positive(orificeArea);
        Guard.NotNegative(from);
        Guard.Between(to, 0, from);
        Guard.Between(coefficient, double.Epsilon, 1);
        return 2
            * area
            * (Math.Sqrt(from) - Math.Sqrt(to))
            / (coefficient * orificeArea * Math.Sqrt(2 * StandardGravity.Value));
    }

    internal static double FlowUnchecked(double head, double bore, double behind, double coefficient)
    {
        if (head <= behind)
        {
            return 0;
        }

        var covered = Math.Min(behind, bore);
        var drowned = covered > 0 ? CircularSection.Area(covered, bore) * Math.Sqrt(head - behind) : 0;
        return coefficient
            * Math.Sqrt(2 * StandardGravity.Value)
            * (drowned + (behind < bore ? FreePart(head, bore, behind) : 0));
    }

    // ∫ √(h - z) · 2 √(z (d - z)) dz from b to min(h, d), with z = b + (top - b) sin² t.
    private static double FreePart(double head, double bore, double behind)
    {
        var span = Math.Min(head, bore) - behind;
        var sum = 0.0;
        for (var i = 0; i < s_rule.Order; i++)
        {
            var (sin, cos) = Math.SinCos(s_rule.GetAbscissa(i));
            var z = behind + span * sin * sin;
            sum += s_rule.GetWeight(i) * Math.Sqrt(Math.Max((head - z) * z * (bore - z), 0)) * 4 * span * sin * cos;
        }

        return sum;
    }

    [StructLayout(LayoutKind.Auto)]
    private readonly struct FlowBalance(double flow, double bore, double behind, double coefficient) : IOneNumber
    {
        public double At(double x) => FlowUnchecked(x, bore, behind, coefficient) - flow;
    }
}
