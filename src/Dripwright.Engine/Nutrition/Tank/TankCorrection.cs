using System.Globalization;
using Dripwright.Engine.Nutrition.Chemistry;
using Dripwright.Engine.Nutrition.Strength;

namespace Dripwright.Engine.Nutrition.Tank;

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
    /// <param name="stock">The stock pair.</param>
    /// <param name="water">The water to fill up with.</param>
    /// <param name="capacity">[m³] What the tank holds when full.</param>
    /// <param name="ph">What is needed to reckon acid; null to leave pH to a bucket test.</param>
    /// <returns>The plan, or why there is none and what would help.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The capacity is not positive, or the target is not a possible one.</exception>
    public static Answer<TankPlan> Plan(
        TankReading reading,
        TankTarget target,
        StockPair stock,
        MakeUpWater water,
        double capacity,
        PhMeans? ph = null
    )
    {
        ArgumentNullException.ThrowIfNull(reading);
        ArgumentNullException.ThrowIfNull(target);
        ArgumentNullException.ThrowIfNull(stock);
        ArgumentNullException.ThrowIfNull(water);
        Guard.Positive(capacity);
        Guard.Between(target.DecisiemensPerMetre, 0, TankReading.HighestEc);
        Guard.Between(target.PH, 4, 9);
        IReadOnlyList<Refusal> faults =
        [
            .. reading.Faults(capacity),
            .. Hindrances(reading, target, stock, water, capacity),
        ];
        if (faults.Count > 0)
        {
            return Answer<TankPlan>.No(faults);
        }

        Amounts amounts = Amounts.For(reading, target, stock.Strength, water.DecisiemensPerMetre, capacity);
        List<TankStep> steps = [];
        List<string> notes = [];
        double volume = reading.Volume - amounts.Drained;
        double ec = reading.DecisiemensPerMetre;
        if (amounts.Drained > 0)
        {
            steps.Add(new TankStep(TankStepKind.Drain, amounts.Drained, $"Let out {Litres(amounts.Drained)}."));
            notes.Add("What is let out is feed: give it to garden plants, away from drains and ponds.");
        }

        if (amounts.Water > 0)
        {
            ec = Blend.Mixed(volume, ec, amounts.Water, water.DecisiemensPerMetre);
            volume += amounts.Water;
            steps.Add(new TankStep(TankStepKind.Water, amounts.Water, $"Fill in {Litres(amounts.Water)} of water."));
            steps.Add(Reading(ec));
        }

        if (amounts.Stock > 0)
        {
            (volume, ec) = AddStock(steps, amounts.Stock, stock.Strength, volume, ec);
        }

        if (steps.Count == 0)
        {
            notes.Add("EC is where it should be.");
        }

        PhDose? dose = Acid(reading, target, stock, water, amounts, ph, steps, notes);
        return Answer<TankPlan>.Of(
            new TankPlan(
                amounts.Drained,
                amounts.Water,
                amounts.Stock / 2,
                volume,
                ec,
                dose,
                steps,
                notes,
                dose?.Cautions ?? []
            )
        );
    }

    private static IEnumerable<Refusal> Hindrances(
        TankReading reading,
        TankTarget target,
        StockPair stock,
        MakeUpWater water,
        double capacity
    )
    {
        double want = target.DecisiemensPerMetre;
        if (!double.IsFinite(water.DecisiemensPerMetre) || water.DecisiemensPerMetre is < 0 or > TankReading.HighestEc)
        {
            yield return new Refusal(
                $"An EC of {Number(water.DecisiemensPerMetre)} dS/m cannot be that of a fill-up water.",
                "Read the water again, in dS/m."
            );
            yield break;
        }

        if (want <= water.DecisiemensPerMetre && reading.DecisiemensPerMetre > want + SmallestStep)
        {
            double share = 100 * want / water.DecisiemensPerMetre;
            yield return new Refusal(
                $"The water alone reads {Number(water.DecisiemensPerMetre)} dS/m: no amount of it brings the tank down to {Number(want)}.",
                want > 0
                    ? $"Fill up with rain or reverse-osmosis water, or blend: less than {Whole(share)} % of this water, the rest clean."
                    : "Fill up with rain or reverse-osmosis water, and aim above nought."
            );
        }
        else if (want < water.DecisiemensPerMetre && target.Volume is { } wished && wished > reading.Volume)
        {
            yield return new Refusal(
                $"Filling up with water that reads {Number(water.DecisiemensPerMetre)} dS/m takes the tank above the {Number(want)} wanted.",
                "Fill up with rain or reverse-osmosis water, or aim higher."
            );
        }

        if (want >= stock.Strength)
        {
            yield return new Refusal(
                $"The stock pair itself counts for {Number(stock.Strength)} dS/m, not more than the {Number(want)} wanted.",
                "Make a stronger stock, or look at its dose again."
            );
        }

        if (target.Volume is { } full && !(full > 0 && full <= capacity))
        {
            yield return new Refusal(
                $"{Litres(full)} are wanted in a tank that holds {Litres(capacity)}.",
                "Name a volume that fits."
            );
        }
    }

    private static (double Volume, double Ec) AddStock(
        List<TankStep> steps,
        double stock,
        double strength,
        double volume,
        double ec
    )
    {
        double end = Blend.Mixed(volume, ec, stock, strength);
        double[] shares = end - ec > 0.1 ? [FirstShare, 1 - FirstShare] : [1];
        foreach (double share in shares)
        {
            double part = stock * share;
            ec = Blend.Mixed(volume, ec, part, strength);
            volume += part;
            string again = share == FirstShare ? ", two thirds of the amount" : "";
            steps.Add(
                new TankStep(
                    TankStepKind.StockA,
                    part / 2,
                    $"Pour in {Millilitres(part / 2)} of stock A{again}, and let it mix."
                )
            );
            steps.Add(
                new TankStep(
                    TankStepKind.StockB,
                    part / 2,
                    $"Pour in {Millilitres(part / 2)} of stock B{again}, and let it mix."
                )
            );
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

    private static PhDose? Acid(
        TankReading reading,
        TankTarget target,
        StockPair stock,
        MakeUpWater water,
        Amounts amounts,
        PhMeans? ph,
        List<TankStep> steps,
        List<string> notes
    )
    {
        if (ph is null || (amounts.Water > 0 && water.Contents is null) || (amounts.Stock > 0 && stock.Both is null))
        {
            notes.Add(
                "For acid the contents of tank, water and stock are needed. Without them: take 10 L of the mixed tank in a bucket, add acid by the millilitre until the pH is right, and give the tank two thirds of that, litre for litre; read, then the rest."
            );
            return null;
        }

        double kept = reading.Volume - amounts.Drained;
        double total = kept + amounts.Water + amounts.Stock;
        Composition mixed =
            (ph.Tank * (kept / total))
            + ((water.Contents ?? Composition.Nothing) * (amounts.Water / total))
            + ((stock.Both ?? Composition.Nothing) * (amounts.Stock / total));
        Surroundings surroundings = ph.Surroundings with { Celsius = reading.Celsius };
        // What the analysis of the tank does not name shows in its measured pH, and is diluted with the tank's own water.
        double gap = SolutionPh.Gap(ph.Tank, reading.PH, surroundings with { CarbonDioxide = null }) * kept / total;
        Answer<Speciation> now = SolutionPh.Of(mixed, surroundings, gap);
        if (!now.Found)
        {
            notes.AddRange(now.Refusals.Select(r => $"{r.What} {r.Remedy}"));
            return null;
        }

        if (Math.Abs(now.Value.PH - target.PH) < 0.05)
        {
            notes.Add("pH is where it should be.");
            return null;
        }

        bool down = now.Value.PH > target.PH;
        if (ph.Bottles.FirstOrDefault(b => b.IsAcid == down) is not { } bottle)
        {
            notes.Add(
                down
                    ? "pH must come down, and no acid is at hand."
                    : "pH must come up, and no base is at hand; it often rises by itself as plants take up nitrate."
            );
            return null;
        }

        Answer<PhDose> dose = PhDosing.ToReach(mixed, total, target.PH, bottle, surroundings, gap);
        if (!dose.Found)
        {
            notes.AddRange(dose.Refusals.Select(r => $"{r.What} {r.Remedy}"));
            return null;
        }

        double first = dose.Value.BottleVolume * FirstShare;
        steps.Add(
            new TankStep(
                TankStepKind.PH,
                first,
                $"Pour {Millilitres(first)} of {bottle.Name} slowly into the stirred tank, two thirds of the amount. Goggles and gloves."
            )
        );
        steps.Add(new TankStep(TankStepKind.Read, 0, "Let it mix for half an hour and read pH."));
        steps.Add(
            new TankStep(
                TankStepKind.PH,
                dose.Value.BottleVolume - first,
                $"Pour in up to {Millilitres(dose.Value.BottleVolume - first)} more of {bottle.Name}, until pH is {target.PH.ToString("0.0", CultureInfo.InvariantCulture)}."
            )
        );
        notes.Add("EDTA and other chelating agents are left out of the pH; read again after a day in an aerated tank.");
        return dose.Value;
    }

    private static string Number(double value) => value.ToString("0.00", CultureInfo.InvariantCulture);

    private static string Whole(double value) => value.ToString("0", CultureInfo.InvariantCulture);

    private static string Litres(double volume) =>
        string.Create(CultureInfo.InvariantCulture, $"{volume * 1000:0.#} L");

    private static string Millilitres(double volume) =>
        volume < 1e-5
            ? string.Create(CultureInfo.InvariantCulture, $"{volume * 1e6:0.0} mL")
            : string.Create(CultureInfo.InvariantCulture, $"{volume * 1e6:0} mL");
}
