namespace Dripwright.Engine.Water;

/// <summary>The water in the drain at one place.</summary>
/// <param name="Distance">[m] Distance from the high end.</param>
/// <param name="InvertHeight">[m] Height of the pipe's lowest inside point over that at the outlet.</param>
/// <param name="Depth">[m] Depth; where over the diameter, the pressure head over the lowest inside point.</param>
/// <param name="Flow">[m³/s] Flow.</param>
/// <param name="Velocity">[m/s] Mean velocity; 0 where dry or still.</param>
/// <param name="Froude">[-] Froude number: under 1 slow, over 1 fast. Null where the pipe is full or dry.</param>
public sealed record DrainPoint(
    double Distance,
    double InvertHeight,
    double Depth,
    double Flow,
    double Velocity,
    double? Froude
)
{
    /// <summary>[m] Height of the water surface (or pressure line) over the lowest inside point at the outlet.</summary>
    public double SurfaceHeight => InvertHeight + Depth;
}

/// <summary>The drain at one inflow.</summary>
/// <param name="Distance">[m] Distance from the high end.</param>
/// <param name="Inflow">[m³/s] What comes in here.</param>
/// <param name="Depth">[m] The greater of the depths just above and just below the inflow.</param>
/// <param name="DepthRatio">[-] Depth over diameter; over 1 where the pipe is under pressure.</param>
/// <param name="FlowBelow">[m³/s] Flow just below the inflow.</param>
/// <param name="Velocity">[m/s] Velocity just below the inflow.</param>
/// <param name="Froude">[-] Froude number just below the inflow; null where full or dry.</param>
/// <param name="SurfaceHeight">[m] Height of the water surface over the lowest inside point at the outlet.</param>
/// <param name="HeightOverPipe">[m] How far water would stand over the inside top of the pipe; 0 where it is not full.</param>
public sealed record DrainStation(
    double Distance,
    double Inflow,
    double Depth,
    double DepthRatio,
    double FlowBelow,
    double Velocity,
    double? Froude,
    double SurfaceHeight,
    double HeightOverPipe
);

/// <summary>A stretch of the drain.</summary>
/// <param name="From">[m] Upper end, distance from the high end of the pipe.</param>
/// <param name="To">[m] Lower end.</param>
public sealed record DrainStretch(double From, double To);

/// <summary>The water surface along a drain pipe with inflow at every pot.</summary>
/// <remarks>
/// Method page: docs/methods/drain-water-surface.md. All depths are over the pipe's lowest inside point.
/// </remarks>
public sealed record DrainProfile
{
    /// <summary>The run this was computed for.</summary>
    public required DrainRun Run { get; init; }

    /// <summary>Points to draw the water surface, from the high end down. Two points share each inflow's place.</summary>
    public required IReadOnlyList<DrainPoint> Points { get; init; }

    /// <summary>One entry for each inflow of the run, in its order.</summary>
    public required IReadOnlyList<DrainStation> Stations { get; init; }

    /// <summary>[m] Greatest depth.</summary>
    public required double GreatestDepth { get; init; }

    /// <summary>[m] Distance of the greatest depth from the high end.</summary>
    public required double GreatestDepthDistance { get; init; }

    /// <summary>[m³] Water standing and moving in the pipe.</summary>
    public required double StoredVolume { get; init; }

    /// <summary>Where the pipe runs full, under pressure.</summary>
    public required IReadOnlyList<DrainStretch> FullStretches { get; init; }

    /// <summary>[m] Distances at which fast flow turns to slow with a jump.</summary>
    public required IReadOnlyList<double> Jumps { get; init; }

    /// <summary>[m³/s] Greatest uniform flow at this slope (Manning, at 0.938 of the diameter); 0 for a level pipe.</summary>
    public required double UniformCapacity { get; init; }

    /// <summary>[-] Greatest depth over diameter; over 1 where the pipe is under pressure.</summary>
    public double GreatestDepthRatio => GreatestDepth / Run.Diameter;

    /// <summary>True where any part of the pipe runs full under pressure.</summary>
    public bool RunsFull => FullStretches.Count > 0;

    /// <summary>Computes the water surface.</summary>
    /// <remarks>
    /// Slow flow is followed from the outlet up, fast flow from the high end down; at each place the one with the
    /// greater force (M + Q²/gA) holds. Free fall: critical depth at the outlet. Time grows with the number of inflows.
    /// </remarks>
    /// <param name="run">The pipe and its inflows.</param>
    /// <returns>The profile. It always exists; a pipe that is too small comes out full, under pressure.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value of the run lies outside its stated range, or inflows are out of order.</exception>
    public static DrainProfile Of(DrainRun run)
    {
        ArgumentNullException.ThrowIfNull(run);
        run.Check();
        var surface = WaterSurface.Solve(
            new RoundSection(run.Diameter),
            run.Slope,
            run.Roughness,
            run.Length,
            run.Inflows,
            run.OutletWaterDepth
        );
        return DrainReport.Of(run, surface);
    }
}
