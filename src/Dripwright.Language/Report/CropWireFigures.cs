using Dripwright.Engine;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Units;
using Dripwright.Engine.Wires;

namespace Dripwright.Language.Report;

/// <summary>Key figures of what hangs over the rows.</summary>
internal static class CropWireFigures
{
    /// <summary>The figures, or null where nothing hangs.</summary>
    public static KeyFigureGroup? Of(Plan plan, QuantityWords words)
    {
        if (plan.CropWire.Wires is not [_, ..] wires || plan.CropWire.Plant is not { } plant)
        {
            return null;
        }

        var worst = wires.MaxBy(w => w.Loaded.Utilisation)!;
        var end = wires.Max(w => w.Loaded.Supports.Where(s => s.End).Max(s => s.Total));
        var whose =
            plant.Basis == CropLoadBasis.Plant
                ? Words.Of("figures.wire.plant.loaded", words.Force(plant.ByArea))
                : Words.Of("figures.wire.plant.standard", words.Force(plant.ByPlant));
        return new(
            FigureSubject.CropWire,
            Words.Of("figures.wire.heading"),
            [
                new(Words.Of("figures.wire.plant"), words.Force(plant.Force), whose),
                new(
                    Words.Of("figures.wire.wire"),
                    words.Force(worst.Loaded.GreatestTension),
                    Words.Of("figures.wire.wire.remark", QuantityWords.Percent(worst.Loaded.Utilisation))
                ),
                new(Words.Of("figures.wire.end"), words.Force(end), Words.Of("figures.wire.end.remark"))
                {
                    Chief = true,
                },
                new(
                    Words.Of("figures.wire.sag"),
                    words.Length(wires.Min(w => w.Loaded.LowestHeight)),
                    Words.Of("figures.wire.sag.remark", words.Length(plan.Rig.CropWire.Height))
                ),
                .. Hooks(plan, words),
                .. Strings(plan, words),
                .. Lamps(plan, words),
            ]
        );
    }

    private static IEnumerable<KeyFigure> Hooks(Plan plan, QuantityWords words)
    {
        double[] inner =
        [
            .. plan.CropWire.Wires.SelectMany(w => w.Loaded.Supports).Where(s => !s.End).Select(s => s.Down),
        ];
        if (inner.Length > 0)
        {
            var allowed = plan.CropWire.HookAllowed is { } most
                ? Words.Of("figures.wire.hook.thread", words.Force(most))
                : Words.Of("figures.wire.hook.unknown");
            yield return new(Words.Of("figures.wire.hook"), words.Force(inner.Max()), allowed);
        }
    }

    private static IEnumerable<KeyFigure> Strings(Plan plan, QuantityWords words)
    {
        if (plan.CropWire.String is { } vine)
        {
            var clips = Words.Of(
                vine.Clips == 1 ? "figures.wire.clips.one" : "figures.wire.clips.many",
                words.Force(vine.EachClip),
                vine.Clips
            );
            var alone = Words.Of("figures.wire.string.alone", words.Force(vine.OneLeft));
            yield return new(
                Words.Of("figures.wire.string"),
                words.Force(vine.EachString),
                plan.Rig.CropWire.Strings > 1 ? $"{alone}; {clips}" : clips
            );
        }
    }

    private static IEnumerable<KeyFigure> Lamps(Plan plan, QuantityWords words)
    {
        if (plan.Rig.CropWire.Lamps is { } lamps)
        {
            yield return new(
                Words.Of("figures.wire.lamps"),
                words.Length(lamps - plan.Rig.CropWire.Height),
                Words.Of("figures.wire.lamps.remark", words.Length(RuleBook.Limit("lamps-close")))
            );
        }
    }
}
