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

        LoadedWire worst = wires.MaxBy(w => w.Loaded.Utilisation)!;
        double end = wires.Max(w => w.Loaded.Supports.Where(s => s.End).Max(s => s.Total));
        string whose =
            plant.Basis == CropLoadBasis.Plant
                ? $"a loaded plant; the standard's load on its floor would be {words.Force(plant.ByArea)}"
                : $"the standard's load on its floor; a loaded plant would be {words.Force(plant.ByPlant)}";
        return new(
            FigureSubject.CropWire,
            "Crop wire",
            [
                new("Each plant hangs with", words.Force(plant.Force), $"by {whose}"),
                new(
                    "Crop wire pulls with",
                    words.Force(worst.Loaded.GreatestTension),
                    $"{QuantityWords.Percent(worst.Loaded.Utilisation)} of what it may"
                ),
                new(
                    "Each end is pulled with",
                    words.Force(end),
                    "by its crop wire; a professional looks at what holds it"
                )
                {
                    Chief = true,
                },
                new(
                    "Wire sags to",
                    words.Length(wires.Min(w => w.Loaded.LowestHeight)),
                    $"from {words.Length(plan.Rig.CropWire.Height)} over the row's floor"
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
            string allowed = plan.CropWire.HookAllowed is { } most
                ? $"its thread may take {words.Force(most)} in this wood"
                : "nobody's figure for what it is screwed into: a professional says";
            yield return new("Each hook between carries", words.Force(inner.Max()), allowed);
        }
    }

    private static IEnumerable<KeyFigure> Strings(Plan plan, QuantityWords words)
    {
        if (plan.CropWire.String is { } vine)
        {
            string alone = plan.Rig.CropWire.Strings > 1 ? $"{words.Force(vine.OneLeft)} when the others slip; " : "";
            yield return new(
                "Each string carries",
                words.Force(vine.EachString),
                $"{alone}{words.Force(vine.EachClip)} on each of {QuantityWords.Counted(vine.Clips, "clip")}"
            );
        }
    }

    private static IEnumerable<KeyFigure> Lamps(Plan plan, QuantityWords words)
    {
        if (plan.Rig.CropWire.Lamps is { } lamps)
        {
            yield return new(
                "Clear of the lamps by",
                words.Length(lamps - plan.Rig.CropWire.Height),
                $"at least {words.Length(RuleBook.Limit("lamps-close"))} wanted"
            );
        }
    }
}
