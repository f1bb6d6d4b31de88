using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Catalogue.Targets;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Chemistry.Solutions;
using Dripwright.Engine.Chemistry.Waters;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Nutrients.Loop;
using Dripwright.Engine.Nutrients.Recipe;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Water;

namespace Dripwright.Engine.Nutrients.Planning;

/// <summary>From a rig's nutrients section to its feed.</summary>
public static class NutrientPlanner
{
    // The strength of the target and the acid hang on each other through the recipe; both settle within a few rounds.
    private const int Rounds = 5;

    // [mol/m³] Common practice: silicon is given at up to 50 mg/L; more gels in the can and clouds the tank.
    private const double MostSilicon = 50 / 28.085;

    /// <summary>Plans the feed.</summary>
    /// <param name="layout">The rig in its place.</param>
    /// <param name="feed">What is dripped.</param>
    /// <param name="reservoir">Its volume and what plants take.</param>
    /// <returns>The feed; null where none is asked for.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The water analysis cannot be; the reader of rig files lets none such pass.</exception>
    public static NutrientPlan? Plan(RigLayout layout, FeedPlan feed, ReservoirPlan reservoir)
    {
        ArgumentNullException.ThrowIfNull(layout);
        ArgumentNullException.ThrowIfNull(feed);
        ArgumentNullException.ThrowIfNull(reservoir);
        if (layout.Resolved.Nutrients is not { } asked || reservoir.FullVolume <= 0)
        {
            return null;
        }

        var mix = layout.Resolved.Rig.Nutrients;
        var known = layout.Parts.Catalogue.Salts;
        var reading = WaterCheck.Read(NutrientChecks.Analysis(mix.Water));
        var raw =
            reading.Supply
            ?? throw new ArgumentOutOfRangeException(nameof(layout), reading.Faults[0].Why, "The water cannot be.");
        var filled = WaterBlend.Of((raw, 1 - mix.PureShare), (WaterSupply.Pure, mix.PureShare));
        var ph = asked.PH;
        var goal = WantedNutrients.Of(mix, asked, filled);
        var wanted = goal.Strength;
        // What the analysis leaves open is carried along, so that the alkalinity reported is the alkalinity reckoned with.
        var gap = -(reading.Balance?.Gap ?? 0) * (1 - mix.PureShare);
        var sodium = SodiumLimit.Of(asked.SodiumOf);
        var recipe = Settle(
            mix,
            goal,
            filled,
            [.. asked.Salts.Select(one => new SaltAtHand(one.Salt, one.Have))],
            ph,
            gap,
            reservoir.FullVolume,
            sodium.Classic
        );
        var rest = SolutionPh.Of(recipe.Composition, Air(recipe), gap);
        var mixed = SolutionPh.Of(recipe.Composition, Air(recipe) with { CarbonDioxide = null }, gap);
        var acid = recipe
            .Lines.Where(line => line.Salt.Kind == SaltKind.Acid)
            .Sum(line => line.Concentration / line.Salt.Density!.Value);
        var plan = new NutrientPlan
        {
            Stage = asked.Stage,
            Crop = asked.Crop,
            Currency = layout.Resolved.Currency,
            LoopTarget = asked.LoopTarget,
            SodiumLimit = sodium,
            Volume = reservoir.FullVolume,
            Water = reading,
            Filled = filled,
            FilledEc = EcOf(filled.Composition, filled.PH ?? 7.5),
            Gap = gap,
            Wanted = wanted,
            WantedPH = ph,
            Recipe = recipe,
            TargetSource = goal.Source,
            Cures = RecipeCures.Of(recipe, known),
            Stock =
                mix.Mixing is NutrientMixing.Cans
                    ? StockPlanner.Plan(
                        new StockJob
                        {
                            Recipe = recipe,
                            PartsOfFeed = mix.PartsOfFeed,
                            Feed = mix.CanVolume * mix.PartsOfFeed,
                            Temperature = mix.StoreTemperature,
                        }
                    )
                    : null,
            Ec = EcOf(recipe.Composition, ph),
            CationRule = Conductivity.CationRule(recipe.Composition),
            PH = rest.Found ? rest.Value.PH : null,
            MixedPH = mixed.Found ? mixed.Value.PH : null,
            AcidVolume = acid * reservoir.FullVolume,
            Acid = asked.Acid,
            Outlook = null,
            Coir = mix.RawCoir && CoirIn(layout) > 0 ? new CoirTreatment(CoirIn(layout)) : null,
            Findings = [],
        };
        plan = plan with { Outlook = NutrientOutlooks.Of(asked, layout, feed, reservoir, plan) };
        return plan with { Findings = NutrientFindings.Of(layout.Resolved.Rig, plan) };
    }

