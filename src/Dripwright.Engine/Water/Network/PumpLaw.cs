namespace Dripwright.Engine.Water;

/// <summary>A pump as a link: it adds head forward, and is a choke when stopped or driven outside its curve.</summary>
/// <remarks>
/// Running, 0 ≤ Q ≤ Q_max: the curve. Outside it the curve's end tangent is followed and K V²/2g of the excess added:
/// backward (stronger head from behind, no check valve) and past the end (water falls through it). No maker publishes
/// these; the continuation is our own, chosen so that the law never falls and has no kink, and the solution names each
/// pump it is used for. Stopped: K V²/2g either way.
/// </remarks>
public sealed class PumpLaw : ILinkLaw
{
    private readonly PumpCurve _curve;
    private readonly bool _running;
    private readonly double _choke;

    /// <summary>Makes the link law of a pump.</summary>
    /// <param name="curve">Its curve.</param>
    /// <param name="setting">How it stands in the line.</param>
    /// <exception cref="ArgumentOutOfRangeException">The setting's bore or K is not possible.</exception>
    public PumpLaw(PumpCurve curve, PumpSetting setting)
    {
        ArgumentNullException.ThrowIfNull(curve);
        ArgumentNullException.ThrowIfNull(setting);
        Guard.Positive(setting.PortDiameter);
        Guard.NotNegative(setting.StoppedLossCoefficient);
        _curve = curve;
        _running = setting.Running;
        var velocityPerFlow = 4 / (Math.PI * setting.PortDiameter * setting.PortDiameter);
        _choke = LocalLoss.Head(setting.StoppedLossCoefficient, velocityPerFlow);
    }

    /// <summary>True when a flow is past the end of the running pump's curve, or backward through it.</summary>
    /// <remarks>Compares with 0 and <see cref="PumpCurve.LargestFlow"/>.</remarks>
    /// <param name="flow">[m³/s] Flow through the pump.</param>
    /// <returns>True outside the curve.</returns>
    public bool IsOutsideCurve(double flow) => _running && (flow < 0 || flow > _curve.LargestFlow);

    /// <inheritdoc/>
    public HeadLoss At(double flow)
    {
        if (!_running)
        {
            return Choke(flow);
        }

        var inside = Math.Clamp(flow, 0, _curve.LargestFlow);
        var (head, slope) = _curve.At(inside);
        var excess = flow - inside;
        if (excess == 0)
        {
            return new HeadLoss(-head, -slope);
        }

        var choke = Choke(excess);
        return new HeadLoss(choke.Head - head - slope * excess, choke.Slope - slope);
    }

    private HeadLoss Choke(double flow) => new(_choke * flow * Math.Abs(flow), 2 * _choke * Math.Abs(flow));
}
