using Dripwright.Engine.Findings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Proposing;

/// <summary>A frame placed in the room.</summary>
/// <param name="Frame">The frame.</param>
/// <param name="Rig">The rig with a stand-in for pump and emitter, and no strainer.</param>
/// <param name="Layout">Its layout.</param>
/// <param name="Floor">Cost of all its parts but pump, emitters and strainer: no rig of this frame costs less beside those.</param>
/// <param name="Blocked">What stands against it whatever pump and emitter it gets.</param>
internal sealed record FrameDraft(Frame Frame, Rig Rig, RigLayout Layout, decimal Floor, IReadOnlyList<Finding> Blocked)
{
    /// <summary>[m] Highest emitter over the reservoir's full level.</summary>
    public double Lift => Layout.Rows.SelectMany(r => r.Emitters).Max(e => e.Outlet) - Layout.Tank.Full;

    /// <summary>[m] Lowest emitter over the reservoir's full level.</summary>
    public double LeastLift => Layout.Rows.SelectMany(r => r.Emitters).Min(e => e.Outlet) - Layout.Tank.Full;

    /// <summary>Emitters in all.</summary>
    public int Emitters => Layout.Rows.Sum(r => r.Emitters.Count);
}
