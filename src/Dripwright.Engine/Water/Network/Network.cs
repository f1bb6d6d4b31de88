namespace Dripwright.Engine.Water;

/// <summary>A feed network: junctions, water surfaces, the links between them and the emitters they feed.</summary>
/// <remarks>
/// Only a description; <see cref="NetworkSolver"/> finds its flows. Nodes, links and emitters are numbered from 0 in the
/// order they are added. Any topology is allowed: trees, loops, several sources, parts that nothing feeds.
/// Method page: docs/methods/feed-network.md
/// </remarks>
public sealed class Network
{
    private readonly List<Node> _nodes = [];
    private readonly List<Link> _links = [];
    private readonly List<(int Node, Emitter Emitter)> _emitters = [];

    /// <summary>Starts an empty network.</summary>
    /// <param name="kinematicViscosity">[m²/s] Viscosity of the water in it, greater than 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The viscosity is not positive.</exception>
    public Network(double kinematicViscosity)
    {
        Guard.Positive(kinematicViscosity);
        KinematicViscosity = kinematicViscosity;
    }

    /// <summary>[m²/s] Viscosity of the water.</summary>
    public double KinematicViscosity { get; }

    /// <summary>How many nodes there are, junctions and fixed heads together.</summary>
    public int NodeCount => _nodes.Count;

    /// <summary>How many links there are.</summary>
    public int LinkCount => _links.Count;

    /// <summary>How many emitter entries there are; an entry may stand for several alike.</summary>
    public int EmitterCount => _emitters.Count;

    internal IReadOnlyList<Node> Nodes => _nodes;

    internal IReadOnlyList<Link> Links => _links;

    internal IReadOnlyList<(int Node, Emitter Emitter)> Emitters => _emitters;

    /// <summary>Adds a junction: a point of the line where the head is to be found.</summary>
    /// <param name="elevation">[m] Height over the network's datum.</param>
    /// <param name="draw">[m³/s] Flow taken there whatever the head; negative for a feed.</param>
    /// <returns>The node's number.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is not finite.</exception>
    public int AddJunction(double elevation, double draw = 0)
    {
        Guard.Finite(elevation);
        Guard.Finite(draw);
        _nodes.Add(new Node(elevation, draw, IsFixed: false));
        return _nodes.Count - 1;
    }

    /// <summary>Adds a point whose head is known, such as the surface of a reservoir.</summary>
    /// <param name="head">[m] Height of the surface over the network's datum.</param>
    /// <returns>The node's number.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The head is not finite.</exception>
    public int AddFixedHead(double head)
    {
        Guard.Finite(head);
        _nodes.Add(new Node(head, 0, IsFixed: true));
        return _nodes.Count - 1;
    }

    /// <summary>Adds a pipe with its fittings.</summary>
    /// <param name="from">Node at its start.</param>
    /// <param name="to">Node at its end.</param>
    /// <param name="pipe">The pipe.</param>
    /// <returns>The link's number.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A node is unknown or the pipe not possible.</exception>
    public int AddPipe(int from, int to, Pipe pipe) => AddLink(from, to, new PipeLaw(pipe, KinematicViscosity));

    /// <summary>Adds a pump that lifts from the first node to the second.</summary>
    /// <param name="from">Node on its suction side.</param>
    /// <param name="to">Node on its pressure side.</param>
    /// <param name="curve">Its curve.</param>
    /// <param name="setting">Whether it runs, and what happens when water would pass backward.</param>
    /// <returns>The link's number.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A node is unknown or the setting not possible.</exception>
    public int AddPump(int from, int to, PumpCurve curve, PumpSetting setting) =>
        AddLink(from, to, new PumpLaw(curve, setting), LinkKind.Pump, hasCheckValve: setting.HasCheckValve);

