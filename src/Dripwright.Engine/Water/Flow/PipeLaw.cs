using Dripwright.Engine.Physics;

namespace Dripwright.Engine.Water;

/// <summary>Head loss of a pipe by Darcy-Weisbach, with its local losses, for one viscosity.</summary>
/// <remarks>
/// h = (f L/D + ΣK) V²/2g, written as h = f Re² · L ν²/(2 g D³) + ΣK Re² · ν²/(2 g D²), so that it is smooth through zero
/// flow. Sources: see <see cref="Friction"/>. Method page: docs/methods/pipe-friction.md
/// </remarks>
public sealed class PipeLaw : ILinkLaw
{
    private readonly FrictionCurve _curve;
    private readonly double _reynoldsPerFlow;
    private readonly double _frictionScale;
    private readonly double _localScale;

    /// <summary>Works out once what every later call needs.</summary>
    /// <param name="pipe">The pipe.</param>
    /// <param name="kinematicViscosity">[m²/s] Viscosity of the water, greater than 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The pipe or the viscosity is not possible.</exception>
    public PipeLaw(Pipe pipe, double kinematicViscosity)
    {
        pipe.ThrowIfImpossible();
        Guard.Positive(kinematicViscosity);
        Pipe = pipe;
        var d = pipe.InsideDiameter;
        var velocityHeadPerReynoldsSquared =
            kinematicViscosity * kinematicViscosity / (2 * StandardGravity.Value * d * d);
        _curve = new FrictionCurve(pipe.Roughness / d);
        _reynoldsPerFlow = 4 / (Math.PI * d * kinematicViscosity);
        _frictionScale = pipe.Length / d * velocityHeadPerReynoldsSquared;
        _localScale = pipe.LossCoefficient * velocityHeadPerReynoldsSquared;
    }

    /// <summary>The pipe this law is of.</summary>
    public Pipe Pipe { get; }

    /// <summary>Reynolds number at a flow.</summary>
    /// <remarks>Re = 4 |Q| / (π D ν).</remarks>
    /// <param name="flow">[m³/s] Flow, either way.</param>
    /// <returns>[-] Reynolds number, never negative.</returns>
    public double Reynolds(double flow) => Math.Abs(flow) * _reynoldsPerFlow;

    /// <inheritdoc/>
    public HeadLoss At(double flow)
    {
        var reynolds = Math.Abs(flow) * _reynoldsPerFlow;
        var (value, slope) = _curve.At(reynolds);
        var head = reynolds * reynolds * _localScale + value * _frictionScale;
        var perFlow = (2 * reynolds * _localScale + slope * _frictionScale) * _reynoldsPerFlow;
        return new HeadLoss(flow < 0 ? -head : head, perFlow);
    }
}
