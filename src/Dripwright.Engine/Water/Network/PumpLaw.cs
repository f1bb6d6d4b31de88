namespace Dripwright.Engine.Water;

/// <summary>A pump as a link: it adds head forward, and is a choke when stopped or driven outside its curve.</summary>
/// <remarks>
/// Running, 0 ≤ Q ≤ Q_max: the curve. Q &lt; 0 (stronger head from behind, no check valve): the shut-off head plus
/// K V²/2g. Q &gt; Q_max (water falls through it): the last head less K (V - V_max)²/2g - the curve is not extended, the
/// solution names such pumps. Stopped: K V²/2g either way. These two continuations are our own, chosen so that the law
/// never falls; common practice gives no curve there.
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

    /// <summary>[m] Head the pump can add at most: its shut-off head, or nothing when stopped.</summary>
    public double HighestGain => _running ? _curve.ShutOffHead : 0;

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

        if (flow < 0)
        {
            var back = Choke(flow);
            return back with { Head = back.Head - _curve.ShutOffHead };
        }

        if (flow > _curve.LargestFlow)
        {
            var beyond = Choke(flow - _curve.LargestFlow);
            return beyond with { Head = beyond.Head - _curve.LowestHead };
        }

        var (head, slope) = _curve.At(flow);
        return new HeadLoss(-head, -slope);
    }

    private HeadLoss Choke(double flow) => new(_choke * flow * Math.Abs(flow), 2 * _choke * Math.Abs(flow));
}
