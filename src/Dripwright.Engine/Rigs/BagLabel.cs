using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Rigs;

/// <summary>What a bag brings, by its label.</summary>
/// <remarks>
/// A label is neutral, but seldom whole. Nitrogen of which no form is stated is nitrate, and ammonium as far as that closes the
/// charges: of 15.5 % N beside 19 % Ca it is 1.1 %, as such labels have it. Cations that still lack a partner stand with sulfate
/// (as in a target without sulfate); anions that do are acid. Urea is left out: roots take little of it before bacteria have
/// broken it down. Method page: docs/methods/bags.md
/// </remarks>
internal static class BagLabel
{
    // [-] Labels are rounded up here and there.
    private const double Rounding = 0.002;

    // [-] Of the anions; less is a rounded label, and would be weighed by the spade for its acid.
    private const double LeastAcid = 0.1;

    /// <summary>The bag as a salt of the recipe.</summary>
    /// <param name="bag">The bag.</param>
    /// <param name="number">Its place in the list, from 1.</param>
    public static Salt Salt(NutrientBag bag, int number)
    {
        var brings = Brings(bag);
        var (cations, anions) = (Charges.Cations(brings), Charges.Anions(brings));
        return new Salt
        {
            Key = Invariant($"bag-{number}"),
            Name = bag.Name.Length > 0 ? bag.Name : Invariant($"bag {number}"),
            Kind = SaltKind.Salt,
            IsBag = true,
            UreaNitrogen = bag.UreaN ?? 0,
            Brings = brings,
            AcidEquivalents = anions - cations > LeastAcid * anions ? anions - cations : 0,
            Density = bag.MassOfLitre * 1000,
            Part = SaltRow.Natural(brings),
            LoosePrice = bag.PricePerKg,
            Source = "the bag's label",
            Sure = Sureness.Published,
        };
    }

    /// <summary>What cannot stand on a label; null where all can.</summary>
    /// <param name="bag">The bag.</param>
    public static Phrase? Fault(NutrientBag bag)
    {
        var forms = (bag.NitrateN ?? 0) + (bag.AmmoniumN ?? 0) + (bag.UreaN ?? 0);
        var twice = new[] { (bag.Ca, bag.Cao), (bag.Mg, bag.Mgo), (bag.S, bag.So3) }.Any(one =>
            one is { Item1: not null, Item2: not null }
        );
        return bag.N is { } all && forms > all + Rounding ? Phrase.Of("fault.bag.nitrogen")
            : twice ? Phrase.Of("fault.bag.twice")
            : Forms(bag).Sum(line => line.Percent) > 100 ? Phrase.Of("fault.bag.over")
            : forms <= 0 && bag.N is not > 0 && !Forms(bag).Any() ? Phrase.Of("fault.bag.empty")
            : null;
    }

    private static Composition Brings(NutrientBag bag)
    {
        var brings = LabelForms.Composition(Forms(bag));
        var stated = bag.NitrateN ?? 0;
        var others = (bag.AmmoniumN ?? 0) + (bag.UreaN ?? 0);
        var unstated = Math.Max(0, (bag.N ?? 0) - stated - others) / AtomicMasses.Of("N");
        var nitrate = brings[Constituent.NitrateNitrogen] + unstated;
        brings = brings.With(Constituent.NitrateNitrogen, nitrate);
        var lacking = Charges.Anions(brings) - Charges.Cations(brings);
        if (bag.AmmoniumN is null && lacking > 0)
        {
            var ammonium = Math.Min(unstated, lacking / 2);
            brings = brings
                .With(Constituent.NitrateNitrogen, nitrate - ammonium)
                .With(Constituent.AmmoniumNitrogen, ammonium);
        }

        var open = Charges.Cations(brings) - Charges.Anions(brings);
        return open > 0 ? brings.With(Constituent.Sulfur, brings[Constituent.Sulfur] + (open / 2)) : brings;
    }

    private static IEnumerable<(string Name, double Percent)> Forms(NutrientBag bag) =>
        new (string Name, double? Share)[]
        {
            ("nitrateN", bag.NitrateN),
            ("ammoniumN", bag.AmmoniumN),
            ("p2o5", bag.P2o5),
            ("k2o", bag.K2o),
            ("ca", bag.Ca),
            ("cao", bag.Cao),
            ("mg", bag.Mg),
            ("mgo", bag.Mgo),
            ("s", bag.S),
            ("so3", bag.So3),
            ("cl", bag.Cl),
            ("fe", bag.Fe),
            ("mn", bag.Mn),
            ("zn", bag.Zn),
            ("cu", bag.Cu),
            ("b", bag.B),
            ("mo", bag.Mo),
        }
            .Where(line => line.Share is > 0)
            .Select(line => (line.Name, line.Share!.Value * 100));

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);
}
