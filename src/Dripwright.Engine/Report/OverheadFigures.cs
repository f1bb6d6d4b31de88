using Dripwright.Engine.Strength.Wire;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Report;

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
        string whose = plant.Basis == CropLoadBasis.Plant ? "a loaded plant" : "the standard's load per floor area";
        return new(
            "Overhead",
            [
                new("Each plant hangs with", words.Force(plant.Force), $"counted by {whose}"),
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
                    $"from {words.Length(plan.Rig.Overhead.Height)} over the row's floor"
                ),
            ]
        );
    }
}
