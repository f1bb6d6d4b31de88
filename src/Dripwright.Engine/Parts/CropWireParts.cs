using Dripwright.Engine.Layout;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;
using Dripwright.Engine.Wires;

namespace Dripwright.Engine.Parts;

/// <summary>Counts wire, hooks, clips and strings of what hangs over the rows.</summary>
internal static class CropWireParts
{
    /// <summary>[m] Wire beyond its supports at each end, to pass through the hook and back. Common practice.</summary>
    private const double Tail = 0.5;

    public static void Count(PartsTally tally, Rig rig, RigLayout layout, CropWirePlan cropWire)
    {
        if (layout.Parts.Wire is not { } wire || cropWire.Wires.Count == 0)
        {
            return;
        }

        double[] lengths = [.. layout.Wires.Select(w => w.Supports[^1] - w.Supports[0] + (2 * Tail))];
        string total = QuantityText.Format(Dimension.Length, lengths.Sum(), rig.Units);
        tally.Add(wire.Key, Rolls(lengths, wire.Roll), "over the rows", note: $"{total} with tails");
        tally.Add("wire-turnbuckle", layout.Wires.Count, "one end of each crop wire, to tighten it");
        tally.Add("wire-clip", 4 * layout.Wires.Count, "two at each end of each crop wire");
        int ends = rig.CropWire.Ends == WireEnds.Bolted ? 2 : 0;
        tally.Add("wire-eye-bolt", ends * layout.Wires.Count, "ends of the crop wire, through post or frame");
        tally.Add(
            "wire-hook",
            layout.Wires.Sum(w => w.Supports.Count - ends),
            "supports of the crop wire",
            note: "into framing, never into board or plaster"
        );
        int strings = rig.CropWire.Strings * layout.Wires.Sum(w => w.Hanging.Sum(h => h.Plants));
        tally.Add("vine-hook", strings, "one for each string", spareShare: 0.1);
        if (cropWire.String is { } vine && layout.Parts.Catalogue.Sundries.GetValueOrDefault("vine-string") is { } roll)
        {
            string each = QuantityText.Format(Dimension.Length, vine.Length, rig.Units);
            // A string is never knotted from two rolls.
            int perRoll = Math.Max(1, (int)Math.Floor((roll.PackLength / vine.Length) + 1e-9));
            int rolls = (strings + perRoll - 1) / perRoll;
            tally.Add(
                "vine-string",
                rolls,
                "wound on the hooks",
                note: $"{Labels.Of(strings)} strings of {each}; new each crop"
            );
            tally.Add("vine-clip", strings * vine.Clips, "stem to string", spareShare: 0.1);
        }
    }

    /// <summary>Rolls from which all wires can be cut whole: the longest first into the first roll that has room.</summary>
    private static int Rolls(double[] lengths, double roll)
    {
        List<double> left = [];
        int whole = 0;
        foreach (double length in lengths.OrderDescending())
        {
            if (length > roll)
            {
                // Longer than a roll: joined from rolls with clips over a support.
                whole += (int)Math.Ceiling((length / roll) - 1e-9);
                continue;
            }

            int at = left.FindIndex(l => l >= length - 1e-9);
            if (at < 0)
            {
                left.Add(roll - length);
            }
            else
            {
                left[at] -= length;
            }
        }

        return whole + left.Count;
    }
}
