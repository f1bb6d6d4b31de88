using Dripwright.Engine.Chemistry.Formulas;

namespace Dripwright.Engine.Chemistry.Solutions;

/// <summary>A solution divided among its ions, molecules and ion pairs at a given pH.</summary>
/// <remarks>
/// Mass action with activities after Davies (log γ = -A z² (√I/(1+√I) - 0.3 I), A. C. Davies, Ion Association, 1962, from
/// memory), constants as in the table of species, and the whole of each constituent accounted for. Carbon is either kept
/// (closed) or set by the air above (open). EDTA and the other chelating agents are left out: a chelated metal is one ion
/// that does nothing. Holds up to an ionic strength of 500 mol/m³. Method page: docs/methods/solution-ph.md
/// </remarks>
public sealed class Speciation
{
    /// <summary>[mol/m³] Ionic strength up to which the activities may be used.</summary>
    public const double HighestIonicStrength = 500;

    private const int MostSweeps = 2000;
    private const double ChelateMobility = 30;
    private readonly Species[] species;

    private Speciation(
        Species[] species,
        double ph,
        double ionicStrength,
        double carbon,
        SolutionConditions surroundings
    )
    {
        this.species = species;
        PH = ph;
        IonicStrength = ionicStrength;
        InorganicCarbon = carbon;
        SolutionConditions = surroundings;
    }

    /// <summary>[-] The pH it was divided at: minus the logarithm of the activity of hydrogen ions.</summary>
    public double PH { get; }

    /// <summary>[mol/m³] Ionic strength, ion pairs counted as what they are.</summary>
    public double IonicStrength { get; }

    /// <summary>[mol/m³] Inorganic carbon in all forms: what was given when closed, what the air allows when open.</summary>
    public double InorganicCarbon { get; }

    /// <summary>What the solution stands in.</summary>
    public SolutionConditions SolutionConditions { get; }

    /// <summary>All species, in a fixed order, hydrogen and hydroxide last.</summary>
    public IReadOnlyList<Species> Species => species;

    /// <summary>[mol/m³] Sum of charge times concentration: nought at the pH that the solution really has.</summary>
    public double Charge => species.Sum(s => s.Charge * s.Concentration);

    /// <summary>
    /// [mol/m³ of charge, the same number as meq/L] Alkalinity: the acid it would take to turn all into CO2, H2PO4, NH4,
    /// boric and silicic acid and sulfate.
    /// </summary>
    public double Alkalinity
    {
        get
        {
            int basic = SpeciesTable.Basic.Length;
            double sum = species[^1].Concentration - species[^2].Concentration;
            for (int i = 0; i < species.Length - 2; i++)
            {
                int held = i < basic ? (SpeciesTable.TakesTwo(i) ? 2 : 0) : SpeciesTable.Formed[i - basic].Held;
                sum += held * species[i].Concentration;
            }

            return sum;
        }
    }

    /// <summary>[mol/m³] Concentration of one species by its formula without charge, such as <c>CaSO4</c>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No species has that formula.</exception>
    public double Concentration(string formula) => Find(formula).Concentration;

    /// <summary>[-] Activity of one species by its formula without charge, on the scale of mol/L.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No species has that formula.</exception>
    public double Activity(string formula) => Find(formula).Activity;

    /// <summary>Divides a solution at a pH.</summary>
    /// <param name="solution">What is in it; nothing negative.</param>
    /// <param name="ph">[-] pH, 0 to 14.</param>
    /// <param name="surroundings">What it stands in.</param>
    /// <exception cref="ArgumentOutOfRangeException">An amount is negative, the pH is outside 0 to 14, or the solution is
    /// stronger than the activities hold for.</exception>
    public static Speciation At(Composition solution, double ph, SolutionConditions surroundings)
    {
        Speciation made = Within(solution, ph, surroundings);
        if (made.IonicStrength > HighestIonicStrength)
        {
            throw new ArgumentOutOfRangeException(
                nameof(solution),
                made.IonicStrength,
                "The ionic strength is above 500 mol/m³, too strong for these activities."
            );
        }

        return made;
    }

    /// <summary>
    /// The same for any pH a search may try. Activities are then held at the end of their range, which keeps the charge
    /// falling with pH; what is handed out is checked by the caller.
    /// </summary>
    internal static Speciation Within(Composition solution, double ph, SolutionConditions surroundings)
    {
        ArgumentNullException.ThrowIfNull(solution);
        ArgumentNullException.ThrowIfNull(surroundings);
        Guard.Between(ph, 0, 14);
        return new Division(solution, ph, surroundings).Solve();
    }

    /// <summary>[S cm²/mol] Molar conductivity at infinite dilution and 25 °C, species by species.</summary>
    internal IEnumerable<(Species Species, double Mobility)> Moving()
    {
        BasicIon[] basic = SpeciesTable.Basic;
        for (int i = 0; i < species.Length; i++)
        {
            double mobility =
                i < basic.Length
                    ? Chelate(i)
                        ? ChelateMobility
                        : basic[i].Mobility
                    : i < basic.Length + SpeciesTable.Formed.Length
                        ? SpeciesTable.Formed[i - basic.Length].Mobility
                        : species[i].Charge > 0
                            ? SpeciesTable.Hydrogen
                            : SpeciesTable.Hydroxide;
            yield return (species[i], mobility);
        }
    }

    private bool Chelate(int basic) => basic == SpeciesTable.Iron && SolutionConditions.Iron == IronForm.Chelated;

    private Species Find(string formula)
    {
        foreach (Species one in species)
        {
            if (one.Formula == formula)
            {
                return one;
            }
        }

        throw new ArgumentOutOfRangeException(nameof(formula), formula, "No species has this formula.");
    }

