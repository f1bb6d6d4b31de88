using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Layout;

namespace Dripwright.Engine.Printed;

/// <summary>What is measured and chosen for a fitting. A kind reads only what concerns it.</summary>
public sealed record PrintParameters
{
    /// <summary>Piece number, raised on the part; empty for none. Capitals, digits, space and <c>. - +</c>.</summary>
    public string Number { get; init; } = "";

    /// <summary>Shape of the stand's tube.</summary>
    public TubeShape TubeShape { get; init; } = TubeShape.Round;

    /// <summary>[m] Outside diameter or side of the tube, as measured.</summary>
    public double TubeOutside { get; init; } = 0.0254;

    /// <summary>[m] Gap on each side between tube and socket as drawn; negative squeezes. Found with the coupon.</summary>
    public double Clearance { get; init; } = 0.0002;

    /// <summary>[m] How deep a tube goes in; left out, one and a half times its size.</summary>
    public double? SocketDepth { get; init; }

    /// <summary>[m] From a joint's centre to the tube's end; left out, the least that keeps the sockets apart.</summary>
    public double? JointCentre { get; init; }

    /// <summary>Ways in which the tubes leave a joint, in the room (z up); left out, those of the kind.</summary>
    public IReadOnlyList<Vector3>? Sockets { get; init; }

    /// <summary>[m] Outside diameter of the drain pipe.</summary>
    public double PipeOutside { get; init; } = 0.0603;

    /// <summary>What a drain hanger is tied to.</summary>
    public HangerMount HangerMount { get; init; } = HangerMount.Leg;

    /// <summary>[m] From the axis of a drain hanger's tube to that of its pipe; left out, the least that has room.</summary>
    public double? HangerReach { get; init; }

    /// <summary>[m] On a leg: how far the middle of a drain hanger's foot lies below the pipe's axis.</summary>
    public double HangerLow { get; init; }

    /// <summary>[N] Weight of pipe and water on a drain hanger: three feet of full 1 1/2 in pipe.</summary>
    public double HangerLoad { get; init; } = 25;

    /// <summary>[m] Outside diameter of the hose.</summary>
    public double HoseOutside { get; init; } = 0.0160;

    /// <summary>[m] Distance between holes.</summary>
    public double HolePitch { get; init; } = 0.3048;

    /// <summary>[m] Pilot drill.</summary>
    public double PilotDrill { get; init; } = 0.004;

    /// <summary>[m] Diameter of the emitter's stake.</summary>
    public double StakeDiameter { get; init; } = 0.005;

    /// <summary>[m] Thickness of the pot's rim.</summary>
    public double RimThickness { get; init; } = 0.002;

    /// <summary>[m] Radius of a round pot's rim; null where the rim is straight.</summary>
    public double? RimRadius { get; init; }

    /// <summary>The printer.</summary>
    public Printer Printer { get; init; } = new();

    /// <summary>The plastic.</summary>
    public Plastic Plastic { get; init; } = Plastic.Petg;

    /// <summary>The load on each socket.</summary>
    public JointLoad Load { get; init; } = JointLoad.Usual;
}
