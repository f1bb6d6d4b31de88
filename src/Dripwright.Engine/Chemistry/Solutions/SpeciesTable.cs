using Dripwright.Engine.Chemistry.Formulas;

namespace Dripwright.Engine.Chemistry.Solutions;

/// <summary>A species as made from the basic ions: which, how many protons, how strongly, how fast it moves.</summary>
/// <param name="Formula">Formula without charge.</param>
/// <param name="Parts">Indices of the basic ions in it, one of each at most.</param>
/// <param name="Protons">Protons taken up when it forms from the basic ions.</param>
/// <param name="Charge">Charge number.</param>
/// <param name="LogK">Constant of formation at a temperature in K.</param>
/// <param name="Mobility">[S cm²/mol] Molar conductivity at infinite dilution and 25 °C.</param>
internal sealed record Formation(
    string Formula,
    int[] Parts,
    int Protons,
    int Charge,
    Func<double, double> LogK,
    double Mobility
)
{
    /// <summary>Protons it can still take up on the way to the forms that alkalinity is counted from.</summary>
    public int Held => (Parts.Any(SpeciesTable.TakesTwo) ? 2 : 0) - Protons;
}

/// <summary>A basic ion: what all other species of a constituent are counted from.</summary>
internal sealed record BasicIon(string Formula, int Charge, Constituent Constituent, double Mobility);

/// <summary>
/// The species counted with. Constants: USGS database phreeqc.dat (public domain), with its enthalpies; carbonate after
/// Plummer and Busenberg 1982. Mobilities: CRC Handbook, ionic conductivities at infinite dilution; of H2PO4, HPO4 and
/// ion pairs from the diffusion coefficients of phreeqc.dat (the CRC's 36 for H2PO4 puts KH2PO4 4 % too high).
/// </summary>
internal static class SpeciesTable
{
    public const int Phosphate = 8;
    public const int Carbonate = 9;
    public const int Iron = 10;

    private const double CalorieJoules = 4.184;
    private const double Gas = 8.314462618;

    // From a diffusion coefficient in 1e-9 m²/s: F² z² D / (R T), in S cm²/mol.
    private static double Moves(double diffusion, int charge) => 37.554 * diffusion * charge * charge;

    // Where the database has no coefficient for a pair, a middling one: pairs carry a few per cent of the current at most.
    private const double PairDiffusion = 0.5;

    public static BasicIon[] Basic { get; } =
    [
        new("K", 1, Constituent.Potassium, 73.48),
        new("NH4", 1, Constituent.AmmoniumNitrogen, 73.5),
        new("Na", 1, Constituent.Sodium, 50.08),
        new("Ca", 2, Constituent.Calcium, 118.94),
        new("Mg", 2, Constituent.Magnesium, 106.0),
        new("NO3", -1, Constituent.NitrateNitrogen, 71.42),
        new("Cl", -1, Constituent.Chloride, 76.31),
        new("SO4", -2, Constituent.Sulfur, 160.0),
        new("PO4", -3, Constituent.Phosphorus, Moves(0.612, 3)),
        new("CO3", -2, Constituent.InorganicCarbon, 138.6),
        new("Fe", 2, Constituent.Iron, 108.0),
        new("Mn", 2, Constituent.Manganese, 107.0),
        new("Zn", 2, Constituent.Zinc, 105.6),
        new("Cu", 2, Constituent.Copper, 107.2),
        new("B(OH)3", 0, Constituent.Boron, 0),
        new("MoO4", -2, Constituent.Molybdenum, 149.0),
        new("H4SiO4", 0, Constituent.Silicon, 0),
    ];