    /// <summary>
    /// The sharing out. Every species holds at most one of each basic ion, so a basic ion's free part follows in one step
    /// from the others'; going round settles quickly and cannot leave the range from nought to the total.
    /// </summary>
    private sealed class Division
    {
        private readonly double[] totals = new double[SpeciesTable.Basic.Length];
        private readonly double[] free = new double[SpeciesTable.Basic.Length];
        private readonly double[] constants = new double[SpeciesTable.Formed.Length];
        private readonly double[] amounts = new double[SpeciesTable.Formed.Length];
        private readonly double[] gamma = [1, 1, 1, 1];
        private readonly int[] charges = new int[SpeciesTable.Basic.Length];
        private readonly Medium medium;
        private readonly double ph;
        private readonly double water;
        private readonly double? carbonate;
        private readonly SolutionConditions surroundings;

        public Division(Composition solution, double ph, SolutionConditions surroundings)
        {
            this.ph = ph;
            this.surroundings = surroundings;
            medium = new Medium(surroundings.Celsius);
            double kelvin = surroundings.Celsius + 273.15;
            for (int i = 0; i < totals.Length; i++)
            {
                BasicIon ion = SpeciesTable.Basic[i];
                totals[i] = Guard.NotNegative(solution[ion.Constituent], nameof(solution)) / 1000;
                free[i] = totals[i];
                charges[i] = i == SpeciesTable.Iron && surroundings.Iron == IronForm.Chelated ? -1 : ion.Charge;
            }

            for (int j = 0; j < constants.Length; j++)
            {
                Formation made = SpeciesTable.Formed[j];
                bool inert = charges[SpeciesTable.Iron] < 0 && made.Parts.Contains(SpeciesTable.Iron);
                constants[j] = inert ? 0 : Math.Pow(10, made.LogK(kelvin) - (ph * made.Protons));
            }

            water = SpeciesTable.LogWater(kelvin);
            if (surroundings.CarbonDioxide is { } pressure)
            {
                double gas = CarbonateConstants.LogHenry(kelvin) + Math.Log10(pressure / 101325);
                carbonate = Math.Pow(
                    10,
                    gas + CarbonateConstants.LogK1(kelvin) + CarbonateConstants.LogK2(kelvin) + (2 * ph)
                );
            }
        }

        public Speciation Solve()
        {
            double strength = 0;
            for (int sweep = 0; sweep < MostSweeps; sweep++)
            {
                double davies = medium.Davies(Math.Min(strength, HighestIonicStrength / 1000));
                for (int z = 1; z < gamma.Length; z++)
                {
                    gamma[z] = Math.Pow(10, z * z * davies);
                }

                double change = Share();
                double next = Strength();
                double shift = Math.Abs(next - strength);
                strength = next;
                if (change < 1e-13 && shift < 1e-13 * strength)
                {
                    break;
                }
            }

            return Read(strength);
        }

        private double Share()
        {
            double most = 0;
            for (int i = 0; i < free.Length; i++)
            {
                double before = free[i];
                if (i == SpeciesTable.Carbonate && carbonate is { } activity)
                {
                    free[i] = activity / gamma[2];
                }
                else if (totals[i] > 0)
                {
                    double held = 1;
                    foreach ((int formed, int partner) in SpeciesTable.Holding[i])
                    {
                        held += Term(formed, i, partner);
                    }

                    free[i] = totals[i] / held;
                }

                most = Math.Max(most, free[i] > 0 ? Math.Abs((free[i] - before) / free[i]) : 0);
            }

            return most;
        }

        private double Term(int formed, int ion, int partner)
        {
            double other = partner < 0 ? 1 : free[partner] * Gamma(charges[partner]);
            return constants[formed] * Gamma(charges[ion]) * other / Gamma(SpeciesTable.Formed[formed].Charge);
        }

        private double Strength()
        {
            double sum = Hydrogen + Hydroxide;
            for (int i = 0; i < free.Length; i++)
            {
                sum += charges[i] * charges[i] * free[i];
            }

            for (int j = 0; j < amounts.Length; j++)
            {
                Formation made = SpeciesTable.Formed[j];
                int first = made.Parts[0];
                amounts[j] = Term(j, first, made.Parts.Length > 1 ? made.Parts[1] : -1) * free[first];
                sum += made.Charge * made.Charge * amounts[j];
            }

            return sum / 2;
        }

        private double Hydrogen => Math.Pow(10, -ph) / gamma[1];

        private double Hydroxide => Math.Pow(10, water + ph) / gamma[1];

        private double Gamma(int charge) => gamma[Math.Abs(charge)];

        private Speciation Read(double strength)
        {
            var species = new Species[free.Length + amounts.Length + 2];
            double carbon = 0;
            for (int i = 0; i < free.Length; i++)
            {
                species[i] = Make(SpeciesTable.Basic[i].Formula, charges[i], free[i]);
                carbon += i == SpeciesTable.Carbonate ? free[i] : 0;
            }

            for (int j = 0; j < amounts.Length; j++)
            {
                Formation made = SpeciesTable.Formed[j];
                species[free.Length + j] = Make(made.Formula, made.Charge, amounts[j]);
                carbon += made.Parts.Contains(SpeciesTable.Carbonate) ? amounts[j] : 0;
            }

            species[^2] = Make("H", 1, Hydrogen);
            species[^1] = Make("OH", -1, Hydroxide);
            return new Speciation(species, ph, strength * 1000, carbon * 1000, surroundings);
        }

        private Species Make(string formula, int charge, double amount) =>
            new(formula, charge, amount * 1000, amount * Gamma(charge));
    }
}
