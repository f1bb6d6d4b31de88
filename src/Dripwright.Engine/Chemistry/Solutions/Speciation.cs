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
    private readonly Species[] _species;

    private Speciation(
        Species[] species,
        double ph,
        double ionicStrength,
        double carbon,
        SolutionConditions surroundings
    )
    {
        this._species = species;
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
    public IReadOnlyList<Species> Species => _species;

    /// <summary>[mol/m³] Sum of charge times concentration: nought at the pH that the solution really has.</summary>
    public double Charge => _species.Sum(s => s.Charge * s.Concentration);

    /// <summary>
    /// [mol/m³ of charge, the same number as meq/L] Alkalinity: the acid it would take to turn all into CO2, H2PO4, NH4,
    /// boric and silicic acid and sulfate.
    /// </summary>
    public double Alkalinity
    {
        get
        {
            var basic = SpeciesTable.Basic.Length;
            var sum = _species[^1].Concentration - _species[^2].Concentration;
            for (var i = 0; i < _species.Length - 2; i++)
            {
                var held = i < basic ? (SpeciesTable.TakesTwo(i) ? 2 : 0) : SpeciesTable.Formed[i - basic].Held;
                sum += held * _species[i].Concentration;
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
        var made = Within(solution, ph, surroundings);
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
        var basic = SpeciesTable.Basic;
        for (var i = 0; i < _species.Length; i++)
        {
            var mobility =
                i < basic.Length
                    ? Chelate(i)
                        ? ChelateMobility
                        : basic[i].Mobility
                    : i < basic.Length + SpeciesTable.Formed.Length
                        ? SpeciesTable.Formed[i - basic.Length].Mobility
                        : _species[i].Charge > 0
                            ? SpeciesTable.Hydrogen
                            : SpeciesTable.Hydroxide;
            yield return (_species[i], mobility);
        }
    }

    private bool Chelate(int basic) => basic == SpeciesTable.Iron && SolutionConditions.Iron == IronForm.Chelated;

    private Species Find(string formula)
    {
        foreach (var one in _species)
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
        private readonly double[] _totals = new double[SpeciesTable.Basic.Length];
        private readonly double[] _free = new double[SpeciesTable.Basic.Length];
        private readonly double[] _constants = new double[SpeciesTable.Formed.Length];
        private readonly double[] _amounts = new double[SpeciesTable.Formed.Length];
        private readonly double[] _gamma = [1, 1, 1, 1];
        private readonly int[] _charges = new int[SpeciesTable.Basic.Length];
        private readonly Medium _medium;
        private readonly double _ph;
        private readonly double _water;
        private readonly double? _carbonate;
        private readonly SolutionConditions _surroundings;

        public Division(Composition solution, double ph, SolutionConditions surroundings)
        {
            this._ph = ph;
            this._surroundings = surroundings;
            _medium = new Medium(surroundings.Celsius);
            var kelvin = surroundings.Celsius + 273.15;
            for (var i = 0; i < _totals.Length; i++)
            {
                var ion = SpeciesTable.Basic[i];
                _totals[i] = Guard.NotNegative(solution[ion.Constituent], nameof(solution)) / 1000;
                _free[i] = _totals[i];
                _charges[i] = i == SpeciesTable.Iron && surroundings.Iron == IronForm.Chelated ? -1 : ion.Charge;
            }

            for (var j = 0; j < _constants.Length; j++)
            {
                var made = SpeciesTable.Formed[j];
                var inert = _charges[SpeciesTable.Iron] < 0 && made.Parts.Contains(SpeciesTable.Iron);
                _constants[j] = inert ? 0 : Math.Pow(10, made.LogK(kelvin) - (ph * made.Protons));
            }

            _water = SpeciesTable.LogWater(kelvin);
            if (surroundings.CarbonDioxide is { } pressure)
            {
                var gas = CarbonateConstants.LogHenry(kelvin) + Math.Log10(pressure / 101325);
                _carbonate = Math.Pow(
                    10,
                    gas + CarbonateConstants.LogK1(kelvin) + CarbonateConstants.LogK2(kelvin) + (2 * ph)
                );
            }
        }

        public Speciation Solve()
        {
            double strength = 0;
            for (var sweep = 0; sweep < MostSweeps; sweep++)
            {
                var davies = _medium.Davies(Math.Min(strength, HighestIonicStrength / 1000));
                for (var z = 1; z < _gamma.Length; z++)
                {
                    _gamma[z] = Math.Pow(10, z * z * davies);
                }

                var change = Share();
                var next = Strength();
                var shift = Math.Abs(next - strength);
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
            for (var i = 0; i < _free.Length; i++)
            {
                var before = _free[i];
                if (i == SpeciesTable.Carbonate && _carbonate is { } activity)
                {
                    _free[i] = activity / _gamma[2];
                }
                else if (_totals[i] > 0)
                {
                    double held = 1;
                    foreach ((var formed, var partner) in SpeciesTable.Holding[i])
                    {
                        held += Term(formed, i, partner);
                    }

                    _free[i] = _totals[i] / held;
                }

                most = Math.Max(most, _free[i] > 0 ? Math.Abs((_free[i] - before) / _free[i]) : 0);
            }

            return most;
        }

        private double Term(int formed, int ion, int partner)
        {
            var other = partner < 0 ? 1 : _free[partner] * Gamma(_charges[partner]);
            return _constants[formed] * Gamma(_charges[ion]) * other / Gamma(SpeciesTable.Formed[formed].Charge);
        }

        private double Strength()
        {
            var sum = Hydrogen + Hydroxide;
            for (var i = 0; i < _free.Length; i++)
            {
                sum += _charges[i] * _charges[i] * _free[i];
            }

            for (var j = 0; j < _amounts.Length; j++)
            {
                var made = SpeciesTable.Formed[j];
                var first = made.Parts[0];
                _amounts[j] = Term(j, first, made.Parts.Length > 1 ? made.Parts[1] : -1) * _free[first];
                sum += made.Charge * made.Charge * _amounts[j];
            }

            return sum / 2;
        }

        private double Hydrogen => Math.Pow(10, -_ph) / _gamma[1];

        private double Hydroxide => Math.Pow(10, _water + _ph) / _gamma[1];

        private double Gamma(int charge) => _gamma[Math.Abs(charge)];

        private Speciation Read(double strength)
        {
            var species = new Species[_free.Length + _amounts.Length + 2];
            double carbon = 0;
            for (var i = 0; i < _free.Length; i++)
            {
                species[i] = Make(SpeciesTable.Basic[i].Formula, _charges[i], _free[i]);
                carbon += i == SpeciesTable.Carbonate ? _free[i] : 0;
            }

            for (var j = 0; j < _amounts.Length; j++)
            {
                var made = SpeciesTable.Formed[j];
                species[_free.Length + j] = Make(made.Formula, made.Charge, _amounts[j]);
                carbon += made.Parts.Contains(SpeciesTable.Carbonate) ? _amounts[j] : 0;
            }

            species[^2] = Make("H", 1, Hydrogen);
            species[^1] = Make("OH", -1, Hydroxide);
            return new Speciation(species, _ph, strength * 1000, carbon * 1000, _surroundings);
        }

        private Species Make(string formula, int charge, double amount) =>
            new(formula, charge, amount * 1000, amount * Gamma(charge));
    }
}
