namespace Dripwright.Engine.Wires;

/// <summary>Something that hangs on the wire.</summary>
/// <param name="Station">[m] Along the span from its left end, between the ends; hooks move with the wire as it stretches.</param>
/// <param name="Force">[N] Its weight, 0 or more.</param>
public readonly record struct WireLoad(double Station, double Force);

/// <summary>One wire between two supports.</summary>
public sealed record WireSpan
{
    /// <summary>The wire.</summary>
    public required WireKind Kind { get; init; }

    /// <summary>[m] Level distance between the supports, over 0.</summary>
    public required double Length { get; init; }

    /// <summary>[m] Height of the right support over the left one; negative when it is lower.</summary>
    public double Rise { get; init; }

    /// <summary>[N] Level pull with which the empty wire was tightened, over 0, at most its breaking force.</summary>
    public required double Tightened { get; init; }
}

/// <summary>The wire at one place.</summary>
/// <param name="Station">[m] Level distance from the left support.</param>
/// <param name="Drop">[m] Below the left support.</param>
/// <param name="Tension">[N] Pull in the wire just right of the place.</param>
public readonly record struct WirePoint(double Station, double Drop, double Tension);

/// <summary>Pull of the wire on one of its supports.</summary>
/// <param name="Level">[N] Level part, towards the span.</param>
/// <param name="Down">[N] Downward part; negative when the wire pulls up.</param>
public readonly record struct SupportPull(double Level, double Down)
{
    /// <summary>[N] The whole pull.</summary>
    public double Total => double.Hypot(Level, Down);

    /// <summary>[rad] How far the pull points below the horizontal.</summary>
    public double Slope => Math.Atan2(Down, Level);
}

/// <summary>A loaded wire.</summary>
/// <param name="SlackLength">[m] Length of the wire without any pull.</param>
/// <param name="Points">Supports and loads, from left to right, with the lowest point of each stretch between.</param>
/// <param name="Sag">[m] Deepest point below the straight line between the supports.</param>
/// <param name="SagStation">[m] Where that is.</param>
/// <param name="GreatestTension">[N] Greatest pull in the wire.</param>
/// <param name="Left">Pull on the left support.</param>
/// <param name="Right">Pull on the right support.</param>
public sealed record WireShape(
    double SlackLength,
    IReadOnlyList<WirePoint> Points,
    double Sag,
    double SagStation,
    double GreatestTension,
    SupportPull Left,
    SupportPull Right
);
