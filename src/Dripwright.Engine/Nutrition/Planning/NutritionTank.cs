using Dripwright.Engine.Nutrition.Chemistry;
using Dripwright.Engine.Nutrition.Salts;
using Dripwright.Engine.Nutrition.Strength;
using Dripwright.Engine.Nutrition.Tank;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Nutrition.Planning;

/// <summary>Brings a rig's reservoir back to its feed after a reading.</summary>
public static class NutritionTank
{
    /// <summary>The steps from a reading to the feed that the rig asks for.</summary>
    /// <remarks>
    /// The tank is taken to hold the recipe's ions in their proportions, as strong as it reads; what it really holds shows in
    /// its pH and is carried along. Method page: docs/methods/tank-correction.md
    /// </remarks>
    /// <param name="plan">A plan with a feed in two cans.</param>
    /// <param name="reading">What was read.</param>
    /// <returns>The steps, or why there are none and what would help.</returns>
    /// <exception cref="ArgumentNullException">Something is missing.</exception>
    public static Answer<TankPlan> Correct(Plan plan, TankReading reading)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(reading);
        if (plan.Nutrition is not { } feed)
        {
            return Answer<TankPlan>.No(
                "The rig file asks for no feed: nutrition.crop is none.",
                "Name crop and water in the nutrition section."
            );
        }

        if (feed.Stock is not { Cans: [var a, var b] } stock || stock.Job.PartsOfFeed < 3)
        {
            return Answer<TankPlan>.No(
                "A tank is corrected from cans A and B, and this rig mixes straight into the tank.",
                "Set nutrition.mixing to \"cans\" and mix them once."
            );
        }

        double capacity = Math.Max(feed.Volume, plan.Reservoir.RimVolume);
        IReadOnlyList<Refusal> faults = reading.Faults(capacity);
        if (faults.Count > 0)
        {
            return Answer<TankPlan>.No(faults);
        }

        double share = reading.DecisiemensPerMetre / Math.Max(feed.Ec.DecisiemensPerMetre, 0.01);
        string acid = plan.Rig.Nutrition.Acid;
        PhBottle? bottle = acid == CatalogueShelf.None ? null : PhBottle.Of(SaltCatalogue.Default[acid]);
        return TankCorrection.Plan(
            reading,
            new TankTarget(feed.Wanted.DecisiemensPerMetre, feed.WantedPH, feed.Volume),
            StockPair.Of(a.Contents, b.Contents, stock.DosePerLitre, feed.WantedPH),
            new MakeUpWater(feed.FilledEc.DecisiemensPerMetre, feed.Filled.Composition),
            capacity,
            new PhMeans(
                (feed.Recipe.Composition * share).With(Constituent.InorganicCarbon, Carbon(reading.PH)),
                bottle is null ? [] : [bottle],
                Strength.Surroundings.Open
            )
        );
    }

    /// <summary>[mol/m³] Carbon in a tank at rest with the air: what the water once brought has left as gas.</summary>
    private static double Carbon(double ph)
    {
        // 42.5 Pa over water of 25 °C hold 0.0145 mol/m³; pK of carbonic acid 6.35 (from memory).
        const double Dissolved = 0.0145;
        return Dissolved * (1 + Math.Pow(10, ph - 6.35));
    }
}
