namespace Dripwright.Engine.Stands.Frame;

/// <summary>What a printed push-fit joint bears. Nothing is published for such joints: the values stand until measured.</summary>
/// <remarks>
/// How to measure: press a metre of tube into a joint held in a vice, hang weights on its free end. Shift of the end times
/// 1/length² per newton gives the stiffness (less the tube's own bending), the weight at which it slips times its arm the
/// slip moment; a luggage scale gives the pull-out force. A slip is not simulated: a joint asked for more than its slip
/// moment is reported as over its limit, and then the frame sways more than computed.
/// Method page: docs/methods/stand-frame.md
/// </remarks>
public sealed record JointValues
{
    /// <summary>[N·m/rad] Turning of a tube in its socket per moment. Assumed.</summary>
    public double Stiffness { get; init; } = 1000;

    /// <summary>[N·m/rad] Twisting of a tube in its socket; 0: a round push-fit may spin.</summary>
    public double TwistStiffness { get; init; }

    /// <summary>[N·m] Moment at which the tube tilts out of its socket. Assumed.</summary>
    public double SlipMoment { get; init; } = 30;

    /// <summary>[N] Pull at which the tube slips out. Assumed.</summary>
    public double PullOut { get; init; } = 150;
}
