using Dripwright.Engine.Findings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Water;

/// <summary>Judges the reservoir.</summary>
internal sealed class ReservoirRules(Rig rig, RigLayout layout, ReservoirPlan plan, Judgement judge)
{
    private const string Place = "reservoir";

    public void Judge()
    {
        ComingBack();
        Inlet();
        Days();
        Tank();
    }

    private void ComingBack()
    {
        double thin = RuleBook.Limit("freeboard-thin");
        if (plan.Overflow > 0)
        {
            judge.Add(
                "overflow-on-stop",
                Place,
                "reservoir.fill",
                $"Topped up to its mark while the pump runs, it runs over by {judge.Words.Volume(plan.Overflow)} when the pump stops: {judge.Words.Volume(plan.BackInAll)} come back and there is room for {judge.Words.Volume(plan.Freeboard)}.",
                judge.Words.Volume(plan.BackInAll),
                $"at most {judge.Words.Volume(plan.Freeboard)}",
                "Keep the mark lower, fit a check valve, or take a larger reservoir."
            );
        }
        else if (plan.BackInAll * thin > plan.Freeboard)
        {
            judge.Add(
                "freeboard-thin",
                Place,
                "reservoir.fill",
                "There is hardly room for what comes back when the pump stops.",
                judge.Words.Volume(plan.Freeboard),
                $"at least {judge.Words.Volume(plan.BackInAll * thin)}",
                "Keep the mark lower, or fit a check valve."
            );
        }
    }

    private void Inlet()
    {
        if (layout.Parts.Pump is null)
        {
            return;
        }

        double atLowest = layout.Tank.Lowest - layout.Tank.Floor - layout.Parts.Pump.InletHeight;
        if (plan.InletCover <= 0)
        {
            judge.Add(
                "inlet-bare",
                "pump",
                "reservoir.fill",
                "While it runs, the water falls below the pump's inlet: it draws air.",
                judge.Words.Length(plan.InletCover),
                $"at least {judge.Words.Length(plan.InletCoverWanted)}",
                "Fill higher, set the pump lower, or take a larger reservoir."
            );
        }
        else if (Math.Min(plan.InletCover, atLowest) < plan.InletCoverWanted)
        {
            judge.Add(
                "inlet-cover-thin",
                "pump",
                "reservoir.lowestLevel",
                "At the lowest level you keep, the pump's inlet has little water over it and may draw air.",
                judge.Words.Length(Math.Min(plan.InletCover, atLowest)),
                $"at least {judge.Words.Length(plan.InletCoverWanted)}",
                "Keep the lowest level higher; the pump maker's least water level governs."
            );
        }

        if (plan.SecondsToEmptyLineOff is { } soon)
        {
            judge.Add(
                "runs-dry",
                Place,
                "pump.model",
                $"If the feed line comes off at the first row, the reservoir is on the floor in about {judge.Words.Time(soon)}.",
                judge.Words.Time(soon),
                "know it",
                "Clamp every barb, put a tray under the reservoir, and a float switch on the pump's cord."
            );
        }
    }

    private void Days()
    {
        double wanted = rig.Reservoir.DaysWanted / 86_400;
        if (plan.Days is { } days && days < wanted)
        {
            judge.Add(
                "days-short",
                Place,
                "reservoir.tank",
                $"In a hot week {QuantityWords.Count(plan.Plants)} plants empty it in {QuantityWords.Number(days)} days.",
                $"{QuantityWords.Number(days)} days",
                $"{QuantityWords.Number(wanted)} days",
                "Take a larger reservoir, a second one beside it, or a float valve from a top-up tank."
            );
        }
    }

    private void Tank()
    {
        double load = RuleBook.Limit("floor-load");
        if (plan.FloorPressure > load)
        {
            judge.Add(
                "floor-load",
                Place,
                "reservoir.tank",
                $"Full, the water alone weighs {judge.Words.Mass(plan.WaterMass)} and presses more on its footprint than a room's floor is commonly made for. On a concrete slab on the ground this is no matter.",
                Load(plan.FloorPressure),
                Load(load),
                "On an upper floor, a deck or a balcony ask the owner or an engineer; stand it beside a bearing wall."
            );
        }

        if (!rig.Reservoir.Lid)
        {
            judge.Add(
                "lid-missing",
                Place,
                "reservoir.lid",
                "Without a lid, light grows algae in the water and children can reach it.",
                "no lid",
                "a lid",
                "Cover it light-tight, with cut-outs for header, drain and cord."
            );
        }

        if (rig.Reservoir.Volume is { } measured)
        {
            double shape = layout.Parts.Tank.VolumeOfShape;
            double apart = Math.Abs(measured - shape) / shape;
            if (apart > RuleBook.Limit("tank-volume"))
            {
                judge.Add(
                    "tank-volume",
                    Place,
                    "reservoir.volume",
                    "The volume you give and the tank's measures do not agree; the plan uses the volume you measured.",
                    judge.Words.Volume(measured),
                    judge.Words.Volume(shape),
                    "Measure the tank again, or fill it once by bucket and mark the levels on its wall."
                );
            }
        }

        double hot = RuleBook.Limit("water-warm");
        if (rig.Reservoir.WaterTemperature > hot)
        {
            judge.Add(
                "water-warm",
                Place,
                "reservoir.waterTemperature",
                "Warm water holds little oxygen and roots rot more easily.",
                judge.Words.Temperature(rig.Reservoir.WaterTemperature),
                $"at most {judge.Words.Temperature(hot)}",
                "Shade or sink the reservoir, insulate it, run the pump less by day."
            );
        }
    }

    private string Load(double pascals) =>
        rig.Units == UnitSystem.Us
            ? $"{QuantityWords.Number(pascals / 47.880259)} lb/ft²"
            : $"{QuantityWords.Number(pascals / 1000)} kN/m²";
}
