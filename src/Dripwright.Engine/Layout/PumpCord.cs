using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Layout;

/// <summary>The way of the pump's cord to its outlet.</summary>
internal static class PumpCord
{
    /// <summary>[m] Cord that hangs below the outlet, so that water drips off before the plug. Common practice.</summary>
    private const double DripLoop = 0.3;

    /// <summary>[m] Cord from the pump up inside the tank, straight to the outlet, and a drip loop.</summary>
    public static double Needed(Rig rig, RigLayout layout, ResolvedPump pump)
    {
        var rise = rig.Site.OutletHeight - layout.Tank.Rim;
        var across = Math.Sqrt((rig.Site.OutletDistance * rig.Site.OutletDistance) + (rise * rise));
        return layout.Parts.Tank.Height - pump.InletHeight + across + DripLoop;
    }
}
