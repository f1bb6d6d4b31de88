using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Layout;

/// <summary>Places the reservoir at the rows' end, in line with the first row's drain.</summary>
internal static class TankPlacement
{
    /// <summary>[m] How far inside the tank's near side the return drips in.</summary>
    private const double MouthInset = 0.12;

    /// <summary>[m] X of the point where the return drips in: as near to where the water comes from as the tank allows.</summary>
    public static double MouthX(Rig rig, RigParts parts, double rowEndX, double fromX)
    {
        (var left, var right) = Sides(rig, parts, rowEndX);
        var inset = Math.Min(MouthInset, parts.Tank.Length / 2);
        return Math.Clamp(fromX, left + inset, Math.Max(left + inset, right - inset));
    }

    private static (double Left, double Right) Sides(Rig rig, RigParts parts, double rowEndX)
    {
        var length = parts.Tank.Length;
        return rig.Reservoir.At == RowEnd.Left
            ? (rowEndX - rig.Reservoir.Gap - length, rowEndX - rig.Reservoir.Gap)
            : (rowEndX + rig.Reservoir.Gap, rowEndX + rig.Reservoir.Gap + length);
    }

    /// <summary>Places the tank; <paramref name="mouth"/> is where the return's last elbow came to be.</summary>
    public static TankPlace Place(Rig rig, RigParts parts, double rowEndX, double lineY, Vector3 mouth)
    {
        var tank = parts.Tank;
        var spec = rig.Reservoir;
        var depth = tank.Width;
        (var left, var right) = Sides(rig, parts, rowEndX);
        var near = spec.At == RowEnd.Left ? right : left;
        var floor = spec.Base;
        var outletHeight = parts.Pump is { } pump ? pump.InletHeight : GravityOutletHeight(parts);
        var x = parts.Pump is null ? near : (left + right) / 2;
        return new TankPlace(
            left,
            right,
            lineY - (depth / 2),
            lineY + (depth / 2),
            floor,
            floor + tank.Height,
            floor + (spec.Fill * tank.Height),
            floor + spec.LowestLevel,
            new Vector3(x, lineY, floor + outletHeight),
            mouth
        );
    }

    // A bulkhead in the wall needs its flange clear of the floor: one and a half times the pipe's outside.
    private static double GravityOutletHeight(RigParts parts) => 1.5 * parts.Header.OutsideDiameter;
}
