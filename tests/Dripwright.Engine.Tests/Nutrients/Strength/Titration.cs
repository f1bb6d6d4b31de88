using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Chemistry.Solutions;

namespace Dripwright.Engine.Tests.Nutrients.Strength;

/// <summary>The laboratory's titration, drop by drop: how published waters and acids are told, and the engine's ions asked.</summary>
internal static class Titration
{
    /// <summary>[-] pH at which a titration for alkalinity is commonly stopped.</summary>
    private const double EndPoint = 4.5;

    /// <summary>[meq/L] Strong acid that brings a solution to a pH, as hydrochloric acid without any volume; negative for a base.</summary>
    public static double AcidTo(Composition solution, double ph, SolutionConditions surroundings) =>
        Root(
            acid =>
            {
                var counter = acid > 0 ? Constituent.Chloride : Constituent.Sodium;
                var with = solution.With(counter, solution[counter] + Math.Abs(acid));
                return Speciation.Within(with, ph, surroundings).Charge;
            },
            -100,
            100
        );

    /// <summary>[meq/L] Alkalinity as titrated; some 0.05 above the true one, the acid it takes to make the end point itself.</summary>
    public static double Alkalinity(Composition solution, SolutionConditions surroundings) =>
        AcidTo(solution, EndPoint, surroundings);

    /// <summary>The solution with the inorganic carbon that gives it an alkalinity [meq/L] at a pH.</summary>
    public static Composition WithCarbon(
        Composition solution,
        double alkalinity,
        double ph,
        SolutionConditions surroundings
    )
    {
        Composition With(double carbon) => solution.With(Constituent.InorganicCarbon, carbon);
        return With(
            Root(
                carbon => alkalinity - Speciation.Within(With(carbon), ph, surroundings).Alkalinity,
                0,
                100 * (alkalinity + 1)
            )
        );
    }

    /// <summary>Where a falling function crosses zero, halved until nothing is left to halve.</summary>
    private static double Root(Func<double, double> function, double low, double high)
    {
        Assert.True(function(low) >= 0 && function(high) <= 0, "Nothing between these bounds answers.");
        for (var i = 0; i < 200; i++)
        {
            var middle = 0.5 * (low + high);
            if (function(middle) > 0)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return 0.5 * (low + high);
    }
}
