using Dripwright.Engine.Chemistry.Formulas;

namespace Dripwright.Engine.Chemistry.Solutions;

/// <summary>How strongly a solution conducts, from its ions: the main method, a second one beside it, and two rules.</summary>
/// <remarks>
/// The main method is <see cref="Of(Speciation)"/>, chosen by its error on measured and published values; the table is on
/// the method page, docs/methods/solution-ec.md
/// </remarks>
public static class Conductivity
{
    // One closest distance for all ions: 4 Å, a middling value of Robinson and Stokes's table.
    private const double ClosestApproach = 4e-8;

    /// <summary>EC of a solution whose ions are known, at the temperature of its surroundings, after Onsager.</summary>
    /// <remarks>
    /// κ = Σ c |z| (λ° - (B₁ λ° + B₂) √I/(1 + B a √I)) over the ions left free after pairing: B₁ is the drag of the ion's own
    /// cloud, B₂ the counter-flow of water, and the denominator (R. A. Robinson and R. H. Stokes, Electrolyte Solutions,
    /// 2nd ed., ch. 7, from memory) gives the ions a size. B₁ is Onsager's (1927) for two ions; here the second is the mean
    /// of all ions of the other sign, a shortening of Onsager and Fuoss's theory of mixtures. Within 0.5 % on potassium
    /// chloride from 0 to 35 °C and within 3.5 % on whole nutrient solutions, up to an ionic strength of 50 mol/m³.
    /// </remarks>
    /// <param name="solution">The divided solution.</param>
    /// <example>0.01 mol/L of potassium chloride at 25 °C gives 1.413 dS/m within 0.5 %.</example>
    public static Ec Of(Speciation solution)
    {
        ArgumentNullException.ThrowIfNull(solution);
        var celsius = solution.SolutionConditions.Celsius;
        var medium = new Medium(celsius);
        (Species Species, double Mobility)[] ions =
        [
            .. solution
                .Moving()
                .Where(m => m.Species.Charge != 0 && m.Species.Concentration > 0)
                .Select(m => (m.Species, m.Mobility * IonMobility.Against25(m.Species.Formula, celsius))),
        ];
        var cations = Crowd.Of(ions.Where(i => i.Species.Charge > 0));
        var anions = Crowd.Of(ions.Where(i => i.Species.Charge < 0));
        var root = Math.Sqrt(solution.IonicStrength / 1000);
        var cloud = root / (1 + (medium.InverseLength * ClosestApproach * root));
        double sum = 0;
        foreach ((var ion, var mobility) in ions)
        {
            var z = Math.Abs(ion.Charge);
            var own = mobility / z;
            var other = ion.Charge > 0 ? anions : cations;
            var product = z * other.Charge;
            var q =
                product / (z + other.Charge) * (own + other.Mobility) / ((z * other.Mobility) + (other.Charge * own));
            var slowed =
                own - (((medium.Relaxation * product * q / (1 + Math.Sqrt(q)) * own) + (medium.Drag * z)) * cloud);
            // In range no ion is slowed to a stop; past it (a search may try) it stands still rather than going backward.
            sum += ion.Concentration * z * Math.Max(0, slowed);
        }

        return Ec.FromMicrosiemens(sum);
    }

    /// <summary>EC of a solution by its composition and pH.</summary>
    /// <param name="solution">What is in it.</param>
    /// <param name="ph">[-] pH, 0 to 14; between 4 and 8 it hardly matters.</param>
    /// <param name="surroundings">What it stands in: temperature and air.</param>
    /// <exception cref="ArgumentOutOfRangeException">An amount is negative, the pH is outside 0 to 14, or the solution is
    /// too strong for the method.</exception>
    public static Ec Of(Composition solution, double ph, SolutionConditions surroundings) =>
        Of(Speciation.At(solution, ph, surroundings));

    /// <summary>EC after McCleskey, Nordstrom and Ryan, the second method.</summary>
    /// <remarks>
    /// κ = Σ k m, k = k°(t) - A(t) √I/(1 + B √I), I the whole ionic strength, on divided solutions. R. B. McCleskey,
    /// D. K. Nordstrom and J. N. Ryan, Geochim. Cosmochim. Acta 77, 2012, pp. 369-382; coefficients as transcribed in a
    /// public scientific code. It reads 0.7 to 1.2 % high on potassium chloride. Ions without coefficients are taken from
    /// the main method's mobilities with a common slope. 0 to 95 °C, ionic strength 0.4 to 700 mol/m³.
    /// </remarks>
    /// <param name="solution">The divided solution.</param>
    public static Ec McCleskey(Speciation solution)
    {
        ArgumentNullException.ThrowIfNull(solution);
        var celsius = solution.SolutionConditions.Celsius;
        var root = Math.Sqrt(solution.IonicStrength / 1000);
        double sum = 0;
        foreach ((var ion, var mobility) in solution.Moving())
        {
            var z = Math.Abs(ion.Charge);
            var molar =
                IonMobility.McCleskey(ion.Formula, celsius, root)
                ?? mobility * IonMobility.Against25(ion.Formula, celsius) * (1 - (0.9 * z * root / (1 + (1.5 * root))));
            sum += ion.Concentration * molar;
        }

        return Ec.FromMicrosiemens(sum);
    }

    /// <summary>The rule of thumb: a tenth of the cations in meq/L, at 25 °C.</summary>
    /// <remarks>Runs 6 to 13 % low below 25 meq/L. Common practice; stated in a plant-science answer of 2001 (madsci.org).</remarks>
    /// <param name="solution">What is in it.</param>
    public static Ec CationRule(Composition solution) => new(Charges.Cations(solution) / 10);

    /// <summary>The linear form, EC = 0.095 C + 0.19 with C the cations in meq/L, at 25 °C.</summary>
    /// <remarks>Sonneveld et al. 1999 (from memory). Made for nutrient solutions of 10 to 50 meq/L: it does not go to nought.</remarks>
    /// <param name="solution">What is in it.</param>
    public static Ec LinearRule(Composition solution) => new((0.095 * Charges.Cations(solution)) + 0.19);

    /// <summary>All ions of one sign as one mean ion.</summary>
    private readonly record struct Crowd(double Charge, double Mobility)
    {
        public static Crowd Of(IEnumerable<(Species Species, double Mobility)> ions)
        {
            double equivalents = 0;
            double squares = 0;
            double conductance = 0;
            foreach ((var ion, var mobility) in ions)
            {
                var z = Math.Abs(ion.Charge);
                equivalents += z * ion.Concentration;
                squares += z * z * ion.Concentration;
                conductance += mobility * ion.Concentration;
            }

            return new Crowd(squares / equivalents, conductance / equivalents);
        }
    }
}
