namespace Dripwright.Engine.Stands.Frame;

/// <summary>How a frame is solved.</summary>
public sealed record FrameOptions
{
    /// <summary>True to let axial forces act on the displaced shape (P-delta).</summary>
    public bool SecondOrder { get; init; }

    /// <summary>
    /// [-] Axial forces act on the displaced shape this many times as strongly; 1.6 for allowable-strength design after
    /// AISC 360 C2.1, 1 for what will be seen.
    /// </summary>
    public double AxialFactor { get; init; } = 1;

    /// <summary>True to let feet that only stand lift off and slip.</summary>
    public bool FeetLift { get; init; } = true;

    /// <summary>[-] Level force that the floor bears over what presses on a foot, 0 or more; infinite where no foot slips.</summary>
    public double Friction { get; init; } = double.PositiveInfinity;

    /// <summary>
    /// True for feet that slip freely on soft rollers, all alike, which keep the stand from rolling off as a whole: the bound
    /// of no friction.
    /// </summary>
    public bool Rollers { get; init; }

    /// <summary>Steps in which the loads come that do not rest on the stand, 1 or more; friction depends on the way.</summary>
    public int LoadSteps { get; init; } = 8;

    internal FootLaw Law => new(Friction, Rollers);
}
