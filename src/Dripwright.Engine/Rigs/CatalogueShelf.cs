using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Files;

namespace Dripwright.Engine.Rigs;

/// <summary>The keys that a rig file may write for a shelf of the catalogue.</summary>
internal static class CatalogueShelf
{
    /// <summary>The word for going without.</summary>
    public const string None = "none";

    /// <summary>The word for the published target of crop and stage.</summary>
    public const string Usual = "usual";

    public static bool Has(PartsCatalogue catalogue, Shelf shelf, string key) =>
        shelf switch
        {
            Shelf.Pipes => catalogue.Pipes.ContainsKey(key),
            Shelf.Tubes => catalogue.Tubes.ContainsKey(key),
            Shelf.Pots => catalogue.Pots.ContainsKey(key),
            Shelf.Tanks => catalogue.Tanks.ContainsKey(key),
            Shelf.Emitters => catalogue.Emitters.ContainsKey(key),
            Shelf.Strainers => key == None || catalogue.Strainers.ContainsKey(key),
            Shelf.Pumps => key == None || catalogue.Pumps.ContainsKey(key),
            Shelf.Outlets => catalogue.Outlets.ContainsKey(key),
            Shelf.Wires => key == None || catalogue.Wires.ContainsKey(key),
            Shelf.Salts => catalogue.Salts.Salts.TryGetValue(key, out var salt) && salt.Kind != SaltKind.Acid,
            Shelf.Acids => key == None
                || (catalogue.Salts.Salts.TryGetValue(key, out var acid) && acid.Kind == SaltKind.Acid),
            Shelf.Targets => key == Usual || catalogue.Targets.Targets.ContainsKey(key),
            Shelf.Any => Named.Any(named => Has(catalogue, named, key) && key != None)
                || catalogue.Fittings.ContainsKey(key)
                || catalogue.Sundries.ContainsKey(key),
            _ => throw new ArgumentOutOfRangeException(nameof(shelf), shelf, "Not a shelf."),
        };

    /// <summary>All keys of a shelf, in order of the alphabet; "none" first where it is allowed.</summary>
    public static IEnumerable<string> Keys(PartsCatalogue catalogue, Shelf shelf)
    {
        IEnumerable<string> keys = shelf switch
        {
            Shelf.Pipes => catalogue.Pipes.Keys,
            Shelf.Tubes => catalogue.Tubes.Keys,
            Shelf.Pots => catalogue.Pots.Keys,
            Shelf.Tanks => catalogue.Tanks.Keys,
            Shelf.Emitters => catalogue.Emitters.Keys,
            Shelf.Strainers => catalogue.Strainers.Keys,
            Shelf.Pumps => catalogue.Pumps.Keys,
            Shelf.Outlets => catalogue.Outlets.Keys,
            Shelf.Wires => catalogue.Wires.Keys,
            Shelf.Salts => SaltKeys(catalogue, acids: false),
            Shelf.Acids => SaltKeys(catalogue, acids: true),
            Shelf.Targets => catalogue.Targets.Targets.Keys,
            Shelf.Any => Named
                .SelectMany(named => Keys(catalogue, named).Where(key => key != None))
                .Concat(catalogue.Fittings.Keys)
                .Concat(catalogue.Sundries.Keys),
            _ => throw new ArgumentOutOfRangeException(nameof(shelf), shelf, "Not a shelf."),
        };
        var ordered = keys.Order(StringComparer.Ordinal);
        return shelf is Shelf.Strainers or Shelf.Pumps or Shelf.Wires or Shelf.Acids ? ordered.Prepend(None)
            : shelf is Shelf.Targets ? ordered.Prepend(Usual)
            : ordered;
    }

    /// <summary>What a person calls the thing with this key; null where it has no name of its own.</summary>
    public static string? NameOf(PartsCatalogue catalogue, Shelf shelf, string key) =>
        shelf switch
        {
            Shelf.Salts or Shelf.Acids => catalogue.Salts.Salts.GetValueOrDefault(key)?.Name,
            Shelf.Targets => catalogue.Targets.Targets.GetValueOrDefault(key)?.Name,
            _ => catalogue.TryFind(key)?.Name,
        };

    public static string Expected(Shelf shelf) =>
        shelf switch
        {
            Shelf.Pipes => "a pipe or hose of the catalogue",
            Shelf.Tubes => "a stand tube of the catalogue",
            Shelf.Pots => "a pot of the catalogue",
            Shelf.Tanks => "a tank of the catalogue",
            Shelf.Emitters => "an emitter of the catalogue",
            Shelf.Strainers => "a strainer of the catalogue, or \"none\"",
            Shelf.Pumps => "a pump of the catalogue, or \"none\"",
            Shelf.Outlets => "a pot outlet of the catalogue",
            Shelf.Wires => "a crop wire of the catalogue, or \"none\"",
            Shelf.Salts => "a salt of the catalogue",
            Shelf.Acids => "an acid of the catalogue, or \"none\"",
            Shelf.Targets => "\"usual\", or a target of the catalogue",
            Shelf.Any => "a part of the catalogue",
            _ => throw new ArgumentOutOfRangeException(nameof(shelf), shelf, "Not a shelf."),
        };

    private static IEnumerable<string> SaltKeys(PartsCatalogue catalogue, bool acids) =>
        catalogue.Salts.Salts.Values.Where(salt => salt.Kind == SaltKind.Acid == acids).Select(salt => salt.Key);

    private static readonly Shelf[] Named =
    [
        Shelf.Pipes,
        Shelf.Tubes,
        Shelf.Pots,
        Shelf.Tanks,
        Shelf.Emitters,
        Shelf.Strainers,
        Shelf.Pumps,
        Shelf.Outlets,
        Shelf.Wires,
    ];
}
