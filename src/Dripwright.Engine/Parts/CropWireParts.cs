using Dripwright.Engine.Layout;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;
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
        tally.Add(
            wire.Key,
            Rolls(lengths, wire.Roll),
            Phrase.Of("part.where.wire"),
            note: Phrase.Of("part.note.wire", Measured.Length(lengths.Sum()))
        );
        tally.Add("wire-turnbuckle", layout.Wires.Count, Phrase.Of("part.where.turnbuckle"));
        tally.Add("wire-clip", 4 * layout.Wires.Count, Phrase.Of("part.where.wire-clip"));
        var ends = rig.CropWire.Ends == WireEnds.Bolted ? 2 : 0;
        tally.Add("wire-eye-bolt", ends * layout.Wires.Count, Phrase.Of("part.where.eye-bolt"));
        tally.Add(
            "wire-hook",
            layout.Wires.Sum(w => w.Supports.Count - ends),
            Phrase.Of("part.where.hook"),
            note: Phrase.Of("part.note.hook")
        );
        var strings = rig.CropWire.Strings * layout.Wires.Sum(w => w.Hanging.Sum(h => h.Plants));
        tally.Add("vine-hook", strings, Phrase.Of("part.where.vine-hook"), spareShare: 0.1);
        if (cropWire.String is { } vine && layout.Parts.Catalogue.Sundries.GetValueOrDefault("vine-string") is { } roll)
        {
            // A string is never knotted from two rolls.
            var perRoll = Math.Max(1, (int)Math.Floor((roll.PackLength / vine.Length) + 1e-9));
            var rolls = (strings + perRoll - 1) / perRoll;
            tally.Add(
                "vine-string",
                rolls,
                Phrase.Of("part.where.string"),
                note: Phrase.Counted("part.note.string", strings, Measured.Length(vine.Length))
            );
            tally.Add("vine-clip", strings * vine.Clips, Phrase.Of("part.where.vine-clip"), spareShare: 0.1);
        }
    }

    /// <summary>Rolls from which all wires can be cut whole: the longest first into the first roll that has room.</summary>
    private static int Rolls(double[] lengths, double roll)
    {
        List<double> left = [];
        var whole = 0;
        foreach (var length in lengths.OrderDescending())
        {
            if (length > roll)
            {
                // Longer than a roll: joined from rolls with clips over a support.
                whole += (int)Math.Ceiling((length / roll) - 1e-9);
                continue;
            }

            var at = left.FindIndex(l => l >= length - 1e-9);
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
