using CsCheck;
using Dripwright.Engine.Chemistry.Formulas;

namespace Dripwright.Engine.Tests.Nutrients.Strength;

/// <summary>Random solutions as they stand in tanks: any of the ions, up to about 5 dS/m.</summary>
internal static class Generated
{
    public static readonly Gen<Composition> Solution = Gen.Select(
        Gen.Double[0, 20],
        Gen.Double[0, 3],
        Gen.Double[0, 3],
        Gen.Double[0, 12],
        Gen.Double[0, 10],
        Gen.Double[0, 5],
        Gen.Double[0, 6],
        Gen.Double[0, 10],
        (no3, nh4, p, k, ca, mg, s, na) =>
            Composition.Of(
                (Constituent.NitrateNitrogen, no3),
                (Constituent.AmmoniumNitrogen, nh4),
                (Constituent.Phosphorus, p),
                (Constituent.Potassium, k),
                (Constituent.Calcium, ca),
                (Constituent.Magnesium, mg),
                (Constituent.Sulfur, s),
                (Constituent.Sodium, na),
                (Constituent.Chloride, na / 2),
                (Constituent.Iron, 0.03),
                (Constituent.Boron, 0.05),
                (Constituent.Silicon, 0.2),
                (Constituent.InorganicCarbon, na / 3)
            )
    );

    /// <summary>The same, with nitrate and carbon set so that it has a pH between 4 and 8.</summary>
    public static readonly Gen<Composition> Balanced = Gen.Select(
        Solution,
        Gen.Double[0, 5],
        (solution, carbon) =>
        {
            var cations = solution.With(Constituent.NitrateNitrogen, 0);
            var open =
                solution[Constituent.AmmoniumNitrogen]
                + solution[Constituent.Potassium]
                + (2 * solution[Constituent.Calcium])
                + (2 * solution[Constituent.Magnesium])
                + solution[Constituent.Sodium]
                - solution[Constituent.Phosphorus]
                - (2 * solution[Constituent.Sulfur])
                - solution[Constituent.Chloride]
                - solution[Constituent.Iron];
            return open >= 0
                ? cations
                    .With(Constituent.NitrateNitrogen, Math.Max(0, open - (carbon / 2)))
                    .With(Constituent.InorganicCarbon, carbon)
                : cations.With(Constituent.Potassium, solution[Constituent.Potassium] - open);
        }
    );
}
