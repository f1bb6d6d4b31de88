using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Chemistry.Solutions;

/// <summary>The pH that a composition must have, because a solution carries no net charge.</summary>
/// <remarks>
/// The charge of all ions falls as pH rises, so there is one pH at which it is nought; it is bracketed between 0 and 14 and
/// cannot be missed. EDTA and other chelating agents are left out. An analysis never closes exactly: what does not close
/// can be taken from a measured pH (<see cref="Gap"/>) and carried along. Method page: docs/methods/solution-ph.md
/// </remarks>
public static class SolutionPh
{
    /// <summary>The solution divided at its own pH.</summary>
    /// <param name="solution">What is in it.</param>
    /// <param name="surroundings">What it stands in: temperature and air.</param>
    /// <param name="gap">[mol/m³ of charge] Ions of one sign the composition does not name, positive for cations.</param>
    /// <returns>The divided solution, or why no pH fits.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An amount is negative, or the gap is not finite.</exception>
    public static Answer<Speciation> Of(Composition solution, SolutionConditions surroundings, double gap = 0)
    {
        Guard.Finite(gap);
        var balance = new Balance(solution, surroundings, gap);
        var acidEnd = balance.At(0);
        var alkalineEnd = balance.At(14);
        if (acidEnd < 0 || alkalineEnd > 0)
        {
            var excess = acidEnd < 0 ? -acidEnd : alkalineEnd;
            return Answer<Speciation>.No(
                Unanswerable.Of(acidEnd < 0 ? "too-many-anions" : "too-many-cations", Measured.Milliequivalents(excess))
            );
        }

        var ph = Bracket.Root(balance, 0, 14);
        var found = Speciation.Within(solution, ph, surroundings);
        return found.IonicStrength > Speciation.HighestIonicStrength ? TooStrong(found) : Answer<Speciation>.Of(found);
    }

    /// <summary>The charge that a composition lacks for the pH that was measured: what its analysis left out.</summary>
    /// <param name="solution">What is in it.</param>
    /// <param name="ph">[-] Measured pH, 0 to 14.</param>
    /// <param name="surroundings">What it stands in.</param>
    /// <returns>[mol/m³ of charge, the same number as meq/L] Positive for cations not named.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An amount is negative, the pH is outside 0 to 14, or the solution is
    /// too strong for the method.</exception>
    public static double Gap(Composition solution, double ph, SolutionConditions surroundings) =>
        -Speciation.At(solution, ph, surroundings).Charge;

    internal static Answer<Speciation> TooStrong(Speciation found) =>
        Answer<Speciation>.No(
            Unanswerable.Of(
                "concentrate",
                Measured.Millimoles(found.IonicStrength),
                Measured.Millimoles(Speciation.HighestIonicStrength)
            )
        );

    private readonly struct Balance(Composition solution, SolutionConditions surroundings, double gap) : IOneNumber
    {
        public double At(double x) => Speciation.Within(solution, x, surroundings).Charge + gap;
    }
}
