using System.Globalization;
using System.Text.Json.Nodes;
using Dripwright.Engine.Rigs;

namespace Dripwright.Workbench.Editing;

/// <summary>What the rig file says of one pot; null where it leaves a thing to the feed.</summary>
/// <param name="Crop">Crop tag.</param>
/// <param name="Plants">Plants in it; null where the crop tells.</param>
/// <param name="Emitters">Emitters at it.</param>
/// <param name="ValveOpen">How far its inline valves are open, as written.</param>
public sealed record PotPlanting(string Crop, int? Plants, int? Emitters, string? ValveOpen)
{
    /// <summary>What stands in each pot of a row, left to right; null for an empty pot.</summary>
    /// <param name="row">The row as the rig file has it.</param>
    /// <param name="pots">Pots in the row.</param>
    public static PotPlanting?[] Of(JsonObject? row, int pots)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(pots, 1);
        var each = new PotPlanting?[pots];
        if (row?["planting"] is not JsonArray entries)
        {
            Array.Fill(each, new PotPlanting("", null, null, null));
            return each;
        }

        foreach (var entry in entries.OfType<JsonObject>())
        {
            var made = new PotPlanting(
                Text(entry["crop"]) ?? "tomato",
                Whole(entry["plants"]),
                Whole(entry["emitters"]),
                Text(entry["valveOpen"])
            );
            if (PotRange.TryParse(Text(entry["pots"]) ?? "all", pots, out var named, out _))
            {
                foreach (var pot in named)
                {
                    each[pot - 1] = made;
                }
            }
        }

        return each;
    }

    /// <summary>The planting of a row as it stands in a rig file: pots that are alike share an entry.</summary>
    /// <param name="each">What stands in each pot.</param>
    public static JsonArray Write(IReadOnlyList<PotPlanting?> each)
    {
        ArgumentNullException.ThrowIfNull(each);
        var made = new JsonArray();
        foreach (
            var alike in each.Select((planting, index) => (planting, pot: index + 1))
                .Where(at => at.planting is not null)
                .GroupBy(at => at.planting!)
        )
        {
            var entry = new JsonObject
            {
                ["pots"] = Ranges([.. alike.Select(at => at.pot)]),
                ["crop"] = alike.Key.Crop,
            };
            if (alike.Key.Plants is { } plants)
            {
                entry["plants"] = plants;
            }

            if (alike.Key.Emitters is { } emitters)
            {
                entry["emitters"] = emitters;
            }

            if (alike.Key.ValveOpen is { } open)
            {
                entry["valveOpen"] = open;
            }

            made.Add(entry);
        }

        return made;
    }

    private static string Ranges(IReadOnlyList<int> pots)
    {
        var parts = new List<string>();
        for (var i = 0; i < pots.Count; )
        {
            var first = i;
            while (i + 1 < pots.Count && pots[i + 1] == pots[i] + 1)
            {
                i++;
            }

            parts.Add(
                first == i
                    ? pots[i].ToString(CultureInfo.InvariantCulture)
                    : string.Create(CultureInfo.InvariantCulture, $"{pots[first]}-{pots[i]}")
            );
            i++;
        }

        return string.Join(", ", parts);
    }

    private static string? Text(JsonNode? node) =>
        node is JsonValue value && value.TryGetValue(out string? text) ? text : null;

    private static int? Whole(JsonNode? node) =>
        node is JsonValue value && value.TryGetValue(out int number) ? number : null;
}
