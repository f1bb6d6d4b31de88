using Dripwright.Engine.Curing.Ideas;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Curing;

/// <summary>Looks for changes that take one finding away and bring no new stop.</summary>
/// <remarks>
/// Ideas are tried one after the other. Where none serves alone, those that took the finding away but brought a stop are
/// carried on: what a grower would think of for that stop is done as well, until no new stop is left. What serves a finding
/// does not depend on which others were asked for before: a cure has the same number wherever it is asked for.
/// </remarks>
internal sealed class CureSearch(Trials trials, CureOptions options, IProgress<PlanProgress>? progress = null)
{
    private const int MostIdeas = 48;
    private const int MostCarriedOn = 5;
    private const int MostSteps = 3;

    /// <summary>Proven cures of a finding, the likeliest first.</summary>
    public IReadOnlyList<Cure> Of(Finding finding)
    {
        var stage = trials.StageOf(finding);
        List<Cure> proven = [];
        List<TriedChange> halves = [];
        var first = trials.Count;
        var last = first + options.MostTrials;
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

        // Two findings may have one cause.
        foreach (var other in trials.Findings.Where(f => f.Rule != finding.Rule).SelectMany(f => f.Cures))
        {
            if (proven.Count == 0)
            {
                Take(other.Changes, other.Steps);
            }
        }

        return proven;

        void Take(IReadOnlyList<FieldChange> changes, IReadOnlyList<Phrase> steps)
        {
            progress?.Report(
                new PlanProgress(
                    Phrase.Of("progress.cures"),
                    Math.Min(1, (double)(trials.Count - first) / options.MostTrials)
                )
            );
            if (changes.Count == 0 || trials.Of(changes) is not { } tried || !tried.Cures(finding, stage))
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
            }
        }
    }
}
