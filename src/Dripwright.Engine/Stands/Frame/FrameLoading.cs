namespace Dripwright.Engine.Stands.Frame;

/// <summary>A force and a moment on a node.</summary>
/// <param name="Node">Node.</param>
/// <param name="Force">[N] Force.</param>
/// <param name="Moment">[N·m] Moment.</param>
public readonly record struct NodeLoad(int Node, Vector3 Force, Vector3 Moment = default);

/// <summary>A force at a place on an element.</summary>
/// <param name="Element">Element.</param>
/// <param name="At">[m] From the element's start; 0 to its length.</param>
/// <param name="Force">[N] Force in the axes of the room.</param>
public readonly record struct PointLoad(int Element, double At, Vector3 Force);

/// <summary>An even load along a whole element.</summary>
/// <param name="Element">Element.</param>
/// <param name="PerMetre">[N/m] Load per length in the axes of the room.</param>
public readonly record struct LineLoad(int Element, Vector3 PerMetre);

/// <summary>All loads that act together.</summary>
public sealed record FrameLoading
{
    /// <summary>On nodes.</summary>
    public IReadOnlyList<NodeLoad> Nodes { get; init; } = [];

    /// <summary>At places on elements.</summary>
    public IReadOnlyList<PointLoad> Points { get; init; } = [];

    /// <summary>Along elements.</summary>
    public IReadOnlyList<LineLoad> Lines { get; init; } = [];

    /// <summary>These loads, each times a factor.</summary>
    /// <param name="factor">[-] Factor.</param>
    public FrameLoading Times(double factor) =>
        new()
        {
            Nodes = [.. Nodes.Select(l => l with { Force = factor * l.Force, Moment = factor * l.Moment })],
            Points = [.. Points.Select(l => l with { Force = factor * l.Force })],
            Lines = [.. Lines.Select(l => l with { PerMetre = factor * l.PerMetre })],
        };

    /// <summary>These loads and others.</summary>
    /// <param name="other">The others.</param>
    public FrameLoading And(FrameLoading other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return new()
        {
            Nodes = [.. Nodes, .. other.Nodes],
            Points = [.. Points, .. other.Points],
            Lines = [.. Lines, .. other.Lines],
        };
    }
}
