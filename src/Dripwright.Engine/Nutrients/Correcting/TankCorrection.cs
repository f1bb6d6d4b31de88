using Dripwright.Engine.Chemistry.Solutions;
using Dripwright.Engine.Phrases;

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

    /// <summary>[dS/m] EC that meters of the trade can tell apart; smaller differences are left alone.</summary>
    public const double SmallestStep = 0.02;

    /// <summary>[m³] The least water that is added or drained, 10 mL: less nobody sees at a tank.</summary>
    public const double LeastWater = 1e-5;

    /// <summary>[m³] The least of a bottle or a stock that is poured, 0.1 mL: the finest mark of a small syringe.</summary>
    public const double LeastDose = 1e-7;

    /// <summary>The steps from a reading to a target.</summary>
    /// <param name="reading">What was read.</param>
    /// <param name="target">What is wanted.</param>
    /// <param name="giver">What makes it stronger: the stock pair, or the salts.</param>
    /// <param name="water">The water to fill up with.</param>
    /// <param name="capacity">[m³] What the tank holds when full.</param>
    /// <param name="ph">What is needed to compute the acid; null to leave pH to a bucket test.</param>
    /// <returns>The plan, or why there is none and what would help.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The capacity is not positive, or the target is not a possible one.</exception>
    public static Answer<TankPlan> Plan(
        TankReading reading,
        TankTarget target,
        Strengthener giver,
        MakeUpWater water,
        double capacity,
        PhMeans? ph = null
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

        var amounts = Amounts.For(reading, target, giver, water.DecisiemensPerMetre, capacity);
        List<TankStep> steps = [];
        List<Phrase> notes = [];
        var volume = reading.Volume - amounts.Drained;
        var ec = reading.DecisiemensPerMetre;
        if (amounts.Drained > 0)
        {
            steps.Add(
                new TankStep(
                    TankStepKind.Drain,
                    amounts.Drained,
                    Phrase.Of("tank.step.drain", Measured.Volume(amounts.Drained))
                )
            );
            notes.Add(Phrase.Of("tank.note.drained"));
        }

        if (amounts.Water > 0)
        {
            ec = Blend.Mixed(volume, ec, amounts.Water, water.DecisiemensPerMetre);
            volume += amounts.Water;
            steps.Add(AddWater(amounts.Water));
            steps.Add(Reading(ec));
        }

        if (amounts.Units > 0 && !giver.CanGive(amounts.Units))
        {
            amounts = amounts with { Units = 0 };
            notes.Add(Phrase.Of("tank.note.too-little"));
        }

        if (amounts.Units > 0)
        {
            (volume, ec) = Strengthen(steps, amounts.Units, giver, volume, ec);
        }

        if (steps.Count == 0 && notes.Count == 0)
        {
            notes.Add(Phrase.Of("tank.note.ec-right"));
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

    /// <summary>The step that adds water.</summary>
    /// <param name="volume">[m³] How much.</param>
    internal static TankStep AddWater(double volume) =>
        new(
            TankStepKind.Water,
            volume,
            Phrase.Of("tank.step.water", Phrase.Of("tank.water.plain", Measured.Volume(volume)))
        );

    private static IEnumerable<Unanswerable> Hindrances(
        TankReading reading,
        TankTarget target,
        Strengthener giver,
        MakeUpWater water,
        double capacity
    )
    {
        var want = target.DecisiemensPerMetre;
        var wanted = Told(want);
        if (water.DecisiemensPerMetre is not (>= 0 and <= TankReading.HighestEc))
        {
            yield return Unanswerable.Of(
                "water-ec",
                double.IsFinite(water.DecisiemensPerMetre)
                    ? Told(water.DecisiemensPerMetre)
                    : Phrase.Of("unanswerable.no-number")
            );
            yield break;
        }

        if (want <= water.DecisiemensPerMetre && reading.DecisiemensPerMetre > want + SmallestStep)
        {
            yield return new Unanswerable(
                Phrase.Of("unanswerable.water-too-strong.what", Told(water.DecisiemensPerMetre), wanted),
                want > 0
                    ? Phrase.Of(
                        "unanswerable.water-too-strong.remedy",
                        Measured.Percent(want / water.DecisiemensPerMetre)
                    )
                    : Phrase.Of("unanswerable.water-too-strong.remedy.zero")
            );
        }
        else if (want < water.DecisiemensPerMetre && target.Volume is { } wished && wished > reading.Volume)
        {
            yield return Unanswerable.Of("filling-over-target", Told(water.DecisiemensPerMetre), wanted);
        }

        if (giver is StockPair && want >= giver.Strength)
        {
            yield return Unanswerable.Of("stock-too-weak", Told(giver.Strength), wanted);
        }

        if (target.Volume is { } full && !(full > 0 && full <= capacity))
        {
            yield return Unanswerable.Of("volume-over-tank", Measured.Volume(full), Measured.Volume(capacity));
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
        var end = giver.Mixed(volume, ec, units);
        double[] shares =
            end - ec > 0.1 && giver.CanGive(units * (1 - FirstShare)) ? [FirstShare, 1 - FirstShare] : [1];
        foreach (var share in shares)
        {
            var part = units * share;
            steps.AddRange(giver.Give(part, share == FirstShare));
            ec = giver.Mixed(volume, ec, part);
            volume += part * giver.Bulk;
            steps.Add(Reading(ec));
        }

        return (volume, ec);
    }

    private static TankStep Reading(double ec) =>
        new(TankStepKind.Read, 0, Phrase.Of("tank.step.read-ec", Told(ec)), ec);

    private static Measured Told(double decisiemensPerMetre) => Measured.Ec(decisiemensPerMetre / 10);
}
