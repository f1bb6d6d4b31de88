using Dripwright.Engine.Layout;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Parts;

/// <summary>Counts what stands on the stand: pots, their outlets, emitters and what fills the pots.</summary>
internal static class PotParts
{
    public static void Count(PartsTally tally, Rig rig, RigLayout layout)
    {
        var spares = rig.Spares;
        var pots = 0;
        var emitters = 0;
        var shut = 0;
        Dictionary<string, (double Pieces, double Volume, double Fills)> filling = [];
        foreach (var row in layout.Rows)
        {
            tally.Add(row.Pot.Key, row.Pots.Count, Phrase.Of("part.where.rows"));
            var volume = row.Pots.Count * row.Pot.Volume;
            foreach (var bag in layout.MediumOf(row).Bags)
            {
                var (pieces, all, _) = filling.GetValueOrDefault(bag.Part);
                filling[bag.Part] = (pieces + (volume / bag.Fills), all + volume, bag.Fills);
            }

            pots += row.Pots.Count;
            emitters += row.Emitters.Count;
            shut += row.Pots.Where(p => !p.Planted).Sum(p => p.Emitters);
        }

        foreach (var piece in layout.Parts.Outlet.Pieces)
        {
            var seal = piece.Contains("seal", StringComparison.Ordinal);
            tally.Add(piece, pots, Phrase.Of("part.where.outlet"), seal ? spares.Seals : spares.Fittings);
        }

        tally.Add(layout.Parts.Emitter.Key, emitters, Phrase.Of("part.where.emitters"), spares.Emitters);
        foreach (var piece in layout.Parts.Emitter.Pieces)
        {
            tally.Add(piece, emitters, Phrase.Of("part.where.emitter"), spares.Emitters);
        }

        var size = SizeOfSmallParts(Microtube.Nearest(layout.Parts.Catalogue, rig.Feed.MicrotubeBore)?.Key);
        if (rig.Feed.InlineValves)
        {
            tally.Add($"inline-valve-{size}", emitters, Phrase.Of("part.where.valve"), spares.Emitters);
        }
        else
        {
            tally.Add($"goof-plug-{size}", shut, Phrase.Of("part.where.plug"), spares.Emitters);
        }

        foreach (var (part, (pieces, all, fills)) in filling)
        {
            tally.Add(
                part,
                (int)Math.Ceiling(pieces - 1e-9),
                Phrase.Of("part.where.coir"),
                note: Phrase.Of("part.note.coir", Measured.Volume(all), Measured.Volume(fills))
            );
        }
    }

    // Barbs, valves and plugs are sold by the tube's trade size.
    private static string SizeOfSmallParts(string? microtube) =>
        microtube is not null && microtube.EndsWith("mm", StringComparison.Ordinal) ? "4mm" : "1/4";
}
