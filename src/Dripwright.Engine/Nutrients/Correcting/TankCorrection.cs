using System.Globalization;
using Dripwright.Engine.Chemistry.Solutions;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Nutrients.Correcting;

/// <summary>How a tank that has drifted is brought back: drain, water, stock, acid, in this order, with readings between.</summary>
/// <remarks>
/// Volumes and EC by C1 V1 (see <see cref="Blend"/>), the added volumes counted, and never more than the tank holds: where
/// there is no room, some is drained first, as little as will do. Of stock and of acid two thirds go in, then it is read
/// again, because EC adds up to 5 % only and pH depends on what the analysis left out. Common practice.
/// Method page: docs/methods/tank-correction.md
/// </remarks>
public static class TankCorrection
{
    /// <summary>[-] Share of stock and of acid that goes in before reading again.</summary>
    public const double FirstShare = 2.0 / 3;

    /// <summary>[dS/m] EC that pens of the trade can tell apart; smaller differences are left alone.</summary>
    public const double SmallestStep = 0.02;

    /// <summary>The steps from a reading to a target.</summary>
    /// <param name="reading">What was read.</param>
    /// <param name="target">What is wanted.</param>
    /// <param name="giver">What makes it stronger: the stock pair, or the salts.</param>
    /// <param name="water">The water to fill up with.</param>
    /// <param name="capacity">[m³] What the tank holds when full.</param>
    /// <param name="ph">What is needed to reckon acid; null to leave pH to a bucket test.</param>
    /// <param name="words">Says volumes in the grower's units; litres where null.</param>
    /// <returns>The plan, or why there is none and what would help.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The capacity is not positive, or the target is not a possible one.</exception>
    public static Answer<TankPlan> Plan(
        TankReading reading,
        TankTarget target,
        Strengthener giver,
        MakeUpWater water,
        double capacity,
        PhMeans? ph = null,
        QuantityWords? words = null
    )
    {
        ArgumentNullException.ThrowIfNull(reading);
        ArgumentNullException.ThrowIfNull(target);
        ArgumentNullException.ThrowIfNull(giver);
        ArgumentNullException.ThrowIfNull(water);
        Guard.Positive(capacity);
        Guard.Between(target.DecisiemensPerMetre, 0, TankReading.HighestEc);
        Guard.Between(target.PH, 4, 9);
        IReadOnlyList<Unanswerable> faults =
        [
            .. reading.Faults(capacity),
            .. Hindrances(reading, target, giver, water, capacity),
        ];
        if (faults.Count > 0)
        {
            return Answer<TankPlan>.No(faults);
        }

        words ??= new QuantityWords(UnitSystem.Metric);
        Amounts amounts = Amounts.For(reading, target, giver, water.DecisiemensPerMetre, capacity);
        List<TankStep> steps = [];
        List<string> notes = [];
        double volume = reading.Volume - amounts.Drained;
        double ec = reading.DecisiemensPerMetre;
        if (amounts.Drained > 0)
        {
            steps.Add(new TankStep(TankStepKind.Drain, amounts.Drained, $"Let out {words.Volume(amounts.Drained)}."));
            notes.Add("What is let out is feed: give it to garden plants, away from drains and ponds.");
        }

        if (amounts.Water > 0)
        {
            ec = Blend.Mixed(volume, ec, amounts.Water, water.DecisiemensPerMetre);
            volume += amounts.Water;
            steps.Add(
                new TankStep(TankStepKind.Water, amounts.Water, $"Fill in {words.Volume(amounts.Water)} of water.")
            );
            steps.Add(Reading(ec));
        }

        if (amounts.Units > 0)
        {
            (volume, ec) = Strengthen(steps, amounts.Units, giver, volume, ec);
        }

        if (steps.Count == 0)
        {
            notes.Add("EC is where it should be.");
        }

        TankPlan plan = new(
            amounts.Drained,
            amounts.Water,
            giver is StockPair ? amounts.Units / 2 : 0,
            volume,
            ec,
            null,
            steps,
            notes,
            amounts.Units > 0 ? giver.Cautions : []
        )
        {
            SaltsFor = giver is StockPair ? 0 : amounts.Units,
        };
        return Answer<TankPlan>.Of(TankPh.Add(plan, reading, target, giver, water, ph, steps, notes));
    }

    private static IEnumerable<Unanswerable> Hindrances(
        TankReading reading,
        TankTarget target,
        Strengthener giver,
        MakeUpWater water,
        double capacity
    )
    {
        double want = target.DecisiemensPerMetre;
        if (!double.IsFinite(water.DecisiemensPerMetre) || water.DecisiemensPerMetre is < 0 or > TankReading.HighestEc)
        {
            yield return new Unanswerable(
                $"An EC of {Number(water.DecisiemensPerMetre)} dS/m cannot be that of a fill-up water.",
                "Read the water again, in dS/m."
            );
            yield break;
        }

        if (want <= water.DecisiemensPerMetre && reading.DecisiemensPerMetre > want + SmallestStep)
        {
            double share = 100 * want / water.DecisiemensPerMetre;
            yield return new Unanswerable(
                $"The water alone reads {Number(water.DecisiemensPerMetre)} dS/m: no amount of it brings the tank down to {Number(want)}.",
                want > 0
                    ? $"Fill up with rain or reverse-osmosis water, or blend: less than {Whole(share)} % of this water, the rest clean."
                    : "Fill up with rain or reverse-osmosis water, and aim above nought."
            );
        }
        else if (want < water.DecisiemensPerMetre && target.Volume is { } wished && wished > reading.Volume)
        {
            yield return new Unanswerable(
                $"Filling up with water that reads {Number(water.DecisiemensPerMetre)} dS/m takes the tank above the {Number(want)} wanted.",
                "Fill up with rain or reverse-osmosis water, or aim higher."
            );
        }

        if (giver is StockPair && want >= giver.Strength)
        {
            yield return new Unanswerable(
                $"The stock pair itself counts for {Number(giver.Strength)} dS/m, not more than the {Number(want)} wanted.",
                "Make a stronger stock, or look at its dose again."
            );
        }

        if (target.Volume is { } full && !(full > 0 && full <= capacity))
        {
            yield return new Unanswerable(
                $"{TankWords.Litres(full)} are wanted in a tank that holds {TankWords.Litres(capacity)}.",
                "Name a volume that fits."
            );
        }
    }

    private static (double Volume, double Ec) Strengthen(
        List<TankStep> steps,
        double units,
        Strengthener giver,
        double volume,
        double ec
    )
    {
        double end = giver.Mixed(volume, ec, units);
        double[] shares = end - ec > 0.1 ? [FirstShare, 1 - FirstShare] : [1];
        foreach (double share in shares)
        {
            double part = units * share;
            steps.AddRange(giver.Give(part, share == FirstShare ? ", two thirds of the amount" : ""));
            ec = giver.Mixed(volume, ec, part);
            volume += part * giver.Bulk;
            steps.Add(Reading(ec));
        }

        return (volume, ec);
    }

    private static TankStep Reading(double ec) =>
        new(
            TankStepKind.Read,
            0,
            $"After a quarter of an hour of mixing read EC: about {Number(ec)} dS/m is expected. If it is off by more than 0.1, reckon again from this reading.",
            ec
        );

    private static string Number(double value) => value.ToString("0.00", CultureInfo.InvariantCulture);

    private static string Whole(double value) => value.ToString("0", CultureInfo.InvariantCulture);
}
