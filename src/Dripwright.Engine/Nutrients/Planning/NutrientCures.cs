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

    private static FieldChange With(Rig rig, Salt salt)
    {
        if (salt.Kind == SaltKind.Acid)
        {
            return new FieldChange(NutrientPaths.Acid, $"\"{salt.Key}\"");
        }

        var had = rig.Nutrients.Salts ?? ResolvedNutrients.UsualSalts.Select(key => new NutrientSalt { Salt = key });
        var text = new RecordText(rig.Units, leaveOutAssumed: true, comments: false);
        var all = had.Append(new NutrientSalt { Salt = salt.Key })
            .Select(one =>
                string.Join(' ', text.Write(one).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))
            );
        return new FieldChange(NutrientPaths.Salts, $"[{string.Join(", ", all)}]");
    }
}
