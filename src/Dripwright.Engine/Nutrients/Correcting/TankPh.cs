using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Chemistry.Solutions;
using Dripwright.Engine.Phrases;

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
        List<Phrase> notes
    )
    {
        var units = plan.SaltsFor + (2 * plan.StockEach);
        if (ph is null || (plan.Water > 0 && water.Contents is null) || (units > 0 && giver.Brings is null))
        {
            notes.Add(Phrase.Of("tank.note.bucket-test"));
            return plan;
        }

        var kept = reading.Volume - plan.Drained;
        var total = plan.FinalVolume;
        var mixed =
            (ph.Tank * (kept / total))
            + ((water.Contents ?? Composition.Nothing) * (plan.Water / total))
            + ((giver.Brings ?? Composition.Nothing) * (units / total));
        var surroundings = ph.SolutionConditions with { Celsius = reading.Celsius };
        // What the analysis of the tank does not name shows in its measured pH, and is diluted with the tank's own water;
        // stock is made with the water that is filled in.
        var gap =
            (
                (SolutionPh.Gap(ph.Tank, reading.PH, surroundings with { CarbonDioxide = null }) * kept)
                + (water.Gap * (plan.Water + (units * giver.Bulk)))
            ) / total;
        plan = plan with { Mixed = mixed };
        var now = SolutionPh.Of(mixed, surroundings, gap);
        if (!now.Found)
        {
            notes.AddRange(now.Refusals.SelectMany(Both));
            return plan;
        }

        plan = Reads(plan with { MixedPH = now.Value.PH }, mixed, surroundings, gap);
        if (Math.Abs(now.Value.PH - target.PH) < 0.05)
        {
            notes.Add(Phrase.Of("tank.note.ph-right"));
            return plan;
        }

        var down = now.Value.PH > target.PH;
        if (ph.Bottles.FirstOrDefault(b => b.IsAcid == down) is not { } bottle)
        {
            notes.Add(
                down
                    ? Phrase.Of("tank.note.no-acid", Measured.PH(now.Value.PH))
                    : Phrase.Of("tank.note.no-base", Measured.PH(now.Value.PH))
            );
            return plan;
        }

        var dose = PhDosing.ToReach(mixed, total, target.PH, bottle, surroundings, gap);
        if (!dose.Found)
        {
            notes.AddRange(dose.Refusals.SelectMany(Both));
            return plan;
        }

        if (dose.Value.BottleVolume < TankCorrection.LeastDose)
        {
            notes.Add(
                Phrase.Of("tank.note.ph-too-little", Measured.MeasuredOut(TankCorrection.LeastDose), bottle.Name)
            );
            return plan;
        }

        Pour(steps, dose.Value.BottleVolume, bottle.Name, target.PH);
        notes.Add(Phrase.Of("tank.note.chelates"));
        plan = Reads(plan, dose.Value.Solution, surroundings, gap);
        if (plan is { PHAtOnce: { } once, PHAfterDay: { } later } && Math.Abs(once - later) > 0.1)
        {
            notes.Add(Phrase.Of("tank.note.reads", Measured.PH(once), Measured.PH(later)));
        }

        return plan with
        {
            PH = dose.Value,
            Cautions = [.. plan.Cautions, .. dose.Value.Cautions],
        };
    }

    // At once the carbon dioxide that acid sets free is still there; after a day of bubbling it has gone.
    private static TankPlan Reads(TankPlan plan, Composition tank, SolutionConditions surroundings, double gap) =>
        plan with
        {
            PHAtOnce = PHOf(tank, surroundings with { CarbonDioxide = null }, gap),
            PHAfterDay = PHOf(tank, surroundings, gap),
        };

    private static double? PHOf(Composition tank, SolutionConditions surroundings, double gap) =>
        SolutionPh.Of(tank, surroundings, gap) is { Found: true } found ? found.Value.PH : null;

    private static void Pour(List<TankStep> steps, double volume, string name, double ph)
    {
        var first = volume * TankCorrection.FirstShare;
        if (volume - first < TankCorrection.LeastDose)
        {
            steps.Add(Acid("tank.step.acid", volume));
            return;
        }

        steps.Add(Acid("tank.step.acid.part", first));
        steps.Add(new TankStep(TankStepKind.Read, 0, Phrase.Of("tank.step.read-ph")));
        steps.Add(Acid("tank.step.acid.rest", volume - first));

        TankStep Acid(string key, double amount) =>
            new(TankStepKind.PH, amount, Phrase.Of(key, Measured.MeasuredOut(amount), name, Measured.PH(ph)));
    }

    private static IEnumerable<Phrase> Both(Unanswerable refusal) => [refusal.What, refusal.Remedy];
}
