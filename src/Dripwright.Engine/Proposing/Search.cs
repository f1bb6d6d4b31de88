using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Stands.Checks;
using Dripwright.Engine.Water;

namespace Dripwright.Engine.Proposing;

/// <summary>Best-first search: what can be cheapest is looked at first, and what cannot be better any more is dropped.</summary>
/// <remarks>
/// Two queues, each the lowest bound first: arrangements that are still to be placed, and whole rigs of placed ones that are
/// still to be planned. They take turns, so that good rigs are known early and drop much of what is left. The order, and with it
/// the answer, depends on the brief alone, and the least bound left over at a stop is known.
/// </remarks>
internal sealed class Search
{
    /// <summary>[-] Uniformity bounds are compared with solved values: what the solver leaves open must not drop a rig.</summary>
    private const double Slack = 1e-9;

    private static readonly PlanOptions s_water = new() { Draws = 0, Strength = false };
    private static readonly PlanOptions s_whole = new() { Draws = 0 };

    private readonly Brief _brief;
    private readonly PartsCatalogue _catalogue;
    private readonly ProposeOptions _options;
    private readonly CandidateList _candidates;
    private readonly FramePlacement _placement;
    private readonly Dictionary<FrameDraft, StandPlan> _stands = new(ReferenceEqualityComparer.Instance);
    private readonly HashSet<FrameDraft> _tied = new(ReferenceEqualityComparer.Instance);
    private readonly PriorityQueue<Unplaced, (decimal Floor, int Frame)> _frames = new();
    private readonly PriorityQueue<Candidate, (decimal Floor, int Frame, int Within)> _rigs = new();

