using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Files;

namespace Dripwright.Engine.Rigs;

/// <summary>The keys that a rig file may write for a shelf of the catalogue.</summary>
internal static class GroupKeys
{
    /// <summary>The word for going without.</summary>
    public const string None = "none";

    /// <summary>The word for the published target of crop and stage.</summary>
    public const string Usual = "usual";

    public static bool Has(PartsCatalogue catalogue, PartGroup shelf, string key) =>
        shelf switch
        {
            PartGroup.Pipes => catalogue.Pipes.ContainsKey(key),
            PartGroup.Tubes => catalogue.Tubes.ContainsKey(key),
            PartGroup.Pots => catalogue.Pots.ContainsKey(key),
            PartGroup.Tanks => catalogue.Tanks.ContainsKey(key),
            PartGroup.Emitters => catalogue.Emitters.ContainsKey(key),
            PartGroup.Strainers => key == None || catalogue.Strainers.ContainsKey(key),
            PartGroup.Pumps => key == None || catalogue.Pumps.ContainsKey(key),
            PartGroup.Outlets => catalogue.Outlets.ContainsKey(key),
            PartGroup.Wires => key == None || catalogue.Wires.ContainsKey(key),
            PartGroup.Salts => catalogue.Salts.Salts.TryGetValue(key, out var salt) && salt.Kind != SaltKind.Acid,
            PartGroup.Acids => key == None
                || (catalogue.Salts.Salts.TryGetValue(key, out var acid) && acid.Kind == SaltKind.Acid),
            PartGroup.Targets => key == Usual || catalogue.Targets.Targets.ContainsKey(key),
            PartGroup.Crops => key == None || catalogue.Crops.ContainsKey(key),
            PartGroup.Any => Named.Any(named => Has(catalogue, named, key) && key != None)
                || catalogue.Fittings.ContainsKey(key)
                || catalogue.Sundries.ContainsKey(key),
            _ => throw new ArgumentOutOfRangeException(nameof(shelf), shelf, "Not a shelf."),
        };

    /// <summary>All keys of a shelf, in order of the alphabet; "none" first where it is allowed.</summary>
    public static IEnumerable<string> Keys(PartsCatalogue catalogue, PartGroup shelf)
    {
        IEnumerable<string> keys = shelf switch
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
            PartGroup.Salts => SaltKeys(catalogue, acids: false),
            PartGroup.Acids => SaltKeys(catalogue, acids: true),
            PartGroup.Targets => catalogue.Targets.Targets.Keys,
            PartGroup.Crops => catalogue.Crops.Keys,
            PartGroup.Any => Named
                .SelectMany(named => Keys(catalogue, named).Where(key => key != None))
                .Concat(catalogue.Fittings.Keys)
                .Concat(catalogue.Sundries.Keys),
            _ => throw new ArgumentOutOfRangeException(nameof(shelf), shelf, "Not a shelf."),
        };
        var ordered = keys.Order(StringComparer.Ordinal);
        return shelf is PartGroup.Strainers or PartGroup.Pumps or PartGroup.Wires or PartGroup.Acids or PartGroup.Crops
                ? ordered.Prepend(None)
            : shelf is PartGroup.Targets ? ordered.Prepend(Usual)
            : ordered;
    }

    /// <summary>What a person calls the thing with this key; null where it has no name of its own.</summary>
    public static string? NameOf(PartsCatalogue catalogue, PartGroup shelf, string key) =>
        shelf switch
        {
            PartGroup.Salts or PartGroup.Acids => catalogue.Salts.Salts.GetValueOrDefault(key)?.Name,
            PartGroup.Targets => catalogue.Targets.Targets.GetValueOrDefault(key)?.Name,
            PartGroup.Crops => catalogue.Crops.GetValueOrDefault(key)?.Name,
            _ => catalogue.TryFind(key)?.Name,
        };

    public static string Expected(PartGroup shelf) =>
        shelf switch
        {
            PartGroup.Pipes => "a pipe or hose of the catalogue",
            PartGroup.Tubes => "a stand tube of the catalogue",
            PartGroup.Pots => "a pot of the catalogue",
            PartGroup.Tanks => "a tank of the catalogue",
            PartGroup.Emitters => "an emitter of the catalogue",
            PartGroup.Strainers => "a strainer of the catalogue, or \"none\"",
            PartGroup.Pumps => "a pump of the catalogue, or \"none\"",
            PartGroup.Outlets => "a pot outlet of the catalogue",
            PartGroup.Wires => "a crop wire of the catalogue, or \"none\"",
            PartGroup.Salts => "a salt of the catalogue",
            PartGroup.Acids => "an acid of the catalogue, or \"none\"",
            PartGroup.Targets => "\"usual\", or a target of the catalogue",
            PartGroup.Crops => "a crop of the catalogue, or \"none\"",
            PartGroup.Any => "a part of the catalogue",
            _ => throw new ArgumentOutOfRangeException(nameof(shelf), shelf, "Not a shelf."),
        };

    private static IEnumerable<string> SaltKeys(PartsCatalogue catalogue, bool acids) =>
        catalogue.Salts.Salts.Values.Where(salt => salt.Kind == SaltKind.Acid == acids).Select(salt => salt.Key);

    private static readonly PartGroup[] Named =
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
    ];
}
