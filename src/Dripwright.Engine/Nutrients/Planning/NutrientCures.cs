using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Chemistry.Waters;
using Dripwright.Engine.Files;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Nutrients.Recipe;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Nutrients.Planning;

/// <summary>Salts to get, as changes of the rig file.</summary>
internal static class NutrientCures
{
    /// <summary>The cures that the rig file can hold.</summary>
    /// <param name="rig">The rig.</param>
    /// <param name="cures">Salts that would help.</param>
    public static IReadOnlyList<NamedCure> Of(Rig rig, IReadOnlyList<SaltCure> cures) =>
        [
            .. cures
                .Where(cure => CanHold(rig.Nutrients, cure.Salt))
                .Select(cure => new NamedCure(cure, Get(rig, cure.Salt))),
        ];

    // There is room for one acid, and one that is there is not taken away.
    private static bool CanHold(NutrientMix mix, Salt salt) => salt.Kind != SaltKind.Acid || mix.Acid == GroupKeys.None;

    private static Cure Get(Rig rig, Salt salt) => new([With(rig, salt)], [Phrase.Of("nutrients.cure.get", salt.Name)]);

    /// <summary>Another salt in place of some at hand; no cure where the catalogue does not have it.</summary>
    /// <param name="rig">The rig.</param>
    /// <param name="out">Keys of those that go.</param>
    /// <param name="key">Key of the one that comes.</param>
    /// <param name="says">What the cure is called.</param>
    public static Cure InPlaceOf(Rig rig, IReadOnlyCollection<string> @out, string key, Phrase says) =>
        new(
            [
                Listed(
                    rig,
                    [
                        .. Had(rig).Where(one => !@out.Contains(one.Salt) && one.Salt != key),
                        new NutrientSalt { Salt = key },
                    ]
                ),
            ],
            [says]
        );

    private static FieldChange With(Rig rig, Salt salt) =>
        salt.Kind == SaltKind.Acid
            ? new FieldChange(NutrientPaths.Acid, $"\"{salt.Key}\"")
            : Listed(rig, [.. Had(rig), new NutrientSalt { Salt = salt.Key }]);

    // Who names bags and no salts has none.
    private static IEnumerable<NutrientSalt> Had(Rig rig) =>
        rig.Nutrients.Salts
        ?? (
            rig.Nutrients.Bags.Count > 0
                ? []
                : ResolvedNutrients.UsualSalts.Select(key => new NutrientSalt { Salt = key })
        );

    private static FieldChange Listed(Rig rig, IReadOnlyList<NutrientSalt> salts)
    {
        var text = new RecordText(rig.Units, leaveOutAssumed: true, comments: false);
        var all = salts.Select(one =>
            string.Join(' ', text.Write(one).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))
        );
        return new FieldChange(NutrientPaths.Salts, $"[{string.Join(", ", all)}]");
    }
}
