using Dripwright.Engine.Curing.Ideas;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Curing;

/// <summary>Looks for changes that take one finding away and bring no new stop.</summary>
/// <remarks>
/// Ideas are tried one after the other. Where none serves alone, those that took the finding away but brought a stop are
/// carried on: what a grower would think of for that stop is done as well, until no new stop is left.
/// </remarks>
internal sealed class CureSearch(Trials trials, CureOptions options)
{
    private const int MostIdeas = 48;
    private const int MostCarriedOn = 5;
    private const int MostSteps = 3;

    private readonly List<(string Rule, IReadOnlyList<FieldChange> Changes)> _sound = [];

    /// <summary>Proven cures of a finding, the likeliest first.</summary>
    public IReadOnlyList<Cure> Of(Finding finding)
    {
        var stage = trials.StageOf(finding);
        List<Cure> proven = [];
        List<TriedChange> halves = [];
        List<IReadOnlyList<FieldChange>> sound = [];
        // What served a finding before this one may serve this one too, and has been planned.
        foreach (var one in _sound.Where(s => s.Rule == finding.Rule))
        {
            if (proven.Count < options.Most)
            {
                Take(one.Changes, []);
            }
        }

        var last = trials.Count + options.MostTrials;
        foreach (var idea in IdeaBook.Of(new Asked(trials.Before, finding)).Take(MostIdeas))
        {
            if (proven.Count >= options.Most || trials.Count >= last)
            {
                break;
            }

            Take(idea.Changes, idea.Steps);
        }

        for (var step = 0; step < MostSteps && proven.Count == 0 && halves.Count > 0; step++)
        {
            TriedChange[] carried =
            [
                .. halves.OrderBy(h => h.NewStops.Count).ThenBy(h => h.Changes.Count).Take(MostCarriedOn),
            ];
            halves.Clear();
            foreach (var half in carried)
            {
                var asked = new Asked(half.Staged, half.NewStops[0]);
                foreach (var idea in IdeaBook.Of(asked).Take(MostIdeas / 3))
                {
                    if (proven.Count > 0 || trials.Count >= last)
                    {
                        break;
                    }

                    Take(TriedChange.Merged(half.Changes, idea.Changes), []);
                }
            }
        }

        foreach (var one in _sound.ToArray())
        {
            if (proven.Count == 0)
            {
                Take(one.Changes, []);
            }
        }

        _sound.AddRange(
            sound
                .Where(s => !_sound.Exists(known => known.Rule == finding.Rule && known.Changes.SequenceEqual(s)))
                .Select(s => (finding.Rule, s))
        );
        return proven;

        void Take(IReadOnlyList<FieldChange> changes, IReadOnlyList<Phrase> steps)
        {
            if (trials.Of(changes) is not { } tried || !tried.Cures(finding, stage))
            {
                return;
            }

            if (tried.NewStops.Count > 0)
            {
                halves.Add(tried);
            }
            else if (!proven.Exists(p => p.Changes.SequenceEqual(changes)))
            {
                proven.Add(new Cure(changes, steps));
                sound.Add(changes);
            }
        }
    }
}
