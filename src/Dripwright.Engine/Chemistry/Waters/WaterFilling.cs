using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Chemistry.Waters;

/// <summary>Fills in what an analysis leaves out, but only what follows from the rest.</summary>
internal sealed class WaterFilling(WaterAnalysis analysis)
{
    // At 25 °C, L. N. Plummer and E. Busenberg, Geochim. Cosmochim. Acta 46 (1982).
    private const double CarbonicPK1 = 6.352;
    private const double CarbonicPK2 = 10.329;
    private const double WaterPK = 14.0;

    /// <summary>[-] Share of a water's hardness that is calcium where nobody has measured it.</summary>
    /// <remarks>Common practice: two thirds; natural waters have half to five sixths.</remarks>
    internal const double CalciumOfHardness = 2.0 / 3;

    // [mol/m³ of charge] and share of the alkalinity: less is within what kits read.
    private const double LeastSoftened = 0.5;
    private const double SoftenedShare = 0.25;

    private static readonly Phrase s_alkalinity = Phrase.Of("water.alkalinity");

    private static readonly Constituent[] s_main =
    [
        Constituent.Calcium,
        Constituent.Magnesium,
        Constituent.Sodium,
        Constituent.Chloride,
        Constituent.Sulfur,
    ];

    private readonly Dictionary<Constituent, double> _amounts = new(analysis.Measured);

    public List<WaterCompletion> Completions { get; } = [];

    public double? Alkalinity { get; private set; } = analysis.Alkalinity;

    public bool HardnessUnsplit { get; private set; }

    public Composition Composition { get; private set; } = Composition.Nothing;

    public ChargeBalance Balance { get; private set; } = new(0, 0, false, []);

    public void Fill()
    {
        Split();
        Close();
        Carbon();
        Composition = Composition.Of(_amounts.Select(pair => (pair.Key, pair.Value)));
        Balance = Sum();
    }

    private void Split()
    {
        if (analysis.Hardness is not { } hardness)
        {
            return;
        }
        var calcium = _amounts.TryGetValue(Constituent.Calcium, out var ca);
        var magnesium = _amounts.TryGetValue(Constituent.Magnesium, out var mg);
        if (calcium && !magnesium)
        {
            Add(Constituent.Magnesium, Math.Max(0, hardness - ca), "water.follows.hardness-less-calcium");
        }
        else if (magnesium && !calcium)
        {
            Add(Constituent.Calcium, Math.Max(0, hardness - mg), "water.follows.hardness-less-magnesium");
        }
        else if (!calcium && !magnesium)
        {
            // Both carry two charges: the pH does not hang on the split, and the food hangs on it little.
            HardnessUnsplit = hardness > 0;
            var why = HardnessUnsplit ? "water.follows.hardness-by-ratio" : "water.follows.no-hardness";
            Add(Constituent.Calcium, CalciumOfHardness * hardness, why);
            Add(Constituent.Magnesium, (1 - CalciumOfHardness) * hardness, why);
        }
    }

    // One ion that is missing follows from the charges; two do not.
    private void Close()
    {
        Partner();
        var balance = Sum();
        if (balance.Missing.Count != 1)
        {
            return;
        }
        const string Why = "water.follows.charges";
        if (Alkalinity is null)
        {
            if (balance.Gap >= 0)
            {
                Alkalinity = balance.Gap;
                Completions.Add(new(s_alkalinity, balance.Gap, Phrase.Of(Why)));
            }
            return;
        }
        var ion = Array.Find(s_main, main => !_amounts.ContainsKey(main));
        var amount = -balance.Gap / Charges.Of(ion);
        if (amount >= 0)
        {
            Add(ion, amount, Why);
        }
    }

    // What bicarbonate has neither calcium nor magnesium for stands with sodium: mostly a softener's.
    private void Partner()
    {
        var known = new[] { Constituent.Calcium, Constituent.Magnesium }.All(_amounts.ContainsKey);
        if (!known || _amounts.ContainsKey(Constituent.Sodium) || Alkalinity is not { } alkalinity)
        {
            return;
        }
        var balance = Sum();
        if (alkalinity - balance.Cations > Math.Max(LeastSoftened, SoftenedShare * alkalinity))
        {
            Add(Constituent.Sodium, -balance.Gap, "water.follows.softened");
        }
    }

    private void Carbon()
    {
        if (_amounts.ContainsKey(Constituent.InorganicCarbon) || Alkalinity is not > 0)
        {
            return;
        }
        var alkalinity = Alkalinity.Value;
        if (analysis.PH is { } ph)
        {
            var first = Math.Pow(10, ph - CarbonicPK1);
            var second = first * Math.Pow(10, ph - CarbonicPK2);
            var whole = 1 + first + second;
            // mol/m³: hydroxide and hydrogen ions carry a part of the alkalinity at high pH.
            var water = 1000 * (Math.Pow(10, ph - WaterPK) - Math.Pow(10, -ph));
            var carbon = (alkalinity - water) * whole / (first + 2 * second);
            if (carbon > 0)
            {
                Add(Constituent.InorganicCarbon, carbon, "water.follows.alkalinity-and-ph");
            }
        }
        else
        {
            Add(Constituent.InorganicCarbon, alkalinity, "water.follows.alkalinity");
        }
    }

    private void Add(Constituent ion, double amount, string why)
    {
        _amounts[ion] = amount;
        Completions.Add(new(NameOf(ion), amount, Phrase.Of(why)));
    }

    // Carbon of a water is more than its bicarbonate; sulfur in a water is sulfate.
    private static Phrase NameOf(Constituent ion) =>
        ion == Constituent.InorganicCarbon ? Elements.Name(ion) : Elements.Ion(ion);

    private ChargeBalance Sum()
    {
        var composition = Composition.Of(_amounts.Select(pair => (pair.Key, pair.Value)));
        List<Phrase> missing = [.. s_main.Where(main => !_amounts.ContainsKey(main)).Select(NameOf)];
        if (Alkalinity is null)
        {
            missing.Add(s_alkalinity);
        }
        var cations = Charges.Cations(composition);
        var anions = Charges.Anions(composition) + (Alkalinity ?? 0);
        return new ChargeBalance(cations, anions, missing.Count == 0, missing);
    }
}
