using Dripwright.Engine.Stands.Frame;
using Dripwright.Engine.Stands.Loads;

namespace Dripwright.Engine.Stands.Checks;

/// <summary>A stand under one combination of loads.</summary>
public sealed record CaseResult
{
    /// <summary>The loads.</summary>
    public required StandLoads Loads { get; init; }

    /// <summary>The frame solved in second order, or why it does not stand.</summary>
    public required FrameOutcome Outcome { get; init; }

    /// <summary>
    /// Multiple of these loads at which it buckles; null where it does not, where it does not even stand, or where only the
    /// lowest of all was asked for and another combination has it.
    /// </summary>
    public required FrameBuckling? Buckling { get; init; }

    /// <summary>How far each tube is used up; empty where it does not stand.</summary>
    public required IReadOnlyList<TubeUse> Uses { get; init; }

    /// <summary>What the drain's slope becomes; null where it does not stand or no drain hangs on it.</summary>
    public required DrainSettling? Drain { get; init; }

    /// <summary>Whether it tips as a whole.</summary>
    public required TipCheck Tip { get; init; }

    /// <summary>The solution; null where it does not stand.</summary>
    public FrameSolution? Solution => Outcome as FrameSolution;

    /// <summary>Why it does not stand; null where it does.</summary>
    public FrameFault? Fault => Outcome as FrameFault;

    /// <summary>The tube that is used up most; null where it does not stand.</summary>
    public TubeUse? Worst => Uses.MaxBy(u => u.Utilisation);

    /// <summary>Feet with what the floor puts on them in newtons; those that lifted have none.</summary>
    /// <param name="frame">The stand.</param>
    public IReadOnlyList<(int Node, Vector3 Force)> FeetOf(StandFrame frame)
    {
        ArgumentNullException.ThrowIfNull(frame);
        return Solution is { } s ? [.. frame.Feet.Select(n => (n, s.Reaction(n).Force))] : [];
    }

    /// <summary>[m] Furthest that a foot slips level.</summary>
    public double Slip =>
        (Solution?.FootShifts ?? [])
            .Where(f => f.Motion != FootMotion.Lifts)
            .Select(f => Math.Sqrt((f.Shift.X * f.Shift.X) + (f.Shift.Y * f.Shift.Y)))
            .DefaultIfEmpty(0)
            .Max();

    /// <summary>[m] Highest that a foot lifts.</summary>
    public double Lift => (Solution?.FootShifts ?? []).Select(f => f.Shift.Z).DefaultIfEmpty(0).Max();

    /// <summary>[N] Level force of each tie to the back; none where it is not tied or does not stand.</summary>
    /// <param name="frame">The stand.</param>
    public IReadOnlyList<double> TiesOf(StandFrame frame)
    {
        ArgumentNullException.ThrowIfNull(frame);
        return Solution is { } s ? [.. frame.Ties.Select(n => (s.Reaction(n).Force with { Z = 0 }).Length)] : [];
    }

    /// <summary>
    /// [-] Multiple of the axial forces' effect at which it gives way, where it stands as loaded and not with the effect that
    /// the design must bear; null elsewhere.
    /// </summary>
    public double? Margin { get; init; }

    /// <summary>[-] Level force over weight on the floor.</summary>
    public double SlideRatio
    {
        get
        {
            var sum = Loads.Acting.Aggregate(default(Vector3), (a, b) => a + b.Force);
            return Math.Sqrt((sum.X * sum.X) + (sum.Y * sum.Y)) / Math.Max(-sum.Z, 1e-9);
        }
    }
}

/// <summary>The strength of one kind of row's stand.</summary>
public sealed record RowStand
{
    /// <summary>[-] Multiple of the loads that must not make it buckle; the safety factor of AISC 360.</summary>
    public const double LeastBuckling = AllowableStrength.Safety;

    /// <summary>[-] Beyond this multiple nobody asks when it buckles.</summary>
    public const double BucklingOfInterest = 10;

    /// <summary>[-] Sag of a rail over its span under all load (International Building Code, table 1604.3, floors).</summary>
    public const double MostSag = 1.0 / 240;

    /// <summary>The stand as a frame.</summary>
    public required StandFrame Frame { get; init; }

    /// <summary>Every combination.</summary>
    public required IReadOnlyList<CaseResult> Cases { get; init; }

    /// <summary>Tipping under a person on dried-out pots; null where nobody leans on it.</summary>
    public (StandCase Case, TipCheck Tip)? DryLean { get; init; }

    /// <summary>[N] Level force at the rails that tips the bare stand.</summary>
    public required double EmptyTippingForce { get; init; }

