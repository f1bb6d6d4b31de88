using Dripwright.Engine.Chemistry.Formulas;

namespace Dripwright.Engine.Nutrients.Recipe;

/// <summary>A solid that may fall out where calcium meets sulfate or phosphate.</summary>
public enum Precipitate
{
    /// <summary>Gypsum, CaSO4·2H2O.</summary>
    Gypsum,

    /// <summary>Calcium hydrogen phosphate, CaHPO4·2H2O.</summary>
    CalciumHydrogenPhosphate,
}

/// <summary>How near a solution is to letting a solid fall.</summary>
/// <param name="Solid">Which.</param>
/// <param name="SaturationIndex">[-] Logarithm of the ion product over the solubility product; above 0 it can fall out.</param>
public readonly record struct Saturation(Precipitate Solid, double SaturationIndex);

/// <summary>Ion products of gypsum and calcium hydrogen phosphate in feeds and concentrates.</summary>
/// <remarks>
/// Activities after Davies, log γ = -A z² (√I/(1 + √I) - 0.3 I), A = 0.509; ion pairs of calcium, magnesium, potassium, sodium
/// and ammonium with sulfate, and of calcium and magnesium with phosphate. Solubility products at 25 °C: gypsum 10⁻⁴·⁵⁸
/// (USGS tables give -4.55 and -4.61, Bennett and Adams 1972 -4.588), CaHPO4·2H2O 10⁻⁶·⁶² as Ca·HPO4 (minteq.v4); pairs from
/// memory of the same tables. Between 5 and 35 °C both products change by less than the method's error.
/// Good to 0.15 up to I = 0.5 mol/kg; beyond, the activities of 0.5 are kept and the index is a rough guess on the safe side.
/// Method page: docs/methods/recipe.md
/// </remarks>
public static class IonProducts
{
    private const double Davies = 0.509;
    private const double MostIonicStrength = 0.5;
    private const double GypsumProduct = -4.58;
    private const double PhosphateProduct = -6.62;
    private const double SecondPhosphoricPK = 7.207;

    // Stability of the pairs at 25 °C.
    private static readonly double s_calciumSulfate = Math.Pow(10, 2.30);
    private static readonly double s_magnesiumSulfate = Math.Pow(10, 2.37);
    private static readonly double s_potassiumSulfate = Math.Pow(10, 0.85);
    private static readonly double s_sodiumSulfate = Math.Pow(10, 0.70);
    private static readonly double s_ammoniumSulfate = Math.Pow(10, 1.11);
    private static readonly double s_calciumHydrogen = Math.Pow(10, 2.739);
    private static readonly double s_calciumDihydrogen = Math.Pow(10, 1.408);
    private static readonly double s_magnesiumHydrogen = Math.Pow(10, 2.87);
    private static readonly double s_magnesiumDihydrogen = Math.Pow(10, 1.513);

    /// <summary>Saturation of both solids.</summary>
    /// <param name="composition">[mol/m³] The solution, counted as moles in a thousand kilograms of water.</param>
    /// <param name="ph">[-] Its pH, 2 to 10.</param>
    /// <returns>The indices; those of a solid whose ions are not both there are left out.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The pH is outside its range.</exception>
    public static IReadOnlyList<Saturation> Of(Composition composition, double ph)
    {
        ArgumentNullException.ThrowIfNull(composition);
        Guard.Between(ph, 2, 10);
        if (composition[Constituent.Calcium] <= 0)
        {
            return [];
        }
        var free = Speciate(composition, ph);
        var found = new List<Saturation>();
        var squared = free.Gamma2 * free.Gamma2;
        if (free.Sulfate > 0)
        {
            found.Add(
                new Saturation(Precipitate.Gypsum, Math.Log10(free.Calcium * free.Sulfate * squared) - GypsumProduct)
            );
        }
        if (free.Hydrogen > 0)
        {
            found.Add(
                new Saturation(
                    Precipitate.CalciumHydrogenPhosphate,
                    Math.Log10(free.Calcium * free.Hydrogen * squared) - PhosphateProduct
                )
            );
        }
        return found;
    }

