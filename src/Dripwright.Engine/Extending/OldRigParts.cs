using Dripwright.Engine.Parts;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Extending;

/// <summary>What a rig that is taken apart leaves on the bench.</summary>
internal static class OldRigParts
{
    /// <summary>[m] Lengths nearer than this are the same: half of the cut planner's grain.</summary>
    private const double Grain = 5e-6;

    /// <summary>Pieces, cut lengths and usable leftovers.</summary>
    /// <param name="plan">The old rig.</param>
    /// <param name="newTube">[m] Length of the new rig's small tubes.</param>
    public static IEnumerable<OnHand> Of(Plan plan, double newTube) =>
        [.. Pieces(plan), .. CutLengths(plan), .. Tubes(plan, newTube)];

    /// <summary>What of a list of parts on hand the old rig has not used up.</summary>
    /// <remarks>The list of the new rig is as a rule the old one's, copied.</remarks>
    public static IEnumerable<OnHand> NotUsedUp(IReadOnlyList<OnHand> onHand, Plan old)
    {
        var pieces = old
            .Parts.Lines.Where(line => line.EachLength <= 0 || IsCoil(line, old))
            .GroupBy(line => line.Part)
            .ToDictionary(group => group.Key, group => group.Sum(line => line.OnHand));
        List<(string Material, double Length)> stocks =
        [
            .. old.Parts.Cuts.SelectMany(
                cut => cut.Stocks.Where(stock => !stock.IsBought && stock.Pieces.Count > 0),
                (cut, stock) => (cut.Material, stock.Length)
            ),
        ];
        var names = old.Parts.Lines.GroupBy(l => l.Part).ToDictionary(g => g.Key, g => g.First().Name);
        foreach (var item in onHand)
        {
            var count = item.Count;
            if (pieces.TryGetValue(item.Part, out var used))
            {
                var taken = Math.Min(used, count);
                pieces[item.Part] = used - taken;
                count -= taken;
            }
            else if (item.Length is { } length && names.TryGetValue(item.Part, out var name))
            {
                while (
                    count > 0
                    && stocks.FindIndex(s => Phrase.Plain(s.Material) == name && IsSame(s.Length, length))
                        is >= 0
                            and var at
                )
                {
                    stocks.RemoveAt(at);
                    count--;
                }
            }

            if (count > 0)
            {
                yield return item with
                {
                    Count = count,
                };
            }
        }
    }

    public static bool IsSame(double one, double other) => Math.Abs(one - other) < 2 * Grain;

    // Filament has become joints, salts are dissolved.
    private static bool IsUsedUp(PartLine line) =>
        line.Section == SaltParts.Section || line.Part.StartsWith(StandParts.Filament, StringComparison.Ordinal);

    private static IEnumerable<OnHand> Pieces(Plan plan) =>
        plan
            .Parts.Lines.Where(line => line.EachLength <= 0 && line.OnHand + line.Buy > 0 && !IsUsedUp(line))
            .GroupBy(line => line.Part)
            .Select(group => new OnHand { Part = group.Key, Count = group.Sum(line => line.OnHand + line.Buy) });

    private static IEnumerable<OnHand> CutLengths(Plan plan)
    {
        foreach (var cut in plan.Parts.Cuts)
        {
            if (plan.Parts.Lines.FirstOrDefault(line => line.Name == Phrase.Plain(cut.Material)) is not { } line)
            {
                continue;
            }

            IEnumerable<double> lengths =
            [
                .. cut.Stocks.SelectMany(stock => stock.Pieces).Select(piece => piece.Length),
                .. cut.Leftovers,
            ];
            foreach (
                var same in lengths.GroupBy(length => Math.Round(length / (2 * Grain))).OrderByDescending(g => g.Key)
            )
            {
                yield return new OnHand
                {
                    Part = line.Part,
                    Count = same.Count(),
                    Length = same.Min(),
                };
            }
        }
    }

    // Cut one after the other from the coils. An end too short for a new tube still counts as spare length: it is told as
    // part of a tube, where that does not make two tubes of one.
    private static IEnumerable<OnHand> Tubes(Plan plan, double newTube)
    {
        var each = plan.Rig.Feed.MicrotubeLength;
        var pieces = plan.Layout.Rows.Sum(row => row.Emitters.Count);
        var line = plan.Parts.Lines.FirstOrDefault(l => IsCoil(l, plan));
        var fromOne = line is null || each <= 0 ? 0 : (int)((line.EachLength + 1e-9) / each);
        if (line is null || fromOne == 0 || pieces == 0)
        {
            return [];
        }

        if (line.OnHand > 0)
        {
            // Which of the coils on hand was cut how is not known: only the tubes themselves are sure.
            return [Tube(line, pieces, each)];
        }

        var opened = (pieces + fromOne - 1) / fromOne;
        List<OnHand> held = [];
        var whole = pieces;
        for (var coil = 1; coil <= opened; coil++)
        {
            var cut = coil < opened ? fromOne : pieces - ((opened - 1) * fromOne);
            var rest = line.EachLength - (cut * each);
            if (rest >= newTube)
            {
                held.Add(Tube(line, 1, rest));
            }
            else if (newTube <= each && Math.Floor((each + rest) / newTube) <= Math.Floor(each / newTube))
            {
                held.Add(Tube(line, 1, each + rest));
                whole--;
            }
        }

        held.Add(Tube(line, whole, each));
        held.Add(Tube(line, line.Buy - opened, line.EachLength));
        return held.Where(tube => tube.Count > 0 && tube.Length > 0);
    }

    private static OnHand Tube(PartLine line, int count, double length) =>
        new()
        {
            Part = line.Part,
            Count = count,
            Length = length,
        };

    private static bool IsCoil(PartLine line, Plan plan) =>
        line.EachLength > 0 && plan.Layout.Parts.Catalogue.Sundries.ContainsKey(line.Part);
}
