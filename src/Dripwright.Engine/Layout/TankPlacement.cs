using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Layout;

/// <summary>Places the reservoir at the rows' end, in line with the first row's drain.</summary>
internal static class TankPlacement
{
    /// <summary>[m] How far inside the tank's near side the return drips in.</summary>
    private const double MouthInset = 0.12;

    /// <summary>[m] X of the point where the return drips in.</summary>
    public static double MouthX(Rig rig, RigParts parts, double rowEndX)
    {
        double inset = Math.Min(MouthInset, parts.Tank.Length / 2);
        // Standing under the row, the tank takes the water straight below the row's end.
        double beyond = Math.Max(0, rig.Reservoir.Gap + inset);
        return rig.Reservoir.At == RowEnd.Left ? rowEndX - beyond : rowEndX + beyond;
    }

    /// <summary>Places the tank; <paramref name="mouth"/> is where the return's last elbow came to be.</summary>
    public static TankPlace Place(Rig rig, RigParts parts, double rowEndX, double lineY, Point3 mouth)
    {
        TankMeasures tank = parts.Tank;
        Reservoir spec = rig.Reservoir;
        double depth = tank.Width;
        double near = spec.At == RowEnd.Left ? rowEndX - spec.Gap : rowEndX + spec.Gap;
        double left = spec.At == RowEnd.Left ? near - tank.Length : near;
        double right = left + tank.Length;
        double floor = spec.Base;
        double outletHeight = parts.Pump is { } pump ? pump.InletHeight : GravityOutletHeight(parts);
        double x = parts.Pump is null ? near : (left + right) / 2;
        return new TankPlace(
            left,
            right,
            lineY - (depth / 2),
            lineY + (depth / 2),
            floor,
            floor + tank.Height,
            floor + (spec.Fill * tank.Height),
            floor + spec.LowestLevel,
            new Point3(x, lineY, floor + outletHeight),
            mouth
        );
    }

    // A bulkhead in the wall needs its flange clear of the floor: one and a half times the pipe's outside.
    private static double GravityOutletHeight(RigParts parts) => 1.5 * parts.Header.OutsideDiameter;
}
