namespace Dripwright.Engine.Printed.Shapes;

/// <summary>A solid in another place.</summary>
/// <param name="Part">The solid.</param>
/// <param name="Where">Its placement.</param>
public sealed record Moved(Solid Part, Placement Where) : Solid
{
    /// <inheritdoc/>
    public override double? Volume => Part.Volume;

    /// <inheritdoc/>
    public override double MostVolume => Part.MostVolume;

    /// <inheritdoc/>
    public override IEnumerable<Vector3> Outermost => Part.Outermost.Select(Where.Of);
}

/// <summary>Solids grown together.</summary>
/// <param name="Parts">One or more solids.</param>
/// <param name="Shared">[m³] What they have in common, counted once too often by adding; null where not known.</param>
/// <param name="SharedAtLeast">[m³] What they have in common at least, where it is not known.</param>
public sealed record Union(IReadOnlyList<Solid> Parts, double? Shared = null, double SharedAtLeast = 0) : Solid
{
    /// <inheritdoc/>
    public override double? Volume
    {
        get
        {
            var sum = -Shared;
            foreach (var part in Parts)
            {
                sum += part.Volume;
            }

            return sum;
        }
    }

    /// <inheritdoc/>
    public override double MostVolume => Parts.Sum(part => part.MostVolume) - (Shared ?? SharedAtLeast);

    /// <inheritdoc/>
    public override IEnumerable<Vector3> Outermost => Parts.SelectMany(part => part.Outermost);
}

/// <summary>A solid with others taken out of it.</summary>
/// <param name="From">What is cut.</param>
/// <param name="Cuts">What is taken out.</param>
/// <param name="Removed">[m³] What the cuts really take away; null where not known.</param>
/// <param name="RemovedAtLeast">[m³] What they take away at least, where it is not known.</param>
public sealed record Difference(
    Solid From,
    IReadOnlyList<Solid> Cuts,
    double? Removed = null,
    double RemovedAtLeast = 0
) : Solid
{
    /// <inheritdoc/>
    public override double? Volume => From.Volume - Removed;

    /// <inheritdoc/>
    public override double MostVolume => From.MostVolume - (Removed ?? RemovedAtLeast);

    /// <inheritdoc/>
    public override IEnumerable<Vector3> Outermost => From.Outermost;
}