    /// <summary>[m³] Coir in all pots.</summary>
    internal static double CoirIn(RigLayout layout) =>
        layout.Rows.Sum(row => row.Pots.Count(pot => pot.Planted) * row.Pot.Volume * layout.MediumOf(row).Coir);

    internal static Ec EcOf(Composition solution, double ph) =>
        Conductivity.Of(Speciation.Within(solution, ph, SolutionConditions.Closed));

    // A grower who asks for more of it shall have it.
    private static double MostOf(NutrientTarget target, Constituent ion, double usual) =>
        Math.Max(usual, target.Wanted.GetValueOrDefault(ion));

    private static SolutionConditions Air(NutrientRecipe recipe)
    {
        var chelated = recipe.Lines.Any(line =>
            (line.Salt.IsBag || line.Salt.Kind == SaltKind.Chelate) && line.Salt.Brings[Constituent.Iron] > 0
        );
        return SolutionConditions.Open with { Iron = chelated ? IronForm.Chelated : IronForm.Ferrous };
    }

    /// <summary>The recipe whose strength and acid both fit: what the water brings counts towards the EC, acid towards nitrogen.</summary>
    private static NutrientRecipe Settle(
        NutrientMix mix,
        WantedNutrients goal,
        WaterSupply water,
        IReadOnlyList<SaltAtHand> salts,
        double ph,
        double gap,
        double tank,
        double sodium
    )
    {
        var first = goal.Factor;
        var factor = first;
        var demand = Math.Max(0, water.Alkalinity - 0.5);
        var volume = mix.Mixing is NutrientMixing.Cans ? mix.CanVolume * mix.PartsOfFeed : tank;
        NutrientRecipe recipe = null!;
        for (var round = 0; round < Rounds; round++)
        {
            recipe = RecipePlanner.Plan(
                new RecipeJob
                {
                    Water = water,
                    Target = goal.Target.Times(factor),
                    Plain = goal.Target.Times(first),
                    Salts = salts,
                    Volume = volume,
                    AcidDemand = demand,
                    PH = ph,
                    MostSodium = sodium,
                    MostChloride = MostOf(goal.Target, Constituent.Chloride, RuleBook.Limit("water-chloride")),
                    MostSilicon = MostOf(goal.Target, Constituent.Silicon, MostSilicon),
                    Scale = new WeighingScale(mix.ScaleStep),
                }
            );
            var reads = EcOf(recipe.Composition, ph).DecisiemensPerMetre;
            // Amounts that the grower wrote without a strength stand as they are.
            if (reads > 0 && !goal.IsFixed)
            {
                // Salts that are missing are told of, not made up for with more of the others.
                factor = Math.Clamp(
                    factor * goal.Strength.DecisiemensPerMetre / reads,
                    Math.Max(0.1, 0.8 * first),
                    Math.Min(5, 1.2 * first)
                );
            }

            var open = Speciation.Within(recipe.Composition, ph, Air(recipe)).Charge + gap;
            demand = Math.Max(0, recipe.AcidGiven >= demand - 1e-6 ? demand + open : demand);
        }

        return recipe;
    }
}
