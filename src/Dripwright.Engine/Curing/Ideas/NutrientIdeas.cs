using Dripwright.Engine.Findings;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Curing.Ideas;

/// <summary>What a grower changes at the recipe, its water and how it is mixed.</summary>
internal static class NutrientIdeas
{
    /// <summary>More of the water from rain or a reverse-osmosis filter.</summary>
    public static IEnumerable<Cure> PurerWater(Asked asked) =>
        new[] { 0.25, 0.5, 0.75, 1 }
            .Where(s => s > asked.Rig.Nutrients.PureShare + 0.01)
            .Select(s => Cure.Of([Set.Share("nutrients.pureShare", s)]));

    /// <summary>Less of it.</summary>
    public static IEnumerable<Cure> HarderWater(Asked asked) =>
        new[] { 0.75, 0.5, 0.25, 0 }
            .Where(s => s < asked.Rig.Nutrients.PureShare - 0.01)
            .Select(s => Cure.Of([Set.Share("nutrients.pureShare", s)]));

    /// <summary>Another acid, or one where there is none.</summary>
    public static IEnumerable<Cure> OtherAcid(Asked asked) =>
        new[] { "nitric-acid-38", "phosphoric-acid-85", "none" }
            .Where(a => a != asked.Rig.Nutrients.Acid)
            .Select(a => Cure.Of([Set.To("nutrients.acid", a)]));

    /// <summary>The usual salts.</summary>
    public static IEnumerable<Cure> UsualSalts(Asked asked) =>
        asked.Rig.Nutrients.Salts is null ? [] : [Cure.Of([Set.Out("nutrients.salts")])];

    /// <summary>The usual salts with an acid or with purer water.</summary>
    public static IEnumerable<Cure> UsualSaltsWith(Asked asked) =>
        UsualSalts(asked)
            .SelectMany(salts =>
                OtherAcid(asked).Concat(PurerWater(asked)).Select(more => Cure.Of([.. salts.Changes, .. more.Changes]))
            );

    /// <summary>Purer water with an acid or without.</summary>
    public static IEnumerable<Cure> PurerWithAcid(Asked asked) =>
        PurerWater(asked)
            .Reverse()
            .SelectMany(water => OtherAcid(asked).Select(acid => Cure.Of([.. water.Changes, .. acid.Changes])));

    /// <summary>The crop's usual target, without amounts of one's own.</summary>
    public static IEnumerable<Cure> UsualTarget(Asked asked)
    {
        List<FieldChange> changes = [];
        if (asked.Rig.Nutrients.Target != "usual")
        {
            changes.Add(Set.To("nutrients.target", "usual"));
        }

        if (asked.Rig.Nutrients.Wanted != new NutrientWanted())
        {
            changes.Add(Set.Out("nutrients.wanted"));
        }

        if (changes.Count > 0)
        {
            yield return Cure.Of(changes);
        }

        if (asked.Rig.Nutrients.Strength is not null)
        {
            yield return Cure.Of([.. changes, Set.Out("nutrients.strength")]);
        }
    }

    /// <summary>Another strength.</summary>
    public static IEnumerable<Cure> OtherStrength(Asked asked) =>
        new[] { "2 dS/m", "2.5 dS/m", "1.6 dS/m", "3 dS/m", "1.2 dS/m" }.Select(ec =>
            Cure.Of([Set.To("nutrients.strength", ec)])
        );

    /// <summary>Mixed into stock tanks first: what is weighed is more.</summary>
    public static IEnumerable<Cure> StockTanks(Asked asked) =>
        asked.Rig.Nutrients.Mixing == NutrientMixing.Cans ? [] : [Cure.Of([Set.To("nutrients.mixing", "cans")])];

    /// <summary>Weighed straight into the reservoir.</summary>
    public static IEnumerable<Cure> StraightIn(Asked asked) =>
        asked.Rig.Nutrients.Mixing == NutrientMixing.Tank ? [] : [Cure.Of([Set.To("nutrients.mixing", "tank")])];

    /// <summary>Thinner stock: fewer parts of solution from one of stock.</summary>
    public static IEnumerable<Cure> ThinnerStock(Asked asked) =>
        new[] { 200, 150, 100, 75, 50, 30, 20, 10 }
            .Where(p => p < asked.Rig.Nutrients.PartsOfFeed)
            .SelectMany(p => Set.Cure(Set.Whole("nutrients.partsOfFeed", p)));

    /// <summary>A store that is not so cold.</summary>
    public static IEnumerable<Cure> WarmerStore(Asked asked) =>
        asked.Rig.Nutrients.StoreTemperature < 293 ? [Cure.Of([Set.To("nutrients.storeTemperature", "20 °C")])] : [];

    /// <summary>A finer scale.</summary>
    public static IEnumerable<Cure> FinerScale(Asked asked) =>
        new[] { (1e-3, "1 g"), (1e-4, "0.1 g"), (1e-5, "0.01 g"), (1e-6, "0.001 g") }
            .Where(s => s.Item1 < asked.Rig.Nutrients.ScaleStep - 1e-9)
            .Select(s => Cure.Of([Set.To("nutrients.scaleStep", s.Item2)]));

    /// <summary>Another pH of the solution.</summary>
    public static IEnumerable<Cure> OtherPh(Asked asked) =>
        new[] { 5.8, 5.5, 6.0, 6.2 }
            .Where(ph => Math.Abs(ph - asked.Rig.Nutrients.Ph) > 0.05)
            .Select(ph => Cure.Of([new FieldChange("nutrients.ph", Units.QuantityWords.Number(ph, "0.0#"))]));
}
