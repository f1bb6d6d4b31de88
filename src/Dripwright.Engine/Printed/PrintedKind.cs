namespace Dripwright.Engine.Printed;

/// <summary>What can be printed.</summary>
public enum PrintedKind
{
    /// <summary>Two tubes at an angle.</summary>
    Corner,

    /// <summary>Three tubes square to each other: the end of a row, over a leg.</summary>
    ThreeWay,

    /// <summary>Four tubes, two in line and two square to them and to each other: a middle frame, over a leg.</summary>
    FourWay,

    /// <summary>Four tubes in one plane.</summary>
    Cross,

    /// <summary>Three tubes in one plane, two in line.</summary>
    Tee,

    /// <summary>Any other set of tubes that meet, such as one with a brace.</summary>
    Joint,

    /// <summary>Two tubes in line.</summary>
    Coupler,

    /// <summary>Under a leg.</summary>
    Foot,

    /// <summary>Block between two tubes that cross, held by cable ties.</summary>
    TubeClip,

    /// <summary>Carries the drain pipe beside a leg or under a tube.</summary>
    DrainHanger,

    /// <summary>Sits on the rim of a pot and carries the feed line.</summary>
    LineRest,

    /// <summary>Holds a hose to a tube.</summary>
    HoseClip,

    /// <summary>Sets the pitch of holes along a pipe.</summary>
    DrillGuide,

    /// <summary>Holds an emitter's stake on the rim of a pot.</summary>
    StakeHolder,

    /// <summary>Half of a clamp around a hose, held by two screws.</summary>
    ClampBlock,

    /// <summary>Sockets with several clearances, to find the one that fits.</summary>
    Coupon,
}
