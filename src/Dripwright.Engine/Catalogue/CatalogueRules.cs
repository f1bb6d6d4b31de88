using System.Globalization;
using Dripwright.Engine.Phrases;

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
            yield return new(nameof(pipe.InsideDiameter), Phrase.Of("fault.row.inside-outside"));
        }
        if (!Rising(pipe.StockLengths))
        {
            yield return new(nameof(pipe.StockLengths), Phrase.Of("fault.row.lengths-rise"));
        }
    }

    private static IEnumerable<Misfit> Of(FittingType fitting)
    {
        if (fitting.Clamps > 0 && fitting.Family is (PipeFamily.PvcSchedule40 or PipeFamily.PvcMetric))
        {
            yield return new(nameof(fitting.Clamps), Phrase.Of("fault.row.no-clamps"));
        }
        if (fitting.LossBranch > 0 && fitting.Kind != FittingKind.Tee)
        {
            yield return new(nameof(fitting.LossBranch), Phrase.Of("fault.row.tee-only"));
        }
    }

    private static IEnumerable<Misfit> Of(TubeSize tube)
    {
        if (2 * tube.Wall >= tube.Outside)
        {
            yield return new(nameof(tube.Wall), Phrase.Of("fault.row.tube-wall"));
        }
        if (!Rising(tube.StockLengths))
        {
            yield return new(nameof(tube.StockLengths), Phrase.Of("fault.row.lengths-rise"));
        }
    }

    private static IEnumerable<Misfit> Of(PotType pot)
    {
        if (pot.Round && pot.Length != pot.Width)
        {
            yield return new(nameof(pot.Width), Phrase.Of("fault.row.round-pot"));
        }
        if (pot.DrainHeight >= pot.Height)
        {
            yield return new(nameof(pot.DrainHeight), Phrase.Of("fault.row.below-height"));
        }
        // A straight draught can hold from a third of the block (a point at the base) to all of it.
        var block = pot.RimArea * pot.Height;
        if (pot.Volume > block * (1 + 1e-9) || pot.Volume < block / 3)
        {
            yield return new(nameof(pot.Volume), Phrase.Of("fault.row.pot-volume", Litres(block / 3), Litres(block)));
        }
    }

    private static IEnumerable<Misfit> Of(TankType tank)
    {
        if (tank.Shape == TankShape.Upright && tank.Length != tank.Width)
        {
            yield return new(nameof(tank.Width), Phrase.Of("fault.row.upright-tank"));
        }
        if (tank.Shape == TankShape.Lying && tank.Height != tank.Width)
        {
            yield return new(nameof(tank.Height), Phrase.Of("fault.row.lying-tank"));
        }
    }

    private static IEnumerable<Misfit> Of(EmitterType emitter)
    {
        if (emitter.MinPressure >= emitter.MaxPressure)
        {
            yield return new(nameof(emitter.MinPressure), Phrase.Of("fault.row.least-pressure"));
        }
        if (emitter.RatedPressure < emitter.MinPressure || emitter.RatedPressure > emitter.MaxPressure)
        {
            yield return new(nameof(emitter.RatedPressure), Phrase.Of("fault.row.rated-pressure"));
        }
        if (emitter.Kind != EmitterKind.PressureCompensating && emitter.Exponent < 0.2)
        {
            yield return new(nameof(emitter.Exponent), Phrase.Of("fault.row.emitter-exponent"));
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
            yield return new(nameof(pump.Curve), Phrase.Of("fault.row.pump-curve"));
        }
    }

    private static IEnumerable<Misfit> Of(DrainOutletType outlet)
    {
        if (outlet.PotHole <= outlet.Bore)
        {
            yield return new(nameof(outlet.PotHole), Phrase.Of("fault.row.more-than-bore"));
        }
        if (outlet.PipeHole <= outlet.Bore)
        {
            yield return new(nameof(outlet.PipeHole), Phrase.Of("fault.row.more-than-bore"));
        }
    }

    private static IEnumerable<Misfit> Of(Sundry sundry)
    {
        string[] sections = ["plumbing", "irrigation", "hardware", "electrical", "tools", "garden", "printed"];
        if (!sections.Contains(sundry.Section))
        {
            yield return new(
                nameof(sundry.Section),
                Phrase.Of("fault.field-unknown.expected", string.Join(", ", sections))
            );
        }
    }

    private static IEnumerable<Misfit> Of(CropType crop)
    {
        if (crop.Hangs != crop.AreaLoad > 0)
        {
            yield return new(
                nameof(crop.AreaLoad),
                Phrase.Of(crop.Hangs ? "fault.row.crop-hangs" : "fault.row.crop-stands")
            );
        }
    }

    // In litres, whatever the reader's units: rows of the catalogue give both.
    private static string Litres(double cubicMetres) =>
        (cubicMetres * 1000).ToString("0.##", CultureInfo.InvariantCulture) + " L";

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
