using Dripwright.Engine.Curing.Ideas;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Curing;

/// <summary>Searches changes after which a rig has no stop and nothing to mend.</summary>
/// <remarks>
/// The stages are put right in the order of what they cost to know: rows and rooms first, stands and cuts last. A rig is
/// planned as far as its first stage with something to stop or mend; what a grower would think of for the gravest of it is
/// tried next. Rigs that come farthest go first. Method page: docs/methods/cures.md
/// </remarks>
public static class MakeItWork
{
    private const int IdeasEach = 14;

    /// <summary>Searches.</summary>
    /// <remarks>The same plan and options give the same answer, unless it is stopped; then what was found so far is the answer.</remarks>
    /// <param name="plan">The plan of the rig; with the strength of its stands where that shall hold as well.</param>
    /// <param name="options">What is kept, and how far is looked; the defaults where null.</param>
    /// <param name="progress">Told after each step.</param>
    public static Repair Of(Plan plan, RepairOptions? options = null, IProgress<PlanProgress>? progress = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        options ??= new RepairOptions();
        var search = new Search(plan, options, progress);
        var ended = search.Run();
        RepairedRig[] found = [.. search.Found.Select(Search.Whole)];
        if (found.Length == 0)
        {
            return new Repair(null, null, search.Conflict(), search.Tried, ended);
        }

        var fewest = found.OrderBy(f => f.Cure.Changes.Count).ThenBy(f => f.Cost).First();
        var cheapest = found.OrderBy(f => f.Cost).ThenBy(f => f.Cure.Changes.Count).First();
        return new Repair(fewest, cheapest.Cost < fewest.Cost ? cheapest : fewest, null, search.Tried, ended);
    }

    private sealed record Node(TriedChange Tried, JudgedStage Stage, IReadOnlyList<Finding> Grave)
    {
        /// <summary>Stages from the one with something grave to the last.</summary>
        public int Left => TriedChange.CheapFirst.Length - Array.IndexOf(TriedChange.CheapFirst, Stage);

        public int Weight => Grave.Sum(f => f.Level == FindingLevel.Stop ? 4 : 1);
    }

    private sealed class Search
    {
        private readonly Plan _plan;
        private readonly RepairOptions _options;
        private readonly IProgress<PlanProgress>? _progress;
        private readonly Trials _trials;
        private readonly IReadOnlyList<string> _kept;
        private readonly PriorityQueue<Node, (int Left, int Weight, int Changes, int Order)> _open = new();
        private readonly HashSet<string> _seen = new(StringComparer.Ordinal);
        private readonly Dictionary<string, SortedSet<string>> _keptFor = new(StringComparer.Ordinal);
        private Node? _nearest;
        private int _order;

        public Search(Plan plan, RepairOptions options, IProgress<PlanProgress>? progress)
        {
            (_plan, _options, _progress) = (plan, options, progress);
            _trials = new Trials(plan, CancellationToken.None);
            _kept = options.KeptOf(plan.Rig);
        }

        public List<TriedChange> Found { get; } = [];

        public int Tried => _trials.Count;

        private bool IsOver => _options.Stop.IsCancellationRequested || _trials.Count >= _options.MostTrials;

        /// <summary>True where nothing was left to try.</summary>
        public bool Run()
        {
            Try([]);
            while (_open.TryDequeue(out var node, out _))
            {
                if (IsOver)
                {
                    return false;
                }

                if (Found.Count >= _options.MostFound)
                {
                    return true;
                }

                Expand(node);
                _progress?.Report(
                    new PlanProgress(
                        Phrase.Of("progress.search", _trials.Count, Found.Count),
                        Math.Min(1, (double)_trials.Count / _options.MostTrials)
                    )
                );
            }

            return true;
        }

        private void Expand(Node node)
        {
            var gravest = node.Grave.OrderBy(f => f.Level).First();
            var ideas = 0;
            foreach (var idea in IdeaBook.Of(new Asked(node.Tried.Staged, gravest)))
            {
                if (
                    idea
                        .Changes.Select(c => RepairOptions.Keeping(_kept, c.Field))
                        .FirstOrDefault(k => k is not null) is
                    { } kept
                )
                {
                    (_keptFor.TryGetValue(gravest.Rule, out var known) ? known : _keptFor[gravest.Rule] = []).Add(kept);
                    continue;
                }

                if (++ideas > IdeasEach || IsOver)
                {
                    return;
                }

                Try(TriedChange.Merged(node.Tried.Changes, idea.Changes), gravest, node.Stage);
            }
        }

        private void Try(IReadOnlyList<FieldChange> changes, Finding? cured = null, JudgedStage stage = default)
        {
            if (!_seen.Add(Trials.KeyOf(changes)) || _trials.Of(changes) is not { } tried)
            {
                return;
            }

            if (cured is not null && !tried.Cures(cured, stage))
            {
                return;
            }

            if (FirstGrave(tried) is not { } node)
            {
                Found.Add(Lean(tried));
                return;
            }

            _open.Enqueue(node, (node.Left, node.Weight, changes.Count, _order++));
            if (_nearest is null || (node.Left, node.Weight).CompareTo((_nearest.Left, _nearest.Weight)) < 0)
            {
                _nearest = node;
            }
        }

        private static Node? FirstGrave(TriedChange tried)
        {
            foreach (var stage in TriedChange.CheapFirst)
            {
                Finding[] grave = [.. tried.Staged.Said(stage).Where(f => f.Level != FindingLevel.Note)];
                if (grave.Length > 0)
                {
                    return new Node(tried, stage, grave);
                }
            }

            return null;
        }

        // What turned out not to be needed is not changed.
        private TriedChange Lean(TriedChange works)
        {
            foreach (var change in works.Changes.Reverse())
            {
                FieldChange[] without = [.. works.Changes.Where(c => c != change)];
                if (!IsOver && _trials.Of(without) is { } lean && FirstGrave(lean) is null)
                {
                    works = lean;
                }
            }

            return works;
        }

        public static RepairedRig Whole(TriedChange works)
        {
            var plan = works.Staged.Whole();
            return new RepairedRig(Cure.Of(works.Changes), plan.Rig, plan);
        }

        public RepairConflict? Conflict() =>
            _nearest is { } near
                ? new RepairConflict(
                    [.. near.Grave.OrderBy(f => f.Level)],
                    Cure.Of(near.Tried.Changes),
                    [.. near.Grave.SelectMany(f => _keptFor.GetValueOrDefault(f.Rule, [])).Distinct()]
                )
                : null;
    }
}
