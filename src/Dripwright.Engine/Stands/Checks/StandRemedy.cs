using Dripwright.Engine.Findings;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Stands.Checks;

/// <summary>What to do about a stand that does not hold: what was tried, where it was asked for.</summary>
internal static class StandRemedy
{
    /// <summary>What to do, in words.</summary>
    public static Phrase Of(Rig rig, RowStand stand)
    {
        Phrase[] enough = [.. stand.Trials.Where(t => t.Enough).Select(Said)];
        return enough.Length == 1 ? Phrase.Of("stand.remedy.enough", enough[0])
            : enough.Length > 1 ? Phrase.Of("stand.remedy.any", new Several(enough, Joint.Or))
            : stand.Trials.Count > 0
                ? Phrase.Of("stand.remedy.not-enough", new Several([.. stand.Trials.Select(Said)], Joint.Semicolon))
            : rig.Stand.Bracing == Bracing.Both ? Phrase.Of("stand.remedy.braced")
            : Phrase.Of("stand.remedy.unbraced");
    }

    /// <summary>What was tried and is enough, as changes of the rig.</summary>
    public static IReadOnlyList<Cure> Cures(RowStand stand) =>
        [.. stand.Trials.Where(t => t.Enough).Select(t => t.Cure)];

    private static Phrase Said(StandTrial trial) =>
        trial.Utilisation is { } use ? Phrase.Of("stand.trial.then", trial.What, Measured.Percent(use)) : trial.What;
}
