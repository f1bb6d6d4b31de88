using Dripwright.Engine.Stands.Sections;

namespace Dripwright.Engine.Stands.Frame;

/// <summary>What a support holds at a node.</summary>
[Flags]
public enum Held
{
    /// <summary>Nothing: the node is free.</summary>
    None = 0,

    /// <summary>Shift along x.</summary>
    X = 1,

    /// <summary>Shift along y.</summary>
    Y = 2,

    /// <summary>Shift along z.</summary>
    Z = 4,

    /// <summary>Turn about x.</summary>
    TurnX = 8,

    /// <summary>Turn about y.</summary>
    TurnY = 16,

    /// <summary>Turn about z.</summary>
    TurnZ = 32,

    /// <summary>All shifts.</summary>
    Pin = X | Y | Z,

    /// <summary>All turns.</summary>
    Turns = TurnX | TurnY | TurnZ,

    /// <summary>Everything.</summary>
    Fixed = Pin | Turns,
}

/// <summary>A node of the frame.</summary>
/// <param name="Name">What to call it.</param>
/// <param name="At">Where it is.</param>
/// <param name="Held">What holds it.</param>
/// <param name="Lifts">True for a foot that only stands: it pushes up, never pulls down, and when it lifts off it is
/// held by nothing but, if it was, against spinning.</param>
public sealed record FrameNode(string Name, Vector3 At, Held Held = Held.None, bool Lifts = false);

/// <summary>How an element's end turns against its node.</summary>
/// <param name="Bending">[N·m/rad] Against bending about either local axis: 0 for a hinge, infinite for a rigid joint.</param>
/// <param name="Twist">[N·m/rad] Against twist: 0 where it spins freely, infinite for a rigid joint.</param>
public readonly record struct EndStiffness(double Bending, double Twist)
{
    /// <summary>Rigid in everything.</summary>
    public static EndStiffness Rigid { get; } = new(double.PositiveInfinity, double.PositiveInfinity);

    /// <summary>A hinge that still passes twist.</summary>
    public static EndStiffness Hinge { get; } = new(0, double.PositiveInfinity);
}

/// <summary>A straight beam element between two nodes.</summary>
/// <param name="Name">What to call it.</param>
/// <param name="From">Node at x = 0.</param>
/// <param name="To">Node at its other end.</param>
/// <param name="Section">Cross-section.</param>
/// <param name="Steel">Material.</param>
/// <param name="Start">Joint at x = 0.</param>
/// <param name="End">Joint at its other end.</param>
/// <param name="Roll">[rad] Turn of its section about its own axis. At 0 local y is level and local z points up; in an upright
/// element local y is the room's y.</param>
public sealed record FrameElement(
    string Name,
    int From,
    int To,
    SectionProperties Section,
    Steel Steel,
    EndStiffness Start,
    EndStiffness End,
    double Roll = 0
);

/// <summary>A frame: nodes and the elements between them.</summary>
public sealed record FrameModel
{
    /// <summary>A frame.</summary>
    /// <param name="nodes">Nodes.</param>
    /// <param name="elements">Elements, each between two nodes that lie apart.</param>
    /// <exception cref="ArgumentOutOfRangeException">An element names a node that is not there or has no length; a section
    /// or joint has a measure outside its range.</exception>
    public FrameModel(IReadOnlyList<FrameNode> nodes, IReadOnlyList<FrameElement> elements)
    {
        ArgumentNullException.ThrowIfNull(nodes);
        ArgumentNullException.ThrowIfNull(elements);
        IsNode(0, nodes.Count);
        Nodes = nodes;
        Elements = elements;
        foreach (var node in nodes)
        {
            Guard.Finite(node.At.X);
            Guard.Finite(node.At.Y);
            Guard.Finite(node.At.Z);
        }

        foreach (var element in elements)
        {
            IsNode(element.From, nodes.Count);
            IsNode(element.To, nodes.Count);
            Guard.Positive(nodes[element.From].At.DistanceTo(nodes[element.To].At));
            Guard.Positive(element.Section.Area);
            Guard.Positive(element.Section.InertiaY);
            Guard.Positive(element.Section.InertiaZ);
            Guard.Positive(element.Section.Torsion);
            Guard.Positive(element.Steel.Young);
            Guard.Positive(element.Steel.Shear);
            Guard.Finite(element.Roll);
            foreach (
                var k in (ReadOnlySpan<double>)
                    [element.Start.Bending, element.Start.Twist, element.End.Bending, element.End.Twist]
            )
            {
                if (!(k >= 0))
                {
                    throw new ArgumentOutOfRangeException(nameof(elements), k, "A joint's stiffness is 0 or more.");
                }
            }
        }
    }

    /// <summary>Nodes.</summary>
    public IReadOnlyList<FrameNode> Nodes { get; }

    /// <summary>Elements.</summary>
    public IReadOnlyList<FrameElement> Elements { get; }

    /// <summary>[m] Length of an element.</summary>
    /// <param name="element">Index of the element.</param>
    public double LengthOf(int element) => Nodes[Elements[element].From].At.DistanceTo(Nodes[Elements[element].To].At);

    private static void IsNode(int node, int count)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(node);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(node, count);
    }
}