    /// <summary>Adds a valve, open or closed.</summary>
    /// <param name="from">Node at its start.</param>
    /// <param name="to">Node at its end.</param>
    /// <param name="bore">[m] Bore whose velocity K belongs to.</param>
    /// <param name="lossCoefficient">[-] K as far as it is open.</param>
    /// <param name="isOpen">False when it is shut.</param>
    /// <returns>The link's number.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A node is unknown, or bore or K not possible.</exception>
    public int AddValve(int from, int to, double bore, double lossCoefficient, bool isOpen = true) =>
        AddLink(
            from,
            to,
            new PipeLaw(new Pipe(0, bore, 0, lossCoefficient), KinematicViscosity),
            LinkKind.Valve,
            isOpen
        );

    /// <summary>Adds a check valve that lets water pass from the first node to the second only.</summary>
    /// <param name="from">Node at its inlet.</param>
    /// <param name="to">Node at its outlet.</param>
    /// <param name="bore">[m] Bore whose velocity K belongs to.</param>
    /// <param name="lossCoefficient">[-] K when open.</param>
    /// <returns>The link's number.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A node is unknown, or bore or K not possible.</exception>
    public int AddCheckValve(int from, int to, double bore, double lossCoefficient) =>
        AddLink(
            from,
            to,
            new PipeLaw(new Pipe(0, bore, 0, lossCoefficient), KinematicViscosity),
            LinkKind.CheckValve,
            hasCheckValve: true
        );

    /// <summary>Adds a link with a law of the caller's own.</summary>
    /// <param name="from">Node at its start.</param>
    /// <param name="to">Node at its end, another one.</param>
    /// <param name="law">Head loss against flow.</param>
    /// <param name="kind">What it is called in messages.</param>
    /// <param name="isOpen">False when nothing can pass.</param>
    /// <param name="hasCheckValve">True when nothing can pass from end to start.</param>
    /// <returns>The link's number.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A node is unknown, or both are the same.</exception>
    public int AddLink(
        int from,
        int to,
        ILinkLaw law,
        LinkKind kind = LinkKind.Pipe,
        bool isOpen = true,
        bool hasCheckValve = false
    )
    {
        ArgumentNullException.ThrowIfNull(law);
        ThrowIfUnknown(from, nameof(from));
        ThrowIfUnknown(to, nameof(to));
        ArgumentOutOfRangeException.ThrowIfEqual(to, from);
        _links.Add(new Link(from, to, law, kind, isOpen, hasCheckValve));
        return _links.Count - 1;
    }

    /// <summary>Puts an emitter, or several alike, on a junction.</summary>
    /// <param name="node">The junction.</param>
    /// <param name="emitter">The emitter.</param>
    /// <returns>The emitter's number.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The node is unknown or its head fixed, or a value not possible.</exception>
    public int AddEmitter(int node, Emitter emitter)
    {
        ArgumentNullException.ThrowIfNull(emitter);
        ThrowIfUnknown(node, nameof(node));
        if (_nodes[node].IsFixed)
        {
            throw new ArgumentOutOfRangeException(
                nameof(node),
                node,
                "An emitter stands on a junction, not a surface."
            );
        }

        Guard.Finite(emitter.OutletElevation, nameof(emitter));
        Guard.NotNegative(emitter.Multiplier, nameof(emitter));
        ArgumentOutOfRangeException.ThrowIfLessThan(emitter.Count, 1, nameof(emitter));
        emitter.Branch?.ThrowIfImpossible();
        _emitters.Add((node, emitter));
        return _emitters.Count - 1;
    }

    private void ThrowIfUnknown(int node, string name)
    {
        if (node < 0 || node >= _nodes.Count)
        {
            throw new ArgumentOutOfRangeException(name, node, "No such node.");
        }
    }

    internal sealed record Node(double Elevation, double Draw, bool IsFixed);

    internal sealed record Link(int From, int To, ILinkLaw Law, LinkKind Kind, bool IsOpen, bool HasCheckValve);
}
