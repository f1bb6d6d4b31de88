using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Files;

namespace Dripwright.Engine.Catalogue;

/// <summary>The keys of each group of the catalogue.</summary>
internal static class GroupKeys
{
    /// <summary>The word for going without.</summary>
    public const string None = KeyText.None;

    /// <summary>The word for the published target of crop and stage.</summary>
    public const string Usual = KeyText.Usual;

    private static readonly PartGroup[] s_parts =
    [
        PartGroup.Pipes,
        PartGroup.Tubes,
        PartGroup.Pots,
        PartGroup.Tanks,
        PartGroup.Emitters,
        PartGroup.Strainers,
        PartGroup.Pumps,
        PartGroup.Outlets,
        PartGroup.Wires,
        PartGroup.Sundries,
    ];

    public static bool Has(PartsCatalogue catalogue, PartGroup group, string key) =>
        group switch
        {
            PartGroup.Pipes => catalogue.Pipes.ContainsKey(key),
            PartGroup.Tubes => catalogue.Tubes.ContainsKey(key),
            PartGroup.Pots => catalogue.Pots.ContainsKey(key),
            PartGroup.Tanks => catalogue.Tanks.ContainsKey(key),
            PartGroup.Emitters => catalogue.Emitters.ContainsKey(key),
            PartGroup.Strainers => catalogue.Strainers.ContainsKey(key),
            PartGroup.Pumps => catalogue.Pumps.ContainsKey(key),
            PartGroup.Outlets => catalogue.Outlets.ContainsKey(key),
            PartGroup.Wires => catalogue.Wires.ContainsKey(key),
            PartGroup.Sundries => catalogue.Sundries.ContainsKey(key),
            PartGroup.Salts => catalogue.Salts.Salts.TryGetValue(key, out var salt) && salt.Kind != SaltKind.Acid,
            PartGroup.Acids => catalogue.Salts.Salts.TryGetValue(key, out var acid) && acid.Kind == SaltKind.Acid,
            PartGroup.Targets => catalogue.Targets.Targets.ContainsKey(key),
            PartGroup.Crops => catalogue.Crops.ContainsKey(key),
            PartGroup.Media => catalogue.Media.ContainsKey(key),
            PartGroup.Any => s_parts.Any(part => Has(catalogue, part, key)) || catalogue.Fittings.ContainsKey(key),
            _ => throw new ArgumentOutOfRangeException(nameof(group), group, "Not a group."),
        };

    /// <summary>All keys of a group, in order of the alphabet.</summary>
    public static IEnumerable<string> Keys(PartsCatalogue catalogue, PartGroup group)
    {
        var keys = group switch
        {
            PartGroup.Pipes => catalogue.Pipes.Keys,
            PartGroup.Tubes => catalogue.Tubes.Keys,
            PartGroup.Pots => catalogue.Pots.Keys,
            PartGroup.Tanks => catalogue.Tanks.Keys,
            PartGroup.Emitters => catalogue.Emitters.Keys,
            PartGroup.Strainers => catalogue.Strainers.Keys,
            PartGroup.Pumps => catalogue.Pumps.Keys,
            PartGroup.Outlets => catalogue.Outlets.Keys,
            PartGroup.Wires => catalogue.Wires.Keys,
            PartGroup.Sundries => catalogue.Sundries.Keys,
            PartGroup.Salts => SaltKeys(catalogue, acids: false),
            PartGroup.Acids => SaltKeys(catalogue, acids: true),
            PartGroup.Targets => catalogue.Targets.Targets.Keys,
            PartGroup.Crops => catalogue.Crops.Keys,
            PartGroup.Media => catalogue.Media.Keys,
            PartGroup.Any => s_parts.SelectMany(part => Keys(catalogue, part)).Concat(catalogue.Fittings.Keys),
            _ => throw new ArgumentOutOfRangeException(nameof(group), group, "Not a group."),
        };
        return keys.Order(StringComparer.Ordinal);
    }

    /// <summary>What a person calls the thing with this key; null where it has no name of its own.</summary>
    public static string? NameOf(PartsCatalogue catalogue, PartGroup group, string key) =>
        group switch
        {
            PartGroup.Salts or PartGroup.Acids => catalogue.Salts.Salts.GetValueOrDefault(key)?.Name,
            PartGroup.Targets => catalogue.Targets.Targets.GetValueOrDefault(key)?.Name,
            PartGroup.Crops => catalogue.Crops.GetValueOrDefault(key)?.Name,
            PartGroup.Media => catalogue.Media.GetValueOrDefault(key)?.Name,
            _ => catalogue.TryFind(key)?.Name,
        };

    private static IEnumerable<string> SaltKeys(PartsCatalogue catalogue, bool acids) =>
        catalogue.Salts.Salts.Values.Where(salt => salt.Kind == SaltKind.Acid == acids).Select(salt => salt.Key);
}
