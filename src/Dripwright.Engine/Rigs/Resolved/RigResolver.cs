using System.Collections;
using System.Collections.Frozen;
using System.Globalization;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Files;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Rigs;

/// <summary>Looks up all that a rig names and settles all its measures, and says of each thing that cannot be why.</summary>
internal static class RigResolver
{
    /// <summary>Resolves a rig.</summary>
    /// <param name="rig">The rig. Its values lie within their bounds; its keys need not be in the catalogue.</param>
    /// <param name="catalogue">The catalogue.</param>
    /// <param name="isSound">Whether a section was read without a fault; what lies in the others is not looked at.</param>
    /// <param name="say">Told path, what was found and what is expected, once for each thing that cannot be.</param>
    /// <returns>The rig; null where anything was said or a section is not sound.</returns>
    public static ResolvedRig? Resolve(
        Rig rig,
        PartsCatalogue catalogue,
        Func<string, bool> isSound,
        Action<string, Phrase, Phrase> say
    )
    {
        var good = isSound("");
        // Asked before anything is said: what is said of one section must not spoil another.
        var sound = new[] { "feed", "drain", "reservoir", "rows", "nutrients" }.Where(isSound).ToHashSet();
        void Say(string path, Phrase found, Phrase expected)
        {
            good = false;
            say(path, found, expected);
        }

        var fittings = sound.Contains("feed") && sound.Contains("drain") ? Fittings(rig, catalogue, Say) : null;
        var tank = sound.Contains("reservoir")
            ? TankResolver.Resolve(rig, catalogue.Tanks[rig.Reservoir.Tank], Say)
            : null;
        IReadOnlyList<ResolvedRow> rows = sound.Contains("rows") ? Rows(rig, catalogue, Say) : [];
        var nutrients = sound.Contains("nutrients") ? NutrientResolver.Resolve(rig.Nutrients, catalogue, Say) : null;
        return good && fittings is not null && tank is not null
            ? ResolvedRig.Made(rig, Parts(rig, catalogue, fittings, tank), rows, nutrients)
            : null;
    }

    /// <summary>Says every key of a rig that the catalogue lacks; the reader of rig files has judged them already.</summary>
    /// <param name="rig">A rig that was made without a file.</param>
    /// <param name="catalogue">The catalogue.</param>
    /// <param name="say">As above.</param>
    public static void CheckKeys(Rig rig, PartsCatalogue catalogue, Action<string, Phrase, Phrase> say) =>
        Keys(rig, "", catalogue, say);

    private static void Keys(object record, string path, IKeys known, Action<string, Phrase, Phrase> say)
    {
        foreach (var field in FieldDescription.Of(record.GetType()))
        {
            var at = path.Length == 0 ? field.Name : $"{path}.{field.Name}";
            switch (field.Property.GetValue(record))
            {
                case string key when field.Key is { } named && key != named.Or && !known.Has(named, key):
                    say(at, FaultList.Quote(key), named.Expected);
                    break;
                case IEnumerable list when field.Element is { Kind: FieldKind.Section }:
                    foreach (var (index, item) in list.Cast<object>().Index())
                    {
                        Keys(item, string.Create(CultureInfo.InvariantCulture, $"{at}[{index}]"), known, say);
                    }

                    break;
                case { } section when field.Kind is FieldKind.Section:
                    Keys(section, at, known, say);
                    break;
            }
        }
    }

    private static FrozenDictionary<(PipeFamily, string, FittingKind), FittingType> Fittings(
        Rig rig,
        PartsCatalogue catalogue,
        Action<string, Phrase, Phrase> say
    )
    {
        var line = catalogue.Pipes[rig.Feed.Line];
        var header = catalogue.Pipes[rig.Feed.Header.Pipe];
        var drain = catalogue.Pipes[rig.Drain.Pipe];
        var fittings = new Dictionary<(PipeFamily, string, FittingKind), FittingType>();
        foreach (var need in FittingNeeds.Of(rig, line, header, drain))
        {
            if (catalogue.FittingFor(need.Pipe, need.Kind) is { } fitting)
            {
                fittings[(need.Pipe.Family, need.Pipe.Nominal, need.Kind)] = fitting;
                continue;
            }

            var kind = FaultList.Quoted(FieldDescription.Dashed(need.Kind.ToString()));
            var family = FieldDescription.Dashed(need.Pipe.Family.ToString());
            say(
                need.Path,
                Phrase.Of("fault.no-fitting.found", FaultList.Quoted(need.Pipe.Key), kind),
                Phrase.Of("fault.no-fitting.expected", kind, family, FaultList.Quoted(need.Pipe.Nominal))
            );
        }

        return fittings.ToFrozenDictionary();
    }

    private static RigParts Parts(
        Rig rig,
        PartsCatalogue catalogue,
        FrozenDictionary<(PipeFamily, string, FittingKind), FittingType> fittings,
        ResolvedTank tank
    ) =>
        new()
        {
            Catalogue = catalogue,
            Line = catalogue.Pipes[rig.Feed.Line],
            Header = catalogue.Pipes[rig.Feed.Header.Pipe],
            Drain = catalogue.Pipes[rig.Drain.Pipe],
            Tube = catalogue.Tubes[rig.Stand.Tube],
            Wire = rig.CropWire.Wire == GroupKeys.None ? null : catalogue.Wires[rig.CropWire.Wire],
            Emitter = catalogue.Emitters[rig.Feed.Emitter],
            Outlet = catalogue.Outlets[rig.Drain.Outlet],
            Strainer = rig.Feed.Strainer == GroupKeys.None ? null : catalogue.Strainers[rig.Feed.Strainer],
            Tank = tank,
            Pump = rig.Pump.Model == GroupKeys.None ? null : ResolvedPump.Of(rig.Pump, catalogue.Pumps[rig.Pump.Model]),
            Fittings = fittings,
        };

    private static List<ResolvedRow> Rows(Rig rig, PartsCatalogue catalogue, Action<string, Phrase, Phrase> say)
    {
        List<ResolvedRow> rows = [];
        foreach (var (index, row) in rig.Rows.Index())
        {
            string[] unknown =
            [
                .. (row.Planting ?? [new Planting()])
                    .Select(planting => planting.Crop)
                    .Where(crop => catalogue.CropOrOther(crop) is null),
            ];
            if (unknown.Length > 0)
            {
                say(
                    Indexed("rows", index, "planting"),
                    Phrase.Of("fault.no-crop.found", FaultList.Quoted(unknown[0])),
                    Phrase.Of("fault.no-crop.expected", CropType.Other)
                );
                continue;
            }

            var pots = PlantedPots.Of(row, rig.Feed, crop => catalogue.CropOrOther(crop)!);
            rows.Add(new ResolvedRow(index, row, catalogue.Pots[row.Pot], catalogue.Media[row.Medium], pots));
        }

        return rows;
    }

    private static string Indexed(string list, int index, string field) =>
        string.Create(CultureInfo.InvariantCulture, $"{list}[{index}].{field}");
}