    /// <summary>[mol/kg] Free ions: HPO4²⁻ stands under hydrogen.</summary>
    private readonly record struct Free(double Calcium, double Sulfate, double Hydrogen, double Gamma2);

    private static Free Speciate(Composition composition, double ph)
    {
        double Of(Constituent key) => Math.Max(0, composition[key]) / 1000;
        var (calcium, magnesium, potassium) = (
            Of(Constituent.Calcium),
            Of(Constituent.Magnesium),
            Of(Constituent.Potassium)
        );
        var (sodium, ammonium) = (Of(Constituent.Sodium), Of(Constituent.AmmoniumNitrogen));
        var (sulfur, phosphorus) = (Of(Constituent.Sulfur), Of(Constituent.Phosphorus));
        var others = Of(Constituent.NitrateNitrogen) + Of(Constituent.Chloride);
        var (ca, mg, k, na, nh4) = (calcium, magnesium, potassium, sodium, ammonium);
        var (so4, dihydrogen, hydrogen) = (sulfur, phosphorus, 0.0);
        double gamma1 = 1;
        double gamma2 = 1;
        // Each round takes the pairs from the last free ions; mixing in half of the new keeps strong solutions from swinging.
        for (var round = 0; round < 200; round++)
        {
            var before = ca + so4 + hydrogen;
            var bicarbonate = Math.Max(
                0,
                ca * 2 + mg * 2 + k + na + nh4 - so4 * 2 - dihydrogen - hydrogen * 2 - others
            );
            var strength = 0.5 * (4 * (ca + mg + so4 + hydrogen) + k + na + nh4 + dihydrogen + others + bicarbonate);
            var root = Math.Sqrt(Math.Min(strength, MostIonicStrength));
            gamma1 = Math.Pow(10, -Davies * (root / (1 + root) - 0.3 * root * root));
            gamma2 = Math.Pow(gamma1, 4);
            var two = gamma2 * gamma2;
            // A pair of two doubly charged ions is neutral (γ 1); one of a single and a double charge keeps one charge (γ1).
            var perSulfate =
                ca * s_calciumSulfate * two
                + mg * s_magnesiumSulfate * two
                + (k * s_potassiumSulfate + na * s_sodiumSulfate + nh4 * s_ammoniumSulfate) * gamma2;
            var split = Math.Pow(10, ph - SecondPhosphoricPK) * gamma1 / gamma2;
            var perHydrogen = (ca * s_calciumHydrogen + mg * s_magnesiumHydrogen) * two;
            var perDihydrogen = (ca * s_calciumDihydrogen + mg * s_magnesiumDihydrogen) * gamma2;
            var newSulfate = sulfur / (1 + perSulfate);
            var newDihydrogen = phosphorus / (1 + split + perDihydrogen + split * perHydrogen);
            so4 = (so4 + newSulfate) / 2;
            dihydrogen = (dihydrogen + newDihydrogen) / 2;
            hydrogen = dihydrogen * split;
            ca =
                (
                    ca
                    + calcium
                        / (
                            1
                            + so4 * s_calciumSulfate * two
                            + hydrogen * s_calciumHydrogen * two
                            + dihydrogen * s_calciumDihydrogen * gamma2
                        )
                ) / 2;
            mg =
                (
                    mg
                    + magnesium
                        / (
                            1
                            + so4 * s_magnesiumSulfate * two
                            + hydrogen * s_magnesiumHydrogen * two
                            + dihydrogen * s_magnesiumDihydrogen * gamma2
                        )
                ) / 2;
            k = (k + potassium / (1 + so4 * s_potassiumSulfate * gamma2)) / 2;
            na = (na + sodium / (1 + so4 * s_sodiumSulfate * gamma2)) / 2;
            nh4 = (nh4 + ammonium / (1 + so4 * s_ammoniumSulfate * gamma2)) / 2;
            if (round > 3 && Math.Abs(ca + so4 + hydrogen - before) < 1e-13)
            {
                break;
            }
        }
        return new Free(ca, so4, hydrogen, gamma2);
    }
}
