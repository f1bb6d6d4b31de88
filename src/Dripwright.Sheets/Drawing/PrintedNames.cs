using Dripwright.Engine.Printed;

namespace Dripwright.Sheets.Drawing;

/// <summary>What printed parts are called.</summary>
internal static class PrintedNames
{
    /// <summary>"three-way joint".</summary>
    public static string Of(PrintedKind kind) =>
        kind switch
        {
            PrintedKind.ThreeWay => "three-way joint",
            PrintedKind.FourWay => "four-way joint",
            PrintedKind.TubeClip => "tube clip",
            PrintedKind.DrainHanger => "drain hanger",
            PrintedKind.HoseClip => "hose clip",
            PrintedKind.DrillGuide => "drill guide",
            PrintedKind.LineRest => "line rest",
            PrintedKind.StakeHolder => "stake holder",
            PrintedKind.ClampBlock => "clamp block",
            PrintedKind.Coupon => "test coupon",
            _ => kind.ToString().ToLowerInvariant(),
        };
}