    public static Formation[] Formed { get; } =
    [
        Of("HPO4", ["PO4"], 1, 12.346, -3.530, 0.69),
        Of("H2PO4", ["PO4"], 2, 19.553, -4.520, 0.846),
        Of("H3PO4", ["PO4"], 3, 21.721, -10.1 / CalorieJoules),
        Of("HCO3", ["CO3"], 1, t => -CarbonateConstants.LogK2(t), 44.5),
        Of("CO2", ["CO3"], 2, t => -CarbonateConstants.LogK2(t) - CarbonateConstants.LogK1(t), 0),
        Of("HSO4", ["SO4"], 1, 1.988, 3.85, 1.33),
        Of("NH3", ["NH4"], -1, -9.252, 12.48),
        Of("B(OH)4", ["B(OH)3"], -1, -9.24, 3.224, 0.97),
        Of("H3SiO4", ["H4SiO4"], -1, -9.83, 6.12, 0.8),
        Of("CaSO4", ["Ca", "SO4"], 0, 2.25, 1.325),
        Of("MgSO4", ["Mg", "SO4"], 0, 2.37, 4.550),
        Of("KSO4", ["K", "SO4"], 0, 0.85, 2.250, 0.746),
        Of("NaSO4", ["Na", "SO4"], 0, 0.70, 1.120, 0.618),
        Of("NH4SO4", ["NH4", "SO4"], 0, 1.11, 0, 0.75),
        Of("FeSO4", ["Fe", "SO4"], 0, 2.25, 3.230),
        Of("MnSO4", ["Mn", "SO4"], 0, 2.25, 3.370),
        Of("ZnSO4", ["Zn", "SO4"], 0, 2.37, 1.360),
        Of("CuSO4", ["Cu", "SO4"], 0, 2.31, 1.220),
        Of("CaPO4", ["Ca", "PO4"], 0, 6.459, 3.10),
        Of("CaHPO4", ["Ca", "PO4"], 1, 2.739 + 12.346, 3.3 - 3.530),
        Of("CaH2PO4", ["Ca", "PO4"], 2, 1.408 + 19.553, 3.4 - 4.520),
        Of("MgPO4", ["Mg", "PO4"], 0, 6.589, 3.10),
        Of("MgHPO4", ["Mg", "PO4"], 1, 2.87 + 12.346, 3.3 - 3.530),
        Of("MgH2PO4", ["Mg", "PO4"], 2, 1.513 + 19.553, 3.4 - 4.520),
        Of("KHPO4", ["K", "PO4"], 1, 0.29 + 12.346, -3.530),
        Of("NaHPO4", ["Na", "PO4"], 1, 0.29 + 12.346, -3.530),
        Of("CaCO3", ["Ca", "CO3"], 0, 3.224, 3.545),
        Of("CaHCO3", ["Ca", "CO3"], 1, 11.435, -0.871, 0.506),
        Of("MgCO3", ["Mg", "CO3"], 0, 2.98, 2.713),
        Of("MgHCO3", ["Mg", "CO3"], 1, 11.399, -2.771, 0.478),
        Of("NaHCO3", ["Na", "CO3"], 1, -0.25 + 10.329, -1.0 - 3.561),
        Of("NaCO3", ["Na", "CO3"], 0, 1.27, 8.91, 0.585),
    ];

    /// <summary>By basic ion: the species it is in, and the partner it has there (-1 for none).</summary>
    public static (int Formed, int Partner)[][] Holding { get; } =
    [
        .. Basic.Select(
            (_, ion) =>
                Formed
                    .Select((made, index) => (made.Parts, index))
                    .Where(f => f.Parts.Contains(ion))
                    .Select(f =>
                        (
                            f.index,
                            f.Parts.Length < 2 ? -1
                            : f.Parts[0] == ion ? f.Parts[1]
                            : f.Parts[0]
                        )
                    )
                    .ToArray()
        ),
    ];

    /// <summary>Whether the basic ion takes two protons to become CO2 or H2PO4.</summary>
    public static bool TakesTwo(int basic) => basic is Carbonate or Phosphate;

    /// <summary>[S cm²/mol] Mobilities of the ions of water itself.</summary>
    public const double Hydrogen = 349.65;

    /// <summary>[S cm²/mol] The hydroxide ion's.</summary>
    public const double Hydroxide = 198.0;

    /// <summary>log of the ion product of water; phreeqc.dat.</summary>
    public static double LogWater(double kelvin) =>
        293.29227
        + (0.1360833 * kelvin)
        - (10576.913 / kelvin)
        - (123.73158 * Math.Log10(kelvin))
        - (6.996455e-5 * kelvin * kelvin);

    private static Formation Of(
        string formula,
        string[] parts,
        int protons,
        double logK,
        double kilocalories,
        double diffusion = PairDiffusion
    )
    {
        var slope = kilocalories * 1000 * CalorieJoules / (Gas * Math.Log(10));
        double LogK(double kelvin) => logK - (slope * ((1 / kelvin) - (1 / 298.15)));
        var made = Of(formula, parts, protons, LogK, 0);
        return made with { Mobility = Moves(diffusion, made.Charge) };
    }

    private static Formation Of(string formula, string[] parts, int protons, Func<double, double> logK, double mobility)
    {
        int[] indices = [.. parts.Select(p => Array.FindIndex(Basic, b => b.Formula == p))];
        var charge = protons + indices.Sum(i => Basic[i].Charge);
        return new Formation(formula, indices, protons, charge, logK, mobility);
    }
}