    /// <summary>The row's weight over its footprint.</summary>
    public required FloorLoad Floor { get; init; }

    /// <summary>Whether it would hold on feet that slip freely; null where that was not asked.</summary>
    public bool? HoldsOnRollers { get; init; }

    /// <summary>Whether it would hold on feet that cannot slip; null where that was not asked.</summary>
    public bool? HoldsStuck { get; init; }

    /// <summary>[N] Largest level force that one of its ties bears; null where it is not tied.</summary>
    public double? TieForce => Tie?.Force;

    /// <summary>
    /// The combination in which one of its ties bears most, and [N] the level force there; null where it is not tied. A person on
    /// dried-out pots and one on the bare frame count besides the combinations.
    /// </summary>
    public (StandCase Case, double Force)? Tie =>
        Frame.Ties.Count > 0
            ? Cases
                .Select(c => (c.Loads.Case, Force: c.TiesOf(Frame).DefaultIfEmpty(0).Max()))
                .Concat(LightTies)
                .MaxBy(c => c.Force)
            : null;

    /// <summary>[N] Largest level force of a tie under a person on dried-out pots and on the bare frame; empty where it is not tied.</summary>
    public IReadOnlyList<(StandCase Case, double Force)> LightTies { get; init; } = [];

    /// <summary>Changes of the rig that were tried; empty where nothing was wrong or nothing was asked.</summary>
    public IReadOnlyList<StandTrial> Trials { get; init; } = [];

    /// <summary>[-] Of the tube or joint used up most in any combination; null where one brings it down.</summary>
    public double? Utilisation => Weakest?.Use.Utilisation;

    /// <summary>The tube or joint used up most and in which combination; null where a combination brings the stand down.</summary>
    public (StandTube Tube, TubeUse Use, CaseResult Case)? Weakest
    {
        get
        {
            if (Cases.Any(c => c.Fault is not null))
            {
                return null;
            }

            var worst = Cases.MaxBy(c => c.Worst!.Utilisation)!;
            return (Frame.Tubes[worst.Worst!.Tube], worst.Worst, worst);
        }
    }

    /// <summary>The first combination that brings it down; null where none does.</summary>
    public CaseResult? Fallen => Cases.FirstOrDefault(c => c.Fault is not null);

    /// <summary>
    /// [-] Lowest multiple of the loads at which it buckles; null where it does not buckle at any, or, where not every
    /// multiple was asked for, at none up to <see cref="BucklingOfInterest"/>.
    /// </summary>
    public double? Buckling => Cases.Min(c => Least(c.Buckling?.Factor, c.Margin));

    private static double? Least(double? one, double? other) =>
        one is { } a && other is { } b ? Math.Min(a, b) : one ?? other;

    /// <summary>[-] Lowest slope of the drain; null without one.</summary>
    public double? LowestSlope => Cases.Min(c => c.Drain?.LowestSlope);

    /// <summary>[-] Largest sag of a rail over its span.</summary>
    public double LargestSag =>
        Cases
            .SelectMany(c => c.Uses)
            .Where(u => Frame.Tubes[u.Tube].Member.Role == Layout.MemberRole.Rail)
            .Select(u => u.Sag / Frame.Tubes[u.Tube].Span)
            .DefaultIfEmpty(0)
            .Max();

    /// <summary>[N] Largest push of one foot on the floor.</summary>
    public double LargestFootForce =>
        Cases.SelectMany(c => c.FeetOf(Frame)).Select(f => f.Force.Z).DefaultIfEmpty(0).Max();

    /// <summary>[-] Lowest safety against tipping in any combination; null where nothing tips it.</summary>
    public double? TipFactor => WorstTip.Tip.Factor;

    /// <summary>The combination that tips it most easily.</summary>
    public (StandCase Case, TipCheck Tip) WorstTip =>
        Cases
            .Select(c => (c.Loads.Case, c.Tip))
            .Concat(DryLean is { } lean ? [lean] : [])
            .MinBy(c => c.Tip.Factor ?? double.PositiveInfinity);

    /// <summary>True where every combination is borne, within the limits of strength, buckling, sag and slope.</summary>
    public bool Holds =>
        Utilisation <= 1
        && !(Buckling < LeastBuckling)
        && LargestSag <= MostSag
        && !Cases.Any(c => c.Drain is { LaidSlope: > 0, LowestSlope: <= 0 });
}

/// <summary>The strength of all stands of a rig, and what its reservoir puts on the floor.</summary>
/// <param name="Rows">One for each kind of row that has a stand.</param>
/// <param name="Reservoir">The full reservoir on its floor.</param>
public sealed record StandPlan(IReadOnlyList<RowStand> Rows, FloorLoad Reservoir);
