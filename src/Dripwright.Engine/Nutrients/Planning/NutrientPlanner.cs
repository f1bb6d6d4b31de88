using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Catalogue.Targets;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Chemistry.Solutions;
using Dripwright.Engine.Chemistry.Waters;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Nutrients.Recipe;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Water;

namespace Dripwright.Engine.Nutrients.Planning;

/// <summary>From a rig's nutrients section to its feed.</summary>
public static class NutrientPlanner
{
    // The strength of the target and the acid hang on each other through the recipe; both settle within a few rounds.
    private const int Rounds = 5;

    /// <summary>Salts taken where the rig names none: what growers of fruiting vegetables commonly keep.</summary>
    public static IReadOnlyList<string> UsualSalts { get; } =
    [
        "calcium-nitrate-15.5",
        "potassium-nitrate",
        "monopotassium-phosphate",
        "potassium-sulfate",
        "magnesium-sulfate-7h2o",
        "fe-dtpa-11",
        "manganese-sulfate-1h2o",
        "zinc-sulfate-7h2o",
        "boric-acid",
        "copper-sulfate-5h2o",
        "sodium-molybdate-2h2o",
    ];

    /// <summary>Plans the feed.</summary>
    /// <param name="rig">The rig.</param>
    /// <param name="layout">Its layout: the coir in its pots.</param>
    /// <param name="feed">What is dripped.</param>
    /// <param name="reservoir">Its volume and what plants take.</param>
    /// <param name="catalogue">Salts and targets, ours with the grower's own laid over them.</param>
    /// <returns>The feed; null where none is asked for.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The water analysis cannot be; the reader of rig files lets none such pass.</exception>
    public static NutrientPlan? Plan(
        Rig rig,
        RigLayout layout,
        FeedPlan feed,
        ReservoirPlan reservoir,
        PartsCatalogue catalogue
    )
    {
        ArgumentNullException.ThrowIfNull(rig);
        ArgumentNullException.ThrowIfNull(layout);
        ArgumentNullException.ThrowIfNull(feed);
        ArgumentNullException.ThrowIfNull(reservoir);
        ArgumentNullException.ThrowIfNull(catalogue);
        NutrientMix mix = rig.Nutrients;
        if (mix.Crop is NutrientCrop.None || reservoir.FullVolume <= 0)
        {
            return null;
        }

        CropStage stage =
            catalogue.Targets.StageOf(CropOf(mix.Crop), StageOf(mix.Stage))
            ?? throw new InvalidOperationException("Our own targets lack a stage.");
        if (mix.Target != GroupKeys.Usual)
        {
            stage = stage with { Target = mix.Target };
        }

        WaterReading reading = WaterCheck.Read(NutrientChecks.Analysis(mix.Water));
        WaterSupply raw =
            reading.Supply
            ?? throw new ArgumentOutOfRangeException(nameof(rig), reading.Faults[0].Why, "The water cannot be.");
        WaterSupply filled = WaterBlend.Of((raw, 1 - mix.PureShare), (WaterSupply.Pure, mix.PureShare));
        double ph = mix.Ph;
        WantedNutrients goal = WantedNutrients.Of(mix, stage, catalogue.Targets, filled, ph);
        Ec wanted = goal.Strength;
        // What the analysis leaves open is carried along, so that the alkalinity reported is the alkalinity reckoned with.
        double gap = -(reading.Balance?.Gap ?? 0) * (1 - mix.PureShare);
        NutrientRecipe recipe = Settle(
            mix,
            goal,
            filled,
            OnHandSalts.Of(mix, catalogue.Salts),
            ph,
            gap,
            reservoir.FullVolume
        );
        Answer<Speciation> rest = SolutionPh.Of(recipe.Composition, Air(recipe), gap);
        double acid = recipe
            .Lines.Where(line => line.Salt.Kind == SaltKind.Acid)
            .Sum(line => line.Concentration / line.Salt.Density!.Value);
        var plan = new NutrientPlan
        {
            Stage = stage,
            Volume = reservoir.FullVolume,
            Water = reading,
            Filled = filled,
            FilledEc = EcOf(filled.Composition, filled.PH ?? 7.5),
            Gap = gap,
            Wanted = wanted,
            WantedPH = ph,
            Recipe = recipe,
            Cures = RecipeCures.Of(recipe, catalogue.Salts),
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
            AcidVolume = acid * reservoir.FullVolume,
            Acid = mix.Acid == GroupKeys.None ? null : catalogue.Salts[mix.Acid],
            Outlook = null,
            Coir = mix.RawCoir ? new CoirTreatment(CoirIn(layout)) : null,
            Findings = [],
        };
        plan = plan with { Outlook = NutrientOutlooks.Of(rig, layout, feed, reservoir, plan, catalogue.Targets) };
        return plan with { Findings = NutrientFindings.Of(mix, plan) };
    }

    /// <summary>[m³] Coir in all pots.</summary>
    internal static double CoirIn(RigLayout layout) =>
        layout.Rows.Sum(row => row.Pots.Count(pot => pot.Planted) * row.Pot.Volume);

    internal static FeedCrop CropOf(NutrientCrop crop) =>
        crop switch
        {
            NutrientCrop.Tomato => FeedCrop.Tomato,
            NutrientCrop.Cucumber => FeedCrop.Cucumber,
            NutrientCrop.SweetPepper => FeedCrop.SweetPepper,
            _ => throw new ArgumentOutOfRangeException(nameof(crop), crop, "No crop."),
        };

    internal static Ec EcOf(Composition solution, double ph) =>
        Conductivity.Of(Speciation.Within(solution, ph, SolutionConditions.Closed));

    private static FeedStage StageOf(NutrientStage stage) =>
        stage switch
        {
            NutrientStage.Young => FeedStage.Young,
            NutrientStage.FirstFlowers => FeedStage.FirstFlowers,
            NutrientStage.Fruiting => FeedStage.Fruiting,
            NutrientStage.FullCrop => FeedStage.FullCrop,
            _ => throw new ArgumentOutOfRangeException(nameof(stage), stage, "No stage."),
        };

    private static SolutionConditions Air(NutrientRecipe recipe)
    {
        bool chelated = recipe.Lines.Any(line =>
            line.Salt.Kind == SaltKind.Chelate && line.Salt.Brings[Constituent.Iron] > 0
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
        double tank
    )
    {
        double first = goal.Factor;
        double factor = first;
        double demand = Math.Max(0, water.Alkalinity - 0.5);
        double volume = mix.Mixing is NutrientMixing.Cans ? mix.CanVolume * mix.PartsOfFeed : tank;
        NutrientRecipe recipe = null!;
        for (int round = 0; round < Rounds; round++)
        {
            recipe = RecipePlanner.Plan(
                new RecipeJob
                {
                    Water = water,
                    Target = goal.Target.Times(factor),
                    Salts = salts,
                    Volume = volume,
                    AcidDemand = demand,
                    PH = ph,
                    MostSodium = NutrientOutlooks.LimitOf(mix.Crop).Classic,
                    Scale = new WeighingScale(mix.ScaleStep),
                }
            );
            double reads = EcOf(recipe.Composition, ph).DecisiemensPerMetre;
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

            double open = Speciation.Within(recipe.Composition, ph, Air(recipe)).Charge + gap;
            demand = Math.Max(0, recipe.AcidGiven >= demand - 1e-6 ? demand + open : demand);
        }

        return recipe;
    }
}
