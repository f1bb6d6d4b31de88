using CsCheck;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Printed;

namespace Dripwright.Solids.Tests;

/// <summary>Parameters as different growers measure and choose them.</summary>
internal static class PrintGen
{
    /// <summary>All kinds.</summary>
    public static PrintedKind[] Kinds { get; } = Enum.GetValues<PrintedKind>();

    /// <summary>Any in range; not all kinds can be made from all of them.</summary>
    public static Gen<PrintParameters> Parameters { get; } =
        from shape in OneOf(TubeShape.Round, TubeShape.Square)
        from tube in Gen.Double[0.014, 0.050]
        from clearance in Gen.Double[-0.0001, 0.0006]
        from deep in Gen.Double[1, 2.5]
        from ends in Gen.Double[0.8, 2]
        from pipe in Gen.Double[0.018, 0.115]
        from hose in Gen.Double[0.010, 0.040]
        from pitch in Gen.Double[0.10, 0.60]
        from nozzle in OneOf(0.0003, 0.0004, 0.0006)
        from moment in Gen.Double[0, 12]
        from number in OneOf("", "A1", "W12", "7")
        from plastic in OneOf(Plastic.Petg, Plastic.Asa)
        from stake in Gen.Double[0.003, 0.012]
        from rim in Gen.Double[0.001, 0.006]
        from round in Gen.Double[0.05, 0.4]
        from mount in OneOf(HangerMount.Leg, HangerMount.Cross, HangerMount.Rail)
        from reach in Gen.Double[0, 0.12]
        from low in Gen.Double[0, 0.06]
        from weight in Gen.Double[0, 60]
        select new PrintParameters
        {
            Number = number,
            TubeShape = shape,
            TubeOutside = tube,
            Clearance = clearance,
            SocketDepth = deep * tube,
            JointCentre = ends * tube,
            PipeOutside = pipe,
            HoseOutside = hose,
            HolePitch = pitch,
            StakeDiameter = stake,
            RimThickness = rim,
            RimRadius = round > 0.3 ? null : round,
            HangerMount = mount,
            // Some as near as may be, some farther; too near is refused.
            HangerReach = reach < 0.02 ? null : (tube / 2) + (pipe / 2) + reach,
            HangerLow = low < 0.01 ? 0 : low,
            HangerLoad = weight,
            Plastic = plastic,
            Printer = new() { Nozzle = nozzle, Layer = nozzle / 2 },
            Load = new(moment, 308),
        };

    private static Gen<T> OneOf<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);
}
