using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Chemistry.Waters;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Nutrients.Planning;

/// <summary>What is to be said of the salts, bags and the recipe that a grower chose.</summary>
internal static class SaltFindings
{
    private const double MostBare = 0.5;
    private const string Chelate = "fe-dtpa-11";

    public static IEnumerable<Finding> Of(Rig rig, NutrientPlan plan) =>
        Urea(plan).Concat(new[] { BareIron(rig, plan), RunToWaste(rig, plan) }.OfType<Finding>());

    private static IEnumerable<Finding> Urea(NutrientPlan plan)
    {
        var limit = RuleBook.Limit("bag-urea");
        foreach (var bag in plan.Recipe.Job.Salts.Select(hand => hand.Salt).Where(salt => salt.UreaNitrogen > 0))
        {
            var counted =
                bag.MassFraction(Constituent.NitrateNitrogen) + bag.MassFraction(Constituent.AmmoniumNitrogen);
            var share = bag.UreaNitrogen / (bag.UreaNitrogen + counted);
            if (share > limit)
            {
                yield return Judged.By(
                    "bag-urea",
                    new Place(Phrase.Plain(bag.Name)),
                    [NutrientPaths.Bags],
                    Phrase.Of("finding.bag-urea.what"),
                    Phrase.Of("finding.bag-urea.value", Measured.Percent(share)),
                    Limit.AtMost(Measured.Percent(limit)),
                    Phrase.Of("finding.bag-urea.remedy")
                );
            }
        }
    }

    private static Finding? BareIron(Rig rig, NutrientPlan plan)
    {
        double Iron(Func<Salt, bool> which) =>
            plan
                .Recipe.Lines.Where(line => which(line.Salt))
                .Sum(line => line.Salt.Brings[Constituent.Iron] * line.Concentration);
        var all = Iron(_ => true);
        var bare = Iron(salt => salt.Kind != SaltKind.Chelate && !salt.IsBag);
        return all <= 0 || bare / all <= MostBare
            ? null
            : Judged.By(
                "recipe-iron-bare",
                Place.Of("place.nutrients"),
                [NutrientPaths.Salts],
                Phrase.Of("finding.recipe-iron-bare.what"),
                Phrase.Of("finding.recipe-iron-bare.value", Measured.Percent(bare / all)),
                Phrase.Of("finding.recipe-iron-bare.limit"),
                Phrase.Of("finding.recipe-iron-bare.remedy"),
                NutrientCures.InPlaceOf(
                    rig,
                    [.. plan.Recipe.Lines.Where(IsBareIron).Select(line => line.Salt.Key)],
                    Chelate,
                    Phrase.Of("nutrients.cure.chelate")
                )
            );

        static bool IsBareIron(Recipe.RecipeLine line) =>
            line.Salt is { IsBag: false, Kind: not SaltKind.Chelate } && line.Salt.Brings[Constituent.Iron] > 0;
    }

    // What runs back is used again: an element that is fed in a greater share than it is taken up piles up.
    private static Finding? RunToWaste(Rig rig, NutrientPlan plan)
    {
        if (plan.Crop.LoopTarget is not { } better || rig.Nutrients.Target is "usual" || rig.Nutrients.Target == better)
        {
            return null;
        }

        var limit = RuleBook.Limit("loop-run-to-waste");
        var fed = plan.Recipe.Job.Target.Complete;
        var taken = plan.LoopTarget.Complete;
        var worst = NutrientWords
            .Main.Where(one => taken[one] > 0)
            .Select(one => (one, Times: fed[one] / Charges.Cations(fed) / (taken[one] / Charges.Cations(taken))))
            .MaxBy(one => one.Times);
        return worst.Times <= limit
            ? null
            : Judged.By(
                "loop-run-to-waste",
                Place.Reservoir,
                [NutrientPaths.Target],
                Phrase.Of("finding.loop-run-to-waste.what", Elements.Name(worst.one)),
                Phrase.Of("finding.loop-run-to-waste.value", Measured.Number(worst.Times)),
                Phrase.Of("finding.loop-run-to-waste.limit", Measured.Number(limit)),
                Phrase.Of("finding.loop-run-to-waste.remedy"),
                new Cure(
                    [new FieldChange(NutrientPaths.Target, $"\"{better}\"")],
                    [Phrase.Of("nutrients.cure.loop-target")]
                )
            );
    }
}
