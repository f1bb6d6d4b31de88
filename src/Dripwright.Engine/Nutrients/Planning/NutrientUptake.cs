using Dripwright.Engine.Chemistry.Solutions;
using Dripwright.Engine.Nutrients.Correcting;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Nutrients.Planning;

/// <summary>What was poured into the tank between two readings.</summary>
/// <param name="Water">[m³] Plain water of the rig.</param>
/// <param name="Feed">[m³] Feed mixed to full strength.</param>
/// <param name="StockEach">[m³] Of stock A, and the same of stock B.</param>
public sealed record PouredBetween(double Water = 0, double Feed = 0, double StockEach = 0);

/// <summary>What two readings say of the plants, and the top-up that follows.</summary>
/// <param name="Taken">What the plants took.</param>
/// <param name="PerDay">[m³/d] Water a day; null where the days are not known.</param>
/// <param name="Nearest">Which of the three usual top-ups comes nearest.</param>
/// <param name="Volume">[m³] Water to fill up with now.</param>
/// <param name="StockEach">[m³] Of stock A, and the same of B, with that water; nought where salts are weighed.</param>
/// <param name="Salts">What to weigh with that water; empty where stock is poured.</param>
/// <param name="Lines">The same in words.</param>
public sealed record UptakeAdvice(
    Uptake Taken,
    double? PerDay,
    TopUpStrength Nearest,
    double Volume,
    double StockEach,
    IReadOnlyList<WeighedSalt> Salts,
    IReadOnlyList<string> Lines
);

/// <summary>From two readings of a rig's tank to the top-up that holds it.</summary>
public static class NutrientUptake
{
    // Beyond this the error of two pens is larger than what was taken.
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
            return Answer<UptakeAdvice>.No(NutrientTank.NoFeed);
        }

        StockPair? stock = NutrientTank.Stocks(feed);
        if (Misfit(feed, poured, stock, days) is { } misfit)
        {
            return Answer<UptakeAdvice>.No(misfit);
        }

        (double water, double full) = (feed.FilledEc.DecisiemensPerMetre, feed.Ec.DecisiemensPerMetre);
        Answer<Uptake> taken = Uptake.Between(
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
                new Poured(poured.Feed, full),
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
                $"By these readings the plants took salts of {QuantityWords.Number(taken.Value.DecisiemensPerMetre, "0.0")} dS/m, over three times as strong as the feed: no plant does.",
                "So little water went that the pens' error counts for more. Read again after a day or two, or look whether feed was let out."
            );
        }

        return Answer<UptakeAdvice>.Of(Advice(plan, feed, stock, taken.Value, second, days));
    }

    private static Unanswerable? Misfit(NutrientPlan feed, PouredBetween poured, StockPair? stock, double? days) =>
        feed.Ec <= feed.FilledEc
            ? new Unanswerable(
                $"The water alone reads {feed.FilledEc}, as much as the feed: a top-up cannot be told from it.",
                "Blend the water with rain or reverse-osmosis water."
            )
        : poured.StockEach > 0 && stock is null
            ? new Unanswerable("Stock was poured in, and this rig has no cans.", "Set nutrients.mixing to \"cans\".")
        : days is { } time && !(time > 0 && double.IsFinite(time))
            ? new Unanswerable("Between two readings some time must pass.", "Say the days between them, above nought.")
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
        var words = new QuantityWords(plan.Rig.Units);
        (double water, double full) = (feed.FilledEc.DecisiemensPerMetre, feed.Ec.DecisiemensPerMetre);
        double room = feed.Volume - second.Volume;
        double fill = room >= LeastFill ? room : UsualFill;
        double lacking = Math.Max(0, taken.DecisiemensPerMetre - water);
        double each = stock is null ? 0 : taken.StockEachToHold(fill, water, stock);
        IReadOnlyList<WeighedSalt> salts = stock is null
            ?
            [
                .. new SaltDose(feed.Recipe, NutrientTank.SaltsAdd(feed))
                    .Weigh(fill * lacking / NutrientTank.SaltsAdd(feed))
                    .Where(salt => salt.Weighed > 0),
            ]
            : [];
        double? perDay = days is { } time ? taken.Volume / time : null;
        TopUpStrength nearest = taken.Nearest(water, full);
        List<string> lines =
        [
            $"In between the plants took {words.Volume(taken.Volume)} of water"
                + (perDay is { } daily ? $", {words.Volume(daily)} a day," : "")
                + $" and with it salts of {QuantityWords.Number(taken.DecisiemensPerMetre, "0.00")} dS/m; the feed has {QuantityWords.Number(full, "0.00")}.",
            $"Of the three usual top-ups {Name(nearest)} comes nearest to holding the tank.",
            Fill(words, room >= LeastFill, fill, lacking, each, salts),
        ];
        return new UptakeAdvice(taken, perDay, nearest, fill, each, salts, lines);
    }

    private static string Fill(
        QuantityWords words,
        bool hasRoom,
        double fill,
        double lacking,
        double each,
        IReadOnlyList<WeighedSalt> salts
    )
    {
        string start = hasRoom
            ? $"To hold it, fill up with {words.Volume(fill)} of water"
            : $"To hold it, give with every {words.Volume(fill)} of water";
        return lacking <= 0
                ? (hasRoom ? start : $"To hold it, fill up with water")
                    + " alone: it brings as much salt as the plants take, or more."
            : each > 0
                ? $"{start} {(hasRoom ? "and " : "")}{TankWords.Millilitres(each)} of stock A and as much of stock B, A first."
            : salts.Count > 0 ? $"{start}{(hasRoom ? " and" : "")} the salts below, each dissolved by itself."
            : $"{start}; what salts it needs is too little for your scale.";
    }

    private static string Name(TopUpStrength strength) =>
        strength switch
        {
            TopUpStrength.Water => "plain water",
            TopUpStrength.Half => "half strength",
            _ => "full strength",
        };
}
