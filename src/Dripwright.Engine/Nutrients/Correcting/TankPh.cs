using System.Globalization;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Chemistry.Solutions;

namespace Dripwright.Engine.Nutrients.Correcting;

/// <summary>Acid or base at the end of a correction, for what the tank holds by then.</summary>
internal static class TankPh
{
    /// <summary>The plan with its pH: what it comes to, and the steps that bring it right.</summary>
    /// <param name="plan">The plan without its pH.</param>
    /// <param name="reading">What was read.</param>
    /// <param name="target">What is wanted.</param>
    /// <param name="giver">What made it stronger.</param>
    /// <param name="water">The water filled in.</param>
    /// <param name="ph">What is known for it; null to leave pH to a bucket test.</param>
    /// <param name="steps">The plan's steps, added to.</param>
    /// <param name="notes">The plan's notes, added to.</param>
    public static TankPlan Add(
        TankPlan plan,
        TankReading reading,
        TankTarget target,
        Strengthener giver,
        MakeUpWater water,
        PhMeans? ph,
        List<TankStep> steps,
        List<string> notes
    )
    {
        double units = plan.SaltsFor + (2 * plan.StockEach);
        if (ph is null || (plan.Water > 0 && water.Contents is null) || (units > 0 && giver.Brings is null))
        {
            notes.Add(
                "For acid the contents of tank, water and stock are needed. Without them: take 10 L of the mixed tank in a bucket, add acid by the millilitre until the pH is right, and give the tank two thirds of that, litre for litre; read, then the rest."
            );
            return plan;
        }

        double kept = reading.Volume - plan.Drained;
        double total = plan.FinalVolume;
        Composition mixed =
            (ph.Tank * (kept / total))
            + ((water.Contents ?? Composition.Nothing) * (plan.Water / total))
            + ((giver.Brings ?? Composition.Nothing) * (units / total));
        SolutionConditions surroundings = ph.SolutionConditions with { Celsius = reading.Celsius };
        // What the analysis of the tank does not name shows in its measured pH, and is diluted with the tank's own water;
        // stock is made with the water that is filled in.
        double gap =
            (
                (SolutionPh.Gap(ph.Tank, reading.PH, surroundings with { CarbonDioxide = null }) * kept)
                + (water.Gap * (plan.Water + (units * giver.Bulk)))
            ) / total;
        plan = plan with { Mixed = mixed };
        Answer<Speciation> now = SolutionPh.Of(mixed, surroundings, gap);
        if (!now.Found)
        {
            notes.AddRange(now.Refusals.Select(r => $"{r.What} {r.Remedy}"));
            return plan;
        }

        plan = plan with { MixedPH = now.Value.PH };
        if (Math.Abs(now.Value.PH - target.PH) < 0.05)
        {
            notes.Add("pH is where it should be.");
            return plan;
        }

        bool down = now.Value.PH > target.PH;
        if (ph.Bottles.FirstOrDefault(b => b.IsAcid == down) is not { } bottle)
        {
            notes.Add(
                down
                    ? "pH must come down, and no acid is at hand."
                    : $"pH is about {Number(now.Value.PH)} then and must come up, and no base is at hand; it often rises by itself as plants take up nitrate."
            );
            return plan;
        }

        Answer<PhDose> dose = PhDosing.ToReach(mixed, total, target.PH, bottle, surroundings, gap);
        if (!dose.Found)
        {
            notes.AddRange(dose.Refusals.Select(r => $"{r.What} {r.Remedy}"));
            return plan;
        }

        Pour(steps, dose.Value.BottleVolume, bottle.Name, target.PH);
        notes.Add("EDTA and other chelating agents are left out of the pH; read again after a day in an aerated tank.");
        return plan with { PH = dose.Value, Cautions = [.. plan.Cautions, .. dose.Value.Cautions] };
    }

    private static void Pour(List<TankStep> steps, double volume, string name, double ph)
    {
        double first = volume * TankCorrection.FirstShare;
        steps.Add(
            new TankStep(
                TankStepKind.PH,
                first,
                $"Pour {TankWords.Millilitres(first)} of {name} slowly into the stirred tank, two thirds of the amount. Goggles and gloves."
            )
        );
        steps.Add(new TankStep(TankStepKind.Read, 0, "Let it mix for half an hour and read pH."));
        steps.Add(
            new TankStep(
                TankStepKind.PH,
                volume - first,
                $"Pour in up to {TankWords.Millilitres(volume - first)} more of {name}, until pH is {Number(ph)}."
            )
        );
    }

    private static string Number(double ph) => ph.ToString("0.0", CultureInfo.InvariantCulture);
}
