using Dripwright.Engine.Catalogue.Targets;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Chemistry.Solutions;
using Dripwright.Engine.Chemistry.Waters;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Nutrients.Planning;

/// <summary>What the feed shall hold and how strong it shall be: the target of crop and stage with the grower's own amounts in it.</summary>
/// <param name="Target">The amounts.</param>
/// <param name="Strength">The EC wanted.</param>
/// <param name="Factor">[-] How much stronger than the amounts, about.</param>
/// <param name="IsFixed">True where the grower's own amounts say how strong it is.</param>
/// <param name="Source">Where the amounts come from.</param>
internal sealed record WantedNutrients(NutrientTarget Target, Ec Strength, double Factor, bool IsFixed, Phrase Source)
{
    /// <summary>What a rig asks for.</summary>
    /// <param name="mix">The rig's nutrients section.</param>
    /// <param name="asked">What it means.</param>
    /// <param name="water">What is filled in.</param>
    public static WantedNutrients Of(NutrientMix mix, ResolvedNutrients asked, WaterSupply water)
    {
        var whole = asked.Target;
        var ph = asked.PH;
        var usual = new Ec(asked.Stage.Conductivity * 10);
        var own = NutrientChecks.Wanted(mix.Wanted).ToList();
        if (own.Count > 0)
        {
            // What is left out keeps the amount that the plan shows without own amounts.
            whole = With(whole.Times(Reaching(whole, water, usual, ph)), own);
        }

        var source = own.Count > 0 ? Phrase.Of("nutrients.source.own", whole.Source) : Phrase.Plain(whole.Source);
        if (own.Count > 0 && mix.Strength is null)
        {
            return new WantedNutrients(whole, Reads(whole.Complete, water, ph), 1, true, source);
        }

        var strength = mix.Strength is { } wished ? new Ec(wished * 10) : usual;
        return new WantedNutrients(whole, strength, Reaching(whole, water, strength, ph), false, source);
    }

    private static NutrientTarget With(NutrientTarget target, List<(Constituent Constituent, double Amount)> own)
    {
        var wanted = target.Wanted.ToDictionary();
        foreach (var (constituent, amount) in own)
        {
            wanted[constituent] = amount;
        }

        return target with
        {
            Wanted = wanted,
            // Who says ammonium says nitrate and ammonium apart.
            NitrogenIsSum = target.NitrogenIsSum && !own.Any(one => one.Constituent == Constituent.AmmoniumNitrogen),
        };
    }

    /// <summary>The EC of a target in a water that may have more of some ions than it asks for.</summary>
    private static Ec Reads(Composition target, WaterSupply water, double ph) =>
        NutrientPlanner.EcOf(
            Composition.Of(
                Composition
                    .Constituents.Where(one => one != Constituent.InorganicCarbon)
                    .Select(one => (one, Math.Max(target[one], water.Composition[one])))
            ),
            ph
        );

    /// <summary>[-] How many times the target reads an EC.</summary>
    private static double Reaching(NutrientTarget whole, WaterSupply water, Ec wanted, double ph)
    {
        var (low, high) = (0.1, 5.0);
        for (var i = 0; i < 30; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = Reads(whole.Times(middle).Complete, water, ph) < wanted ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }
}
