using Dripwright.Engine.Chemistry.Solutions;
using Dripwright.Engine.Nutrients.Correcting;
using Dripwright.Engine.Nutrients.Planning;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Tending;

/// <summary>What was poured into the tank between two readings.</summary>
/// <param name="Water">[m³] Plain water of the rig.</param>
/// <param name="Solution">[m³] Nutrient solution mixed to full strength.</param>
/// <param name="StockEach">[m³] Of stock A, and the same of stock B.</param>
public sealed record PouredBetween(double Water = 0, double Solution = 0, double StockEach = 0);

/// <summary>What two readings say of the plants, and the top-up that follows.</summary>
/// <param name="Taken">What the plants took.</param>
/// <param name="PerDay">[m³/d] Water a day; null where the days are not known.</param>
/// <param name="Nearest">Which of the three usual top-ups comes nearest.</param>
/// <param name="Volume">[m³] Water to fill up with now.</param>
/// <param name="StockEach">[m³] Of stock A, and the same of B, with that water; nought where salts are weighed.</param>
/// <param name="Salts">What to weigh with that water; empty where stock is poured.</param>
/// <param name="Lines">What to say of it, one thing each.</param>
public sealed record UptakeAdvice(
    Uptake Taken,
    double? PerDay,
    TopUpStrength Nearest,
    double Volume,
    double StockEach,
    IReadOnlyList<WeighedSalt> Salts,
    IReadOnlyList<Phrase> Lines
);

/// <summary>From two readings of a rig's tank to the top-up that holds it.</summary>
public static class NutrientUptake
{
    // Beyond this the error of two meters is larger than what was taken.
    private const double MostOverFeed = 3;

    private const double LeastFill = 0.001;
    private const double UsualFill = 0.01;

    /// <summary>Uptake and top-up.</summary>
    /// <remarks>Method page: docs/methods/tank-correction.md</remarks>
    /// <param name="plan">A plan with a feed.</param>
    /// <param name="first">The earlier reading; its pH is not looked at.</param>
    /// <param name="second">The later reading; its pH is not looked at.</param>
    /// <param name="poured">What was poured in between.</param>
    /// <param name="days">[d] Between them; null where nobody knows.</param>
    /// <returns>The advice, or why the readings do not fit together.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An amount poured is negative.</exception>
    public static Answer<UptakeAdvice> Between(
        Plan plan,
        TankReading first,
        TankReading second,
        PouredBetween poured,
        double? days = null
    )
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        ArgumentNullException.ThrowIfNull(poured);
        if (plan.Nutrients is not { } feed)
        {
            return Answer<UptakeAdvice>.No(NutrientTank.NoNutrients);
        }

        var stock = NutrientTank.Stocks(feed);
        if (Misfit(feed, poured, stock, days) is { } misfit)
        {
            return Answer<UptakeAdvice>.No(misfit);
        }

        (var water, var full) = (feed.FilledEc.DecisiemensPerMetre, feed.Ec.DecisiemensPerMetre);
        var taken = Uptake.Between(
            first with
            {
                PH = feed.WantedPH,
            },
            second with
            {
                PH = feed.WantedPH,
            },
            [
                new Poured(poured.Water, water),
                new Poured(poured.Solution, full),
                new Poured(2 * poured.StockEach, stock?.Strength ?? 0),
            ],
            NutrientTank.Capacity(plan, feed)
        );
        if (!taken.Found)
        {
            return Answer<UptakeAdvice>.No(taken.Refusals);
        }

        if (taken.Value.DecisiemensPerMetre > MostOverFeed * full)
        {
            return Answer<UptakeAdvice>.No(
                Unanswerable.Of("uptake-too-strong", Measured.Ec(taken.Value.DecisiemensPerMetre / 10))
            );
        }

        return Answer<UptakeAdvice>.Of(Advice(plan, feed, stock, taken.Value, second, days));
    }

    private static Unanswerable? Misfit(NutrientPlan feed, PouredBetween poured, StockPair? stock, double? days) =>
        feed.Ec <= feed.FilledEc ? Unanswerable.Of("water-as-strong", feed.FilledEc.Measured)
        : poured.StockEach > 0 && stock is null ? Unanswerable.Of("no-stock")
        : days is { } time && !(time > 0 && double.IsFinite(time)) ? Unanswerable.Of("no-time-between")
        : null;

    private static UptakeAdvice Advice(
        Plan plan,
        NutrientPlan feed,
        StockPair? stock,
        Uptake taken,
        TankReading second,
        double? days
    )
    {
        (var water, var full) = (feed.FilledEc.DecisiemensPerMetre, feed.Ec.DecisiemensPerMetre);
        var room = feed.Volume - second.Volume;
        var fill = room >= LeastFill ? room : UsualFill;
        var lacking = Math.Max(0, taken.DecisiemensPerMetre - water);
        var each = stock is null ? 0 : taken.StockEachToHold(fill, water, stock);
        // Fresh water brings its alkalinity whatever salts go with it.
        IReadOnlyList<WeighedSalt> salts =
        [
            .. NutrientTank.HoldAcid(feed) ? [] : SaltDose.AcidFor(feed.Recipe, fill),
            .. stock is null
                ? new SaltDose(feed.Recipe, NutrientTank.SaltsAdd(feed)).Weigh(
                    fill * lacking / NutrientTank.SaltsAdd(feed)
                )
                : [],
        ];
        double? perDay = days is { } time ? taken.Volume / time : null;
        var nearest = taken.Nearest(water, full);
        List<Phrase> lines =
        [
            Took(taken, perDay, full),
            Phrase.Of(
                nearest switch
                {
                    TopUpStrength.Water => "uptake.nearest.water",
                    TopUpStrength.Half => "uptake.nearest.half",
                    _ => "uptake.nearest.full",
                }
            ),
            Fill(room >= LeastFill, WaterPoured.Of(plan, fill), lacking, each, salts),
            .. room >= LeastFill ? WaterPoured.Mark(plan, feed.Volume) : [],
            .. WeighedSalt.Bottles(salts),
            .. salts.Count > 0 ? new[] { Phrase.Of("tank.caution.salts") } : [],
        ];
        return new UptakeAdvice(taken, perDay, nearest, fill, each, salts, lines);
    }

    private static Phrase Took(Uptake taken, double? perDay, double full)
    {
        var (water, salts) = (Measured.Volume(taken.Volume), Measured.Ec(taken.DecisiemensPerMetre / 10));
        var solution = Measured.Ec(full / 10);
        return perDay is { } daily
            ? Phrase.Of("uptake.took.daily", water, salts, solution, Measured.Volume(daily))
            : Phrase.Of("uptake.took", water, salts, solution);
    }

    // A tank without room is told what goes with every so much of water.
    private static Phrase Fill(
        bool hasRoom,
        Phrase water,
        double lacking,
        double each,
        IReadOnlyList<WeighedSalt> salts
    )
    {
        return lacking <= 0 && salts.Count == 0 ? Phrase.Of(hasRoom ? "uptake.fill.water" : "uptake.every.water", water)
            : each >= TankCorrection.LeastDose
                ? Phrase.Of(hasRoom ? "uptake.fill.stock" : "uptake.every.stock", water, Measured.MeasuredOut(each))
            : salts.Count > 0 ? Phrase.Of(hasRoom ? "uptake.fill.salts" : "uptake.every.salts", water)
            : Phrase.Of(hasRoom ? "uptake.fill.too-little" : "uptake.every.too-little", water);
    }
}
