using System.Globalization;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Parts;

/// <summary>The small tubes from the feed line to the emitters, bought by the coil.</summary>
internal static class Microtube
{
    /// <summary>The coil whose bore comes nearest, or null where the catalogue has none.</summary>
    /// <param name="catalogue">The catalogue.</param>
    /// <param name="bore">[m] Bore wanted.</param>
    public static Sundry? Nearest(PartsCatalogue catalogue, double bore) =>
        catalogue
            .Sundries.Values.Where(s => s.PackLength > 0 && BoreOf(s.Key) is not null)
            .OrderBy(s => Math.Abs(BoreOf(s.Key)!.Value - bore))
            .ThenBy(s => s.Key, StringComparer.Ordinal)
            .FirstOrDefault();

    /// <summary>The line of the parts list, or null where no emitter has a tube.</summary>
    public static PartLine? Line(Rig rig, RigLayout layout)
    {
        // Counted as pieces of the longest: a coil cut for the longest gives the shorter ones too.
        List<double> lengths =
        [
            .. layout.Rows.SelectMany(r =>
                r.Emitters.Select(e => r.Pots[e.Pot - 1].Tube ?? rig.Feed.MicrotubeLength).Where(l => l > 0)
            ),
        ];
        var each = lengths.DefaultIfEmpty(0).Max();
        var pieces = lengths.Count;
        if (each <= 0 || pieces == 0)
        {
            return null;
        }

        var tube = Nearest(layout.Parts.Catalogue, rig.Feed.MicrotubeBore);
        if (tube is null)
        {
            var length = Phrase.Of("part.where.microtube.length", Measured.Length(pieces * each));
            return PartLines.Missing("microtube", Phrase.Of("part.microtube"), 1, length);
        }

        var onHand = rig
            .OnHand.Where(h => h.Part == tube.Key)
            .SelectMany(h => Enumerable.Repeat(h.Length ?? tube.PackLength, h.Count))
            .Where(length => length >= each)
            .OrderDescending()
            .ToList();
        (var without, var _) = Coils(pieces, each, 0, tube.PackLength, onHand);
        (var with, var used) = Coils(pieces, each, rig.Spares.Tube, tube.PackLength, onHand);
        var text = Phrase.Counted("part.note.microtube", pieces, Measured.Mark(each), Measured.Mark(rig.Spares.Tube));
        var needed = Math.Min(with, without) + used;
        return PartLines.Of(
            tube,
            tube.Key,
            needed,
            with + used - needed,
            used,
            Phrase.Of("part.where.microtube"),
            tube.PackLength,
            text
        );
    }

    /// <summary>Coils to buy, and pieces on hand used. A tube is never joined from two coils.</summary>
    private static (int Bought, int Used) Coils(int pieces, double each, double spare, double coil, List<double> onHand)
    {
        var used = 0;
        var left = pieces;
        var length = (pieces * each) + spare;
        while (used < onHand.Count && (left > 0 || length > 1e-9))
        {
            left -= PerCoil(onHand[used], each);
            length -= onHand[used];
            used++;
        }

        var perCoil = Math.Max(1, PerCoil(coil, each));
        var forPieces = Math.Max(0, (left + perCoil - 1) / perCoil);
        var forLength = Math.Max(0, (int)Math.Ceiling((length / coil) - 1e-9));
        return (Math.Max(forPieces, forLength), used);
    }

    private static int PerCoil(double coil, double each) => (int)Math.Floor((coil / each) + 1e-9);

    /// <summary>[m] The bore that a key such as <c>microtube-4mm</c> names.</summary>
    private static double? BoreOf(string key)
    {
        const string Start = "microtube-";
        if (!key.StartsWith(Start, StringComparison.Ordinal))
        {
            return null;
        }

        var size = key[Start.Length..];
        (var unit, var metres) = size.EndsWith("in", StringComparison.Ordinal) ? ("in", 0.0254) : ("mm", 0.001);
        return
            size.EndsWith(unit, StringComparison.Ordinal)
            && double.TryParse(size[..^2], NumberStyles.Float, CultureInfo.InvariantCulture, out var number)
            ? number * metres
            : null;
    }
}
