namespace Dripwright.Engine.Water;

/// <summary>How the head between a link's ends depends on the flow through it.</summary>
/// <remarks>
/// The law must be defined for every finite flow, forward and backward, be continuous, and never fall as flow grows:
/// then a network of such links has one answer and the solver finds it.
/// </remarks>
public interface ILinkLaw
{
    /// <summary>Head loss and its derivative at a flow.</summary>
    /// <param name="flow">[m³/s] Flow from the link's start to its end; negative for the other way.</param>
    /// <returns>Head at the start less head at the end, and the slope of that by flow.</returns>
    HeadLoss At(double flow);
}
