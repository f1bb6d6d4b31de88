using Dripwright.Engine;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Units;
using Dripwright.Engine.Wires;

namespace Dripwright.Language.Report;

/// <summary>Key figures of what hangs over the rows.</summary>
internal static class OverheadFigures
{
    /// <summary>The figures, or null where nothing hangs.</summary>
    public static KeyFigureGroup? Of(Plan plan, QuantityWords words)
    {
        if (plan.Overhead.Wires is not [_, ..] wires || plan.Overhead.Plant is not { } plant)
        {
            return null;
        }

        LoadedWire worst = wires.MaxBy(w => w.Loaded.Utilisation)!;
        double end = wires.Max(w => w.Loaded.Supports.Where(s => s.End).Max(s => s.Total));
        string whose =
            plant.Basis == CropLoadBasis.Plant
                ? Words.Of("figures.overhead.plant.loaded", words.Force(plant.ByArea))
                : Words.Of("figures.overhead.plant.standard", words.Force(plant.ByPlant));
        return new(
            FigureSubject.Overhead,
            Words.Of("figures.overhead.heading"),
            [
                new(Words.Of("figures.overhead.plant"), words.Force(plant.Force), whose),
                new(
                    Words.Of("figures.overhead.wire"),
                    words.Force(worst.Loaded.GreatestTension),
                    Words.Of("figures.overhead.wire.remark", QuantityWords.Percent(worst.Loaded.Utilisation))
                ),
                new(Words.Of("figures.overhead.end"), words.Force(end), Words.Of("figures.overhead.end.remark"))
                {
                    Chief = true,
                },
                new(
                    Words.Of("figures.overhead.sag"),
                    words.Length(wires.Min(w => w.Loaded.LowestHeight)),
                    Words.Of("figures.overhead.sag.remark", words.Length(plan.Rig.Overhead.Height))
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
            .. plan.Overhead.Wires.SelectMany(w => w.Loaded.Supports).Where(s => !s.End).Select(s => s.Down),
        ];
        if (inner.Length > 0)
        {
            string allowed = plan.Overhead.HookAllowed is { } most
                ? Words.Of("figures.overhead.hook.thread", words.Force(most))
                : Words.Of("figures.overhead.hook.unknown");
            yield return new(Words.Of("figures.overhead.hook"), words.Force(inner.Max()), allowed);
        }
    }

    private static IEnumerable<KeyFigure> Strings(Plan plan, QuantityWords words)
    {
        if (plan.Overhead.String is { } vine)
        {
            string clips = Words.Of(
                vine.Clips == 1 ? "figures.overhead.clips.one" : "figures.overhead.clips.many",
                words.Force(vine.EachClip),
                vine.Clips
            );
            string alone = Words.Of("figures.overhead.string.alone", words.Force(vine.OneLeft));
            yield return new(
                Words.Of("figures.overhead.string"),
                words.Force(vine.EachString),
                plan.Rig.Overhead.Strings > 1 ? $"{alone}; {clips}" : clips
            );
        }
    }

    private static IEnumerable<KeyFigure> Lamps(Plan plan, QuantityWords words)
    {
        if (plan.Rig.Overhead.Lamps is { } lamps)
        {
            yield return new(
                Words.Of("figures.overhead.lamps"),
                words.Length(lamps - plan.Rig.Overhead.Height),
                Words.Of("figures.overhead.lamps.remark", words.Length(RuleBook.Limit("lamps-close")))
            );
        }
    }
}
