using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Catalogue.Targets;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Files;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Rigs;

/// <summary>Finds what a rig's nutrients section names in the catalogue, and says what is not there.</summary>
internal static class NutrientResolver
{
    /// <summary>The nutrients; null where none are asked for, or after saying what is missing.</summary>
    /// <param name="mix">The section; its keys and texts were read without a fault.</param>
    /// <param name="catalogue">The catalogue.</param>
    /// <param name="say">Told path, what was found and what is expected.</param>
    public static ResolvedNutrients? Resolve(
        NutrientMix mix,
        PartsCatalogue catalogue,
        Action<string, Phrase, Phrase> say
    )
    {
        if (mix.Crop == GroupKeys.None)
        {
            return null;
        }

        var crop = catalogue.Crops[mix.Crop];
        var stage = FieldDescription.Dashed(mix.Stage.ToString());
        if (catalogue.Targets.StageOf(crop.Key, mix.Stage) is not { } row)
        {
            var fed = catalogue.Targets.Stages.Select(known => known.Crop).Distinct();
            say(
                "nutrients.crop",
                Phrase.Of("fault.crop-stage.found", FaultList.Quoted(crop.Key), stage),
                Phrase.Of("fault.crop-stage.expected", string.Join(", ", fed))
            );
            return null;
        }

        row = mix.Target == GroupKeys.Usual ? row : row with { Target = mix.Target };
        var sodium = crop.SodiumMillimolesPerLitre is null ? catalogue.CropOrOther("") : crop;
        var target = TargetOf(row.Target, "fault.crop-target.found");
        var loop = crop.LoopTarget is { } key ? TargetOf(key, "fault.crop-loop-target.found") : target;
        if (sodium?.SodiumMillimolesPerLitre is null)
        {
            say(
                "nutrients.crop",
                Phrase.Of("fault.crop-sodium.found", FaultList.Quoted(crop.Key)),
                Phrase.Of("fault.crop-sodium.expected", CropType.Other)
            );
            return null;
        }

        return target is not null && loop is not null && Salts(mix, catalogue, say) is { } salts
            ? new ResolvedNutrients
            {
                Crop = crop,
                SodiumOf = sodium,
                Stage = row,
                Target = WithoutAmmonium(salts) ? target.WithNitrogenAsSum() : target,
                LoopTarget = loop,
                PH = mix.Ph,
                Salts = salts,
                Acid = mix.Acid == GroupKeys.None ? null : catalogue.Salts[mix.Acid],
            }
            : null;

        NutrientTarget? TargetOf(string key, string found)
        {
            if (catalogue.Targets.Targets.TryGetValue(key, out var target))
            {
                return target;
            }

            say(
                "nutrients.crop",
                Phrase.Of(found, FaultList.Quoted(crop.Key), FaultList.Quoted(key)),
                Phrase.Of("fault.crop-target.expected")
            );
            return null;
        }
    }

    private static List<SaltInUse>? Salts(NutrientMix mix, PartsCatalogue catalogue, Action<string, Phrase, Phrase> say)
    {
        List<SaltInUse> salts =
        [
            .. mix.Bags.Select((bag, index) => new SaltInUse(BagLabel.Salt(bag, index + 1), bag.Have)),
        ];
        if ((mix.Salts ?? (salts.Count > 0 ? [] : null)) is { } named)
        {
            salts.AddRange(
                named.Select(one => new SaltInUse(Priced(catalogue.Salts[one.Salt], one.PricePerKg), one.Have))
            );
        }
        else
        {
            string[] lacking = [.. ResolvedNutrients.UsualSalts.Where(key => !catalogue.Salts.Salts.ContainsKey(key))];
            if (lacking.Length > 0)
            {
                say(
                    "nutrients.salts",
                    Phrase.Of("fault.usual-salts.found", string.Join(", ", lacking.Select(FaultList.Quoted))),
                    Phrase.Of("fault.usual-salts.expected")
                );
                return null;
            }

            salts.AddRange(ResolvedNutrients.UsualSalts.Select(key => new SaltInUse(catalogue.Salts[key], null)));
        }

        if (mix.Acid != GroupKeys.None)
        {
            salts.Add(new SaltInUse(catalogue.Salts[mix.Acid], null));
        }

        return salts;
    }

    // Nitrate takes the place of ammonium that no salt brings; calcium nitrate's little is none to steer by.
    private static bool WithoutAmmonium(IEnumerable<SaltInUse> salts) =>
        !salts.Any(one =>
            one.Salt.Brings[Constituent.AmmoniumNitrogen] > 0.2 * one.Salt.Brings[Constituent.NitrateNitrogen]
        );

    // The grower's price is that of a kilogram, whatever the pack.
    private static Salt Priced(Salt salt, decimal? perKilogram) =>
        perKilogram is { } price ? salt with { LoosePrice = price } : salt;
}
