using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Chemistry.Solutions;

namespace Dripwright.Engine.Nutrients.Loop;

/// <summary>One ion beside what it would be if EC told the truth.</summary>
/// <param name="Constituent">Which.</param>
/// <param name="Held">[mol/m³] What the solution holds.</param>
/// <param name="Expected">[mol/m³] What a fresh solution of the same EC holds.</param>
public sealed record HiddenIon(Constituent Constituent, double Held, double Expected)
{
    /// <summary>[mol/m³] More (above nought) or less than expected.</summary>
    public double Off => Held - Expected;
}

/// <summary>What an EC reading hides: ions that have drifted while their sum has not.</summary>
public static class HiddenIons
{
    /// <summary>The major ions of a solution against a fresh one of the same EC, the most hidden first.</summary>
    /// <remarks>Ordered by charge in excess or wanting, which is what they shift in EC.</remarks>
    /// <param name="solution">[mol/m³] What the solution holds.</param>
    /// <param name="water">[mol/m³] The water a fresh solution is made with.</param>
    /// <param name="recipe">[mol/m³] What full strength adds to it.</param>
    /// <param name="ph">[-] pH, 4 to 9.</param>
    /// <returns>The ions, or why there is no fresh solution of that EC.</returns>
    public static Answer<IReadOnlyList<HiddenIon>> Of(
        Composition solution,
        Composition water,
        Composition recipe,
        double ph = 5.8
    )
    {
        ArgumentNullException.ThrowIfNull(solution);
        Guard.Between(ph, 4, 9);
        var reads = Conductivity.Of(solution, ph, SolutionConditions.Closed);
        var fresh = StrengthScaling.ToEc(water, recipe, reads, ph);
        return fresh.Found
            ? Answer<IReadOnlyList<HiddenIon>>.Of([
                .. Composition
                    .Constituents.Where(c => Charges.Of(c) != 0 && !Charges.IsTrace(c))
                    .Select(c => new HiddenIon(c, solution[c], fresh.Value.Solution[c]))
                    .OrderByDescending(h => Math.Abs(h.Off * Charges.Of(h.Constituent)))
                    .ThenBy(h => h.Constituent),
            ])
            : Answer<IReadOnlyList<HiddenIon>>.No(fresh.Refusals);
    }
}
