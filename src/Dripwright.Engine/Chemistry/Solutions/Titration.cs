using Dripwright.Engine.Chemistry.Formulas;

namespace Dripwright.Engine.Chemistry.Solutions;

/// <summary>What strong acid does to a solution, drop by drop.</summary>
/// <remarks>A plan doses bottled acids with their own ions; this is the laboratory's titration, by which waters
/// are reported and the chemistry is checked against published examples.</remarks>
public static class Titration
{
    /// <summary>[-] pH at which a titration for alkalinity is commonly stopped.</summary>
    public const double EndPoint = 4.5;

    /// <summary>Strong acid that brings a solution to a pH, as hydrochloric acid without any volume.</summary>
    /// <param name="solution">What is in it.</param>
    /// <param name="ph">[-] pH wanted, 2 to 12.</param>
    /// <param name="surroundings">What it stands in; open to the air, carbon dioxide is let go.</param>
    /// <param name="gap">[mol/m³ of charge] See <see cref="SolutionPh.Gap"/>.</param>
    /// <returns>[mol/m³, the same number as meq/L] Acid; negative where a base is needed.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An amount is negative, or the pH is outside the range.</exception>
    public static double AcidTo(Composition solution, double ph, SolutionConditions surroundings, double gap = 0)
    {
        Guard.Between(ph, 2, 12);
        Guard.Finite(gap);
        double open = Speciation.Within(solution, ph, surroundings).Charge + gap;
        if (open == 0)
        {
            return 0;
        }

        // The added ion brings some ionic strength, which shifts the balance a little: half as much again is ample.
        var left = new Left(solution, ph, surroundings, gap);
        double reach = 1.5 * open;
        while (Math.Sign(left.At(reach)) == Math.Sign(open))
        {
            reach *= 2;
        }

        return Bracket.Root(left, 0, reach);
    }

    /// <summary>Alkalinity as titrated: strong acid to pH 4.5.</summary>
    /// <remarks>Reads some 0.05 meq/L above the true alkalinity, the acid it takes to make the end point itself.</remarks>
    /// <param name="solution">What is in it.</param>
    /// <param name="surroundings">What it stands in.</param>
    /// <returns>[mol/m³ of charge, the same number as meq/L] Alkalinity; negative in a solution more acid than that.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An amount is negative.</exception>
    public static double Alkalinity(Composition solution, SolutionConditions surroundings) =>
        AcidTo(solution, EndPoint, surroundings);

    /// <summary>The inorganic carbon that gives a solution an alkalinity at a pH, so that a water analysis can be used.</summary>
    /// <param name="solution">What else is in it; its own inorganic carbon is not looked at.</param>
    /// <param name="alkalinity">[mol/m³ of charge, the same number as meq/L] Alkalinity, 0 to 50.</param>
    /// <param name="ph">[-] Measured pH, 4.5 to 10.</param>
    /// <param name="surroundings">What it stood in.</param>
    /// <returns>The same solution with its inorganic carbon, or why none fits.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static Answer<Composition> WithCarbon(
        Composition solution,
        double alkalinity,
        double ph,
        SolutionConditions surroundings
    )
    {
        ArgumentNullException.ThrowIfNull(solution);
        ArgumentNullException.ThrowIfNull(surroundings);
        Guard.Between(alkalinity, 0, 50);
        Guard.Between(ph, 4.5, 10);
        var lacking = new Lacking(solution, alkalinity, ph, surroundings with { CarbonDioxide = null });
        if (lacking.At(0) > 0)
        {
            return Answer<Composition>.No(Unanswerable.Of("alkalinity-below-others"));
        }

        double reach = 100 * (alkalinity + 1);
        return lacking.At(reach) < 0
            ? Answer<Composition>.No(Unanswerable.Of("alkalinity-too-high"))
            : Answer<Composition>.Of(solution.With(Constituent.InorganicCarbon, Bracket.Root(lacking, 0, reach)));
    }

    private readonly struct Left(Composition solution, double ph, SolutionConditions surroundings, double gap)
        : IOneNumber
    {
        public double At(double x)
        {
            Constituent counter = x > 0 ? Constituent.Chloride : Constituent.Sodium;
            Composition with = solution.With(counter, solution[counter] + Math.Abs(x));
            return Speciation.Within(with, ph, surroundings).Charge + gap;
        }
    }

    private readonly struct Lacking(Composition solution, double alkalinity, double ph, SolutionConditions surroundings)
        : IOneNumber
    {
        public double At(double x) =>
            Speciation.Within(solution.With(Constituent.InorganicCarbon, x), ph, surroundings).Alkalinity - alkalinity;
    }
}
