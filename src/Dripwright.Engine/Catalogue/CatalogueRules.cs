using System.Globalization;

namespace Dripwright.Engine.Catalogue;

/// <summary>What the fields of one entry must be to each other, for our rows and the user's alike.</summary>
internal static class CatalogueRules
{
    public static IEnumerable<Misfit> Misfits(CatalogueRow entry) =>
        entry switch
        {
            PipeSize pipe => Of(pipe),
            TubeSize tube => Of(tube),
            PotType pot => Of(pot),
            TankType tank => Of(tank),
            EmitterType emitter => Of(emitter),
            PumpModel pump => Of(pump),
            FittingType fitting => Of(fitting),
            DrainOutletType outlet => Of(outlet),
            Sundry sundry => Of(sundry),
            CropType crop => Of(crop),
            _ => [],
        };

    private static IEnumerable<Misfit> Of(PipeSize pipe)
    {
        if (pipe.InsideDiameter >= pipe.OutsideDiameter)
        {
            yield return new(nameof(pipe.InsideDiameter), "less than the outside diameter");
        }
        if (!Rising(pipe.StockLengths))
        {
            yield return new(nameof(pipe.StockLengths), "lengths that rise, none twice");
        }
    }

    private static IEnumerable<Misfit> Of(FittingType fitting)
    {
        if (fitting.Clamps > 0 && fitting.Family is (PipeFamily.PvcSchedule40 or PipeFamily.PvcMetric))
        {
            yield return new(nameof(fitting.Clamps), "0 on rigid pipe");
        }
        if (fitting.LossBranch > 0 && fitting.Kind != FittingKind.Tee)
        {
            yield return new(nameof(fitting.LossBranch), "only on a tee");
        }
    }

    private static IEnumerable<Misfit> Of(TubeSize tube)
    {
        if (2 * tube.Wall >= tube.Outside)
        {
            yield return new(nameof(tube.Wall), "less than half the outside");
        }
        if (!Rising(tube.StockLengths))
        {
            yield return new(nameof(tube.StockLengths), "lengths that rise, none twice");
        }
    }

    private static IEnumerable<Misfit> Of(PotType pot)
    {
        if (pot.Round && pot.Length != pot.Width)
        {
            yield return new(nameof(pot.Width), "the same as the length, for a round pot");
        }
        if (pot.DrainHeight >= pot.Height)
        {
            yield return new(nameof(pot.DrainHeight), "less than the height");
        }
        // A straight draught can hold from a third of the block (a point at the base) to all of it.
        var block = pot.RimArea * pot.Height;
        if (pot.Volume > block * (1 + 1e-9) || pot.Volume < block / 3)
        {
            yield return new(
                nameof(pot.Volume),
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"between {block / 3 * 1000:0.##} L and {block * 1000:0.##} L, which is what footprint and height allow"
                )
            );
        }
    }

    private static IEnumerable<Misfit> Of(TankType tank)
    {
        if (tank.Shape == TankShape.Upright && tank.Length != tank.Width)
        {
            yield return new(nameof(tank.Width), "the same as the length, for an upright cylinder");
        }
        if (tank.Shape == TankShape.Lying && tank.Height != tank.Width)
        {
            yield return new(nameof(tank.Height), "the same as the width, for a lying cylinder");
        }
    }

    private static IEnumerable<Misfit> Of(EmitterType emitter)
    {
        if (emitter.MinPressure >= emitter.MaxPressure)
        {
            yield return new(nameof(emitter.MinPressure), "less than the greatest pressure");
        }
        if (emitter.RatedPressure < emitter.MinPressure || emitter.RatedPressure > emitter.MaxPressure)
        {
            yield return new(nameof(emitter.RatedPressure), "between the least and the greatest pressure");
        }
        if (emitter.Kind != EmitterKind.PressureCompensating && emitter.Exponent < 0.2)
        {
            yield return new(nameof(emitter.Exponent), "0.2 to 1 for an emitter that does not compensate");
        }
    }

    private static IEnumerable<Misfit> Of(PumpModel pump)
    {
        var curve = pump.Curve;
        var falls = curve.Count >= 2 && curve[0].Flow == 0 && curve[^1].Head >= 0;
        for (var i = 1; falls && i < curve.Count; i++)
        {
            falls = curve[i].Flow > curve[i - 1].Flow && curve[i].Head < curve[i - 1].Head;
        }
        if (!falls)
        {
            yield return new(
                nameof(pump.Curve),
                "points from flow 0 to head 0, each with more flow and less head than the one before"
            );
        }
    }

    private static IEnumerable<Misfit> Of(DrainOutletType outlet)
    {
        if (outlet.PotHole <= outlet.Bore)
        {
            yield return new(nameof(outlet.PotHole), "more than the bore");
        }
        if (outlet.PipeHole <= outlet.Bore)
        {
            yield return new(nameof(outlet.PipeHole), "more than the bore");
        }
    }

    private static IEnumerable<Misfit> Of(Sundry sundry)
    {
        string[] sections = ["plumbing", "irrigation", "hardware", "electrical", "tools", "garden", "printed"];
        if (!sections.Contains(sundry.Section))
        {
            yield return new(nameof(sundry.Section), "one of " + string.Join(", ", sections));
        }
    }

    private static IEnumerable<Misfit> Of(CropType crop)
    {
        if (crop.Hangs != crop.AreaLoad > 0)
        {
            yield return new(
                nameof(crop.AreaLoad),
                crop.Hangs ? "more than 0 for a crop that hangs on the wire" : "0 for a crop that stands by itself"
            );
        }
    }

    private static bool Rising(IReadOnlyList<double> lengths)
    {
        for (var i = 1; i < lengths.Count; i++)
        {
            if (lengths[i] <= lengths[i - 1])
            {
                return false;
            }
        }
        return true;
    }
}
