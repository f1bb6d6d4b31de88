using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Water;

namespace Dripwright.Engine.Proposing;

/// <summary>Best-first search: what can be cheapest is looked at first, and what cannot be better any more is dropped.</summary>
/// <remarks>
/// The queue holds frames under a quick bound, and rigs under a bound that only leaves out what pump and strainer change in
/// the header. A frame is placed when it is the cheapest left, a rig is planned when it is. So the order, and with it the answer,
/// depends on the brief alone, and what is left at a stop is known not to be cheaper than what was taken last.
/// </remarks>
internal sealed class Search
{
    /// <summary>[-] Evenness bounds are compared with solved values: what the solver leaves open must not drop a rig.</summary>
    private const double Slack = 1e-9;

    private static readonly PlanOptions s_noDraws = new() { Draws = 0 };

    private readonly Brief _brief;
    private readonly PartsCatalogue _catalogue;
    private readonly ProposeOptions _options;
    private readonly CandidateList _candidates;
    private readonly FramePlacement _placement;
    private readonly PriorityQueue<object, (decimal Floor, int Frame, int Within)> _queue = new();

    public Search(Brief brief, PartsCatalogue catalogue, ProposeOptions options)
    {
        _brief = brief;
        _catalogue = catalogue;
        _options = options;
        Space = new SearchSpace(brief, catalogue);
        _candidates = new CandidateList(brief, Space);
        _placement = new FramePlacement(brief, Space, catalogue, Shortage);
        var floor = new CostFloor(brief, Space, _candidates, catalogue);
        foreach (Frame frame in Space.Frames)
        {
            _queue.Enqueue(new Unplaced(frame, floor.Best(frame)), (floor.Of(frame), frame.Index, -1));
        }
    }

    public SearchSpace Space { get; }

    public Front Front { get; } = new();

    public Shortage Shortage { get; } = new();

    /// <summary>[m] See <see cref="CandidateList.HeadMissing"/>.</summary>
    public double? HeadMissing => _candidates.HeadMissing;

    /// <summary>The cheapest rig that passes but costs more than the brief allows; null where none was met.</summary>
    public Passed? OverBudget { get; private set; }

    /// <summary>What stood against the rig that came nearest to passing.</summary>
    public IReadOnlyList<Finding>? Closest { get; private set; }

    /// <summary>True when some rig passed but would give a pot less in a day than its plants drink.</summary>
    public bool AnyThirsty { get; private set; }

    public int Planned { get; private set; }

    public int Placed { get; private set; }

    public bool Stopped { get; private set; }

    /// <summary>Searches until nothing better can be left, a bound is reached, or a stop is asked for.</summary>
    public void Run(IProgress<ProposeProgress>? progress, CancellationToken stop)
    {
        while (_queue.TryPeek(out object? next, out var at))
        {
            if (stop.IsCancellationRequested)
            {
                Stopped = true;
                return;
            }

            if (IsDear(at.Floor) && (Front.Any || OverBudget is not null))
            {
                return;
            }

            if (!Front.MayTake(at.Floor, BestOf(next) + Slack))
            {
                _queue.Dequeue();
                continue;
            }

            if (next is Unplaced ? Placed >= _options.MostPlacings : Planned >= _options.MostPlans)
            {
                return;
            }

            _queue.Dequeue();
            if (next is Unplaced unplaced)
            {
                Place(unplaced.Frame);
            }
            else
            {
                Try((Candidate)next, (at.Frame, at.Within));
            }

            progress?.Report(Progress());
        }
    }

    /// <summary>What was left that may have been better, and its least cost.</summary>
    public (long Count, decimal? Floor) Left()
    {
        long count = 0;
        decimal? least = null;
        foreach ((object item, (decimal Floor, int, int) at) in _queue.UnorderedItems)
        {
            if ((IsDear(at.Floor) && Front.Any) || !Front.MayTake(at.Floor, BestOf(item) + Slack))
            {
                continue;
            }

            count += item is Unplaced unplaced
                ? (unplaced.Frame.Gravity ? 1 : Space.Pumps.Count) * (long)Space.Emitters.Count
                : 1;
            least = Math.Min(least ?? at.Floor, at.Floor);
        }

        return (count, least);
    }

    private bool IsDear(decimal floor) => _brief.Budget is { } budget && floor > budget;

    private static double BestOf(object item) => item is Unplaced unplaced ? unplaced.Best : ((Candidate)item).Best;

    private ProposeProgress Progress()
    {
        double share = Math.Max((double)Planned / _options.MostPlans, (double)Placed / _options.MostPlacings);
        return new(Planned, Placed, Front.Kept.Count, Math.Min(1, share));
    }

    private void Place(Frame frame)
    {
        Placed++;
        if (_placement.Place(frame) is not { } draft)
        {
            return;
        }

        if (draft.Blocked.Count > 0)
        {
            Note(draft.Blocked);
            return;
        }

        foreach ((int within, Candidate candidate) in _candidates.Of(draft).Index())
        {
            _queue.Enqueue(candidate, (candidate.Floor, frame.Index, within));
        }
    }

    private void Try(Candidate candidate, (int Frame, int Within) order)
    {
        if (candidate.ToRig() is not { } rig)
        {
            return;
        }

        Planned++;
        Plan plan = Planner.Of(rig, [], _catalogue, s_noDraws);
        List<Finding> against = [.. plan.Findings.Where(f => f.Level != FindingLevel.Note)];
        if (against.Count > 0)
        {
            Note(against);
            return;
        }

        if (IsThirsty(plan))
        {
            AnyThirsty = true;
            return;
        }

        var passed = new Passed(rig, plan, order);
        if (IsDear(passed.Cost))
        {
            OverBudget = OverBudget is { } over && over.Cost <= passed.Cost ? over : passed;
            return;
        }

        Front.Add(passed);
    }

    private void Note(IReadOnlyList<Finding> against)
    {
        if (Closest is null || Weight(against) < Weight(Closest))
        {
            Closest = against;
        }
    }

    private static int Weight(IReadOnlyList<Finding> findings) =>
        findings.Sum(f => f.Level == FindingLevel.Stop ? 100 : 1);

    /// <summary>True where the weakest pot is given less in a day of the timer's hours than its plants drink.</summary>
    internal static bool IsThirsty(Plan plan)
    {
        double seconds = FeedPlanner.HoursPerDay(plan.Rig.Timer) * 3600;
        int plants = plan.Layout.Rows.SelectMany(r => r.Pots).Max(p => p.Plants);
        return plan.Feed.Weakest!.Flow * seconds < plants * plan.Rig.Reservoir.UsePerPlant * 86_400;
    }

    private sealed record Unplaced(Frame Frame, double Best);
}