    public Search(Brief brief, PartsCatalogue catalogue, ProposeOptions options)
    {
        _brief = brief;
        _catalogue = catalogue;
        _options = options;
        Space = new SearchSpace(brief, catalogue);
        _candidates = new CandidateList(brief, Space);
        _placement = new FramePlacement(brief, Space, catalogue, Shortage);
        var floor = new CostFloor(brief, Space, _candidates, catalogue);
        foreach (var frame in Space.Frames)
        {
            var least = floor.Of(frame);
            _frames.Enqueue(new Unplaced(frame, floor.Best(frame), least), (least, frame.Index));
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
        var placedLast = false;
        while (!stop.IsCancellationRequested)
        {
            DropHopeless();
            var frames = _frames.TryPeek(out var frame, out _);
            var rigs = _rigs.TryPeek(out var rig, out var at);
            if (!frames && !rigs)
            {
                return;
            }

            var place = frames && (!rigs || (frame!.Floor < rig!.Floor && !placedLast));
            if (place ? Placed >= _options.MostPlacings : Planned >= _options.MostPlans)
            {
                return;
            }

            if (place)
            {
                _frames.Dequeue();
                Place(frame!.Frame);
            }
            else
            {
                _rigs.Dequeue();
                Try(rig!, (at.Frame, at.Within));
            }

            placedLast = place;
            progress?.Report(Progress());
        }

        Stopped = true;
    }

    private void DropHopeless()
    {
        while (_frames.TryPeek(out var frame, out _) && !IsOfUse(frame.Floor, frame.Best))
        {
            _frames.Dequeue();
        }

        while (_rigs.TryPeek(out var rig, out _) && !IsOfUse(rig.Floor, rig.Best))
        {
            _rigs.Dequeue();
        }
    }

    // Where nothing is found within the budget, the cheapest beyond it is sought, so that the grower hears how much is missing.
    private bool IsOfUse(decimal floor, double best) =>
        IsDear(floor)
            ? !Front.Any && (OverBudget is not { } over || floor < over.Cost)
            : Front.MayTake(floor, best + Slack);

    /// <summary>What was left that may have been better, and its least cost.</summary>
    public (long Count, decimal? Floor) Left()
    {
        long count = 0;
        decimal? least = null;
        foreach ((var frame, _) in _frames.UnorderedItems.Where(f => IsOfUse(f.Element.Floor, f.Element.Best)))
        {
            count += (frame.Frame.Gravity ? 1 : Space.Pumps.Count) * (long)Space.Emitters.Count;
            least = Math.Min(least ?? frame.Floor, frame.Floor);
        }

        foreach ((var rig, _) in _rigs.UnorderedItems.Where(r => IsOfUse(r.Element.Floor, r.Element.Best)))
        {
            count++;
            least = Math.Min(least ?? rig.Floor, rig.Floor);
        }

        return (count, least);
    }

    private bool IsDear(decimal floor) => _brief.Budget is { } budget && floor > budget;

    private ProposeProgress Progress()
    {
        var share = Math.Max((double)Planned / _options.MostPlans, (double)Placed / _options.MostPlacings);
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

        foreach ((var within, var candidate) in _candidates.Of(draft).Index())
        {
            _rigs.Enqueue(candidate, (candidate.Floor, frame.Index, within));
        }
    }

    private static List<Finding> Against(Plan plan) => [.. plan.Findings.Where(f => f.Level != FindingLevel.Note)];

    private void Try(Candidate candidate, (int Frame, int Within) order)
    {
        if (candidate.ToRig() is not { } rig || ResolvedRig.TryOf(rig, _catalogue) is not { } resolved)
        {
            return;
        }

        if (DaysMissing(rig) is > 0 and { } days)
        {
            Shortage.AddDays(days);
            return;
        }

        Planned++;
        var plan = Planner.Of(resolved, [], s_water);
        if (Timed(rig, plan) is { } timed && ResolvedRig.TryOf(timed, _catalogue) is { } again)
        {
            (rig, plan) = (timed, Planner.Of(again, [], s_water));
        }

        if (IsThirsty(plan))
        {
            AnyThirsty = true;
            return;
        }

        var against = Against(plan);
        if (against.Count == 0)
        {
            (rig, plan) = Standing(rig, plan, candidate.Draft);
            against = Against(plan);
        }

        if (against.Count > 0)
        {
            Note(against);
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

    // Whether the stand holds costs more than all else: it is asked only of what passes otherwise, and once of a frame, for
    // its stand knows no pump and no emitter.
    private (Rig Rig, Plan Plan) Standing(Rig rig, Plan plan, FrameDraft draft)
    {
        if (!_tied.Contains(draft))
        {
            plan = Whole(plan, draft);
            if (!Against(plan).All(finding => finding.Rule == "stand-tips") || Against(plan).Count == 0)
            {
                return (rig, plan);
            }

            _tied.Add(draft);
            _stands.Remove(draft);
        }

        // What a leaning person would tip is tied to the wall, as a builder does with a stand for a pot or two.
        var tied = rig with
        {
            Stand = rig.Stand with { Tied = true },
        };
        return ResolvedRig.TryOf(tied, _catalogue) is { } resolved
            ? (tied, Whole(Planner.Of(resolved, [], s_water), draft))
            : (rig, plan);
    }

    private Plan Whole(Plan plan, FrameDraft draft)
    {
        plan = Planner.Completed(plan with { Stand = _stands.GetValueOrDefault(draft) }, s_whole);
        _stands[draft] = plan.Stand!;
        return plan;
    }

    // Known without a plan: the water between the mark and the level that keeps the pump covered.
    private double DaysMissing(Rig rig)
    {
        var tank = _catalogue.Tanks[rig.Reservoir.Tank].Inside;
        var working = ReservoirDays.WorkingVolume(tank, rig.Reservoir.LowestLevel, rig.Reservoir.Fill * tank.Height);
        var missing = Space.VolumeWanted - working;
        var aDay = Space.Use * 86_400;
        return missing > 1e-9 * Space.VolumeWanted ? missing / aDay : 0;
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

    // What runs through by gravity is carried back by hand: water just as long as the plants need.
    private static Rig? Timed(Rig rig, Plan plan) =>
        plan.Layout.Parts.Pump is null && WateringTime.Minutes(rig.Timer, plan.Dose) is { } on && on != rig.Timer.On
            ? rig with
            {
                Timer = rig.Timer with { On = on },
            }
            : null;

    /// <summary>True where a planted pot is given less in a day than its plants drink on a hot one.</summary>
    internal static bool IsThirsty(Plan plan) => plan.Dose.Pots.Any(pot => pot.Given < pot.HotDay);

    private sealed record Unplaced(Frame Frame, double Best, decimal Floor);
}
