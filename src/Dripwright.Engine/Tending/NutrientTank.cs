using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Chemistry.Solutions;
using Dripwright.Engine.Nutrients.Correcting;
using Dripwright.Engine.Nutrients.Planning;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Tending;

/// <summary>Brings a rig's reservoir back to its feed after a reading.</summary>
public static class NutrientTank
{
    // The strength of stock or salts depends a little on what they are poured into; it settles in two or three rounds.
    private const int Rounds = 6;

    // Stock that takes pH so far under the wanted one is not poured.
    private const double MostFall = 0.5;

    /// <summary>The steps from a reading to the feed that the rig asks for.</summary>
    /// <remarks>
    /// The tank is taken to hold the recipe's ions in their proportions, as strong as it reads; what it really holds shows in
    /// its pH and is carried along. Where the rig mixes straight into the tank the salts are weighed. Where a can holds acid for
    /// the alkalinity of fresh water, and the tank has too little of that, stock goes with the fresh water only and the rest is
    /// weighed. Method page: docs/methods/tank-correction.md
    /// </remarks>
    /// <param name="plan">A plan with a feed.</param>
    /// <param name="reading">What was read.</param>
    /// <returns>The steps, or why there are none and what would help.</returns>
    /// <exception cref="ArgumentNullException">Something is missing.</exception>
    public static Answer<TankPlan> Correct(Plan plan, TankReading reading)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(reading);
        var answer = Plain(plan, reading);
        return answer.Value is { } tank ? Answer<TankPlan>.Of(Told(plan, tank)) : answer;
    }

    /// <summary>The water in its blend and to its mark, and how the bottles are made.</summary>
    private static TankPlan Told(Plan plan, TankPlan tank) =>
        tank with
        {
            Steps =
            [
                .. tank.Steps.Select(step =>
                    step.Kind == TankStepKind.Water
                        ? step with
                        {
                            Text = Phrase.Of("tank.step.water", WaterPoured.Of(plan, step.Volume)),
                        }
                        : step
                ),
            ],
            Notes =
            [
                .. tank.Notes,
                .. tank.Water > 0 ? WaterPoured.Mark(plan, tank.FinalVolume) : [],
                .. WeighedSalt.Bottles(tank.Steps.SelectMany(step => step.Weigh)),
            ],
        };

    private static Answer<TankPlan> Plain(Plan plan, TankReading reading)
    {
        if (plan.Nutrients is not { } feed)
        {
            return Answer<TankPlan>.No(NoNutrients);
        }

        var faults = reading.Faults(Capacity(plan, feed));
        if (faults.Count > 0)
        {
            return Answer<TankPlan>.No(faults);
        }

        if (feed.Recipe.Lines.All(line => line.Salt.Kind == SaltKind.Acid))
        {
            return Answer<TankPlan>.No(Unanswerable.Of("recipe-without-salts"));
        }

        if (Stocks(feed) is not { } stock)
        {
            return Reckon(plan, feed, reading, strength => new SaltDose(feed.Recipe, strength), SaltsAdd(feed));
        }

        var dose = feed.Stock!.DosePerLitre;
        var poured = Reckon(
            plan,
            feed,
            reading,
            strength => new StockPair(strength * 2 * dose, dose) { A = stock.A, B = stock.B },
            stock.Strength
        );
        if (!poured.Found || poured.Value.StockEach <= 0 || !HoldAcid(feed) || !FallsTooFar(poured.Value, feed))
        {
            return poured;
        }

        var weighed = Reckon(
            plan,
            feed,
            reading,
            strength => new SaltDose(feed.Recipe, strength),
            SaltsAdd(feed),
            AsFeed(feed)
        );
        return weighed.Found
            ? Answer<TankPlan>.Of(
                WithStock(weighed.Value, dose) with
                {
                    Notes = [Why(poured.Value), .. weighed.Value.Notes],
                }
            )
            : poured;
    }

    internal static Unanswerable NoNutrients { get; } = Unanswerable.Of("no-nutrients");

    internal static double Capacity(Plan plan, NutrientPlan feed) => Math.Max(feed.Volume, plan.Reservoir.RimVolume);

    /// <summary>The cans as a pair; null where the rig has none that can be dosed.</summary>
    internal static StockPair? Stocks(NutrientPlan feed) =>
        feed.Stock is { Cans: [var a, var b] } stock && stock.DosePerLitre < 1.0 / 3
            ? StockPair.Of(a.Contents, b.Contents, stock.DosePerLitre, feed.WantedPH)
            : null;

    /// <summary>[dS/m] What the salts of full strength add to the water, about.</summary>
    internal static double SaltsAdd(NutrientPlan feed) =>
        Math.Max(0.05, feed.Ec.DecisiemensPerMetre - feed.FilledEc.DecisiemensPerMetre);

    internal static bool HoldAcid(NutrientPlan feed) =>
        feed.Stock?.Cans.Any(can => can.Lines.Any(line => line.Salt.Kind == SaltKind.Acid)) == true;

    private static bool FallsTooFar(TankPlan poured, NutrientPlan feed) =>
        poured.Mixed is not null && poured.MixedPH is not { } || poured.MixedPH < feed.WantedPH - MostFall;

    private static Phrase Why(TankPlan poured) =>
        poured.MixedPH is { } low
            ? Phrase.Of("tank.note.acid-in-stock", Measured.PH(low))
            : Phrase.Of("tank.note.acid-in-stock.sour");

    /// <summary>Fresh feed out of the cans as what the tank is filled up with; its acid and its water's alkalinity have met.</summary>
    private static MakeUpWater AsFeed(NutrientPlan feed) =>
        new(Math.Min(feed.Ec.DecisiemensPerMetre, feed.Wanted.DecisiemensPerMetre), feed.Recipe.Composition, feed.Gap);

    /// <summary>The plan in which the fresh feed is water, stock A and stock B.</summary>
    private static TankPlan WithStock(TankPlan tank, double dose)
    {
        var each = tank.Water * dose;
        if (each < TankCorrection.LeastDose)
        {
            return tank;
        }

        var water = tank.Water - (2 * each);
        return tank with
        {
            Water = water,
            StockEach = each,
            Steps =
            [
                .. tank.Steps.SelectMany(step =>
                    step.Kind == TankStepKind.Water
                        ? (IEnumerable<TankStep>)
                            [
                                TankCorrection.AddWater(water),
                                new TankStep(
                                    TankStepKind.StockA,
                                    each,
                                    Phrase.Of("tank.step.stock-a", Measured.MeasuredOut(each))
                                ),
                                new TankStep(
                                    TankStepKind.StockB,
                                    each,
                                    Phrase.Of("tank.step.stock-b", Measured.MeasuredOut(each))
                                ),
                            ]
                        : [step]
                ),
            ],
        };
    }

    /// <summary>The plan in which what strengthens counts for what the ions of the mixed tank say.</summary>
    private static Answer<TankPlan> Reckon(
        Plan plan,
        NutrientPlan feed,
        TankReading reading,
        Func<double, Strengthener> giverOf,
        double first,
        MakeUpWater? water = null
    )
    {
        var tank = Held(feed, reading);
        var bottle = feed.Acid is { } acid ? PhBottle.Of(acid) : null;
        var means = new PhMeans(tank, bottle is null ? [] : [bottle], SolutionConditions.Open);
        water ??= new MakeUpWater(feed.FilledEc.DecisiemensPerMetre, feed.Filled.Composition, feed.Gap);
        var target = new TankTarget(feed.Wanted.DecisiemensPerMetre, feed.WantedPH, feed.Volume);
        // The room over the mark is for what comes back when the pump stops.
        var most = Math.Max(feed.Volume, reading.Volume);
        var strength = first;
        Answer<TankPlan> answer = null!;
        for (var round = 0; round < Rounds; round++)
        {
            answer = TankCorrection.Plan(reading, target, giverOf(strength), water, most, means);
            if (answer.Value is not { Mixed: { } mixed } steps || steps.SaltsFor + steps.StockEach <= 0)
            {
                return answer;
            }

            var reads = NutrientPlanner.EcOf(mixed, feed.WantedPH).DecisiemensPerMetre;
            var before =
                ((reading.Volume - steps.Drained) * reading.DecisiemensPerMetre)
                + (steps.Water * water.DecisiemensPerMetre);
            var counted = ((reads * steps.FinalVolume) - before) / (steps.SaltsFor + (2 * steps.StockEach));
            if (Math.Abs(counted - strength) < 1e-3 * strength)
            {
                return answer;
            }

            strength = Math.Clamp(counted, 0.5 * first, 2 * first);
        }

        return answer;
    }

    /// <summary>[mol/m³] The recipe's ions in their proportions, as many as read what was read.</summary>
    private static Composition Held(NutrientPlan feed, TankReading reading)
    {
        var share = reading.DecisiemensPerMetre / Math.Max(feed.Ec.DecisiemensPerMetre, 0.01);
        var tank = Composition.Nothing;
        for (var round = 0; round < Rounds; round++)
        {
            tank = (feed.Recipe.Composition * share).With(Constituent.InorganicCarbon, Carbon(reading.PH));
            var modelled = NutrientPlanner.EcOf(tank, reading.PH).DecisiemensPerMetre;
            share *= modelled > 0 ? reading.DecisiemensPerMetre / modelled : 1;
        }

        return tank;
    }

    /// <summary>[mol/m³] Carbon in a tank at rest with the air: what the water once brought has left as gas.</summary>
    private static double Carbon(double ph)
    {
        // 42.5 Pa over water of 25 °C hold 0.0145 mol/m³; pK of carbonic acid 6.35 (from memory).
        const double Dissolved = 0.0145;
        return Dissolved * (1 + Math.Pow(10, ph - 6.35));
    }
}
