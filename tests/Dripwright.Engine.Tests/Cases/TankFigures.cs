using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Nutrients.Correcting;
using Dripwright.Engine.Tending;

namespace Dripwright.Engine.Tests.Cases;

/// <summary>Figures of what is done at a tank after a reading.</summary>
internal static class TankFigures
{
    public static double? Of(string figure, TankLook? look, Plan plan)
    {
        if (look is null || plan.Nutrients is null)
        {
            return null;
        }

        var reading = new TankReading(look.Ec, look.Ph, look.Litres / 1000);
        var answer = NutrientTank.Correct(plan, reading);
        var tank = answer.Value;
        return figure switch
        {
            "litresAfterMending" => tank?.FinalVolume * 1000,
            "smallestPouredMillilitres" => tank?.Steps.Where(IsPoured).Min(step => (double?)step.Volume) * 1e6 ?? 1e6,
            "pourings" => tank?.Steps.Count(step => step.Kind != TankStepKind.Read),
            "drainedLitres" => tank?.Drained * 1000,
            "waterLitres" => tank?.Water * 1000,
            "ecAfterMending" => tank?.FinalEc,
            "acidMillilitres" => tank?.Steps.Where(step => step.Kind == TankStepKind.PH).Sum(step => step.Volume) * 1e6,
            "refused" => answer.Found ? 0 : 1,
            "mendBoronShare" => tank is null
                ? null
                : Share(plan, tank.Steps.SelectMany(step => step.Weigh), Constituent.Boron),
            "topUpBoronShare" => Share(plan, TopUp(plan, reading)?.Salts ?? [], Constituent.Boron),
            "topUpCopperShare" => Share(plan, TopUp(plan, reading)?.Salts ?? [], Constituent.Copper),
            "topUpAcidMillilitres" => AcidIn(TopUp(plan, reading)),
            _ => null,
        };
    }

    private static bool IsPoured(TankStep step) => step.Kind is not (TankStepKind.Salts or TankStepKind.Read);

    private static UptakeAdvice? TopUp(Plan plan, TankReading now) =>
        NutrientUptake
            .Between(plan, now with { Volume = plan.Nutrients!.Volume }, now, new PouredBetween(), days: 2)
            .Value;

    private static double? AcidIn(UptakeAdvice? advice) =>
        advice?.Salts.Where(salt => salt is { Order: 0, Bottle: null }).Sum(salt => salt.Measured) * 1e6;

    /// <summary>What is given of an element against nitrogen, over the same in the recipe.</summary>
    private static double? Share(Plan plan, IEnumerable<WeighedSalt> given, Constituent element)
    {
        var brought = given.Aggregate(Composition.Nothing, (sum, one) => sum + one.Brings);
        var recipe = plan.Nutrients!.Recipe.Lines.Aggregate(
            Composition.Nothing,
            (sum, line) => sum + (line.Salt.Brings * line.Concentration)
        );
        const Constituent Main = Constituent.NitrateNitrogen;
        return brought[Main] > 0 ? brought[element] / recipe[element] / (brought[Main] / recipe[Main]) : 0;
    }
}
