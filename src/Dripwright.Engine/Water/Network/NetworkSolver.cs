using System.Runtime.InteropServices;

namespace Dripwright.Engine.Water;

/// <summary>Finds heads and flows of a network; keeps its analysis so that changed networks solve again quickly.</summary>
/// <remarks>
/// Newton's method on the flows of all links and the heads of all junctions together (E. Todini and S. Pilati, A gradient
/// algorithm for the analysis of pipe networks, 1988, from memory), with emitters as functions of head. After each step
/// the flows of a spanning forest follow from continuity, so mass is met to rounding at all times and only energy is
/// sought; a backtracking search on the sum of squared energy residuals keeps each step from going too far. Check valves
/// are opened and shut between solves until each agrees with the water.
/// Not safe for use by several threads at once; make one solver per thread, the network may be shared.
/// Method page: docs/methods/feed-network.md
/// </remarks>
public sealed partial class NetworkSolver
{
    // Under this slope a link counts as free of loss when the step is computed (not in the equations): a flat pump curve or
    // an open valve would otherwise give an infinite conductance.
    private const double SmallestSlope = 1e-5;
    private const double EnergyTarget = 1e-12;
    private const double EnergyLimit = 1e-7;
    private const int MostIterations = 50;
    private const int FlipsTogether = 12;

    private readonly Network _network;
    private readonly int _nodes;
    private readonly int _links;
    private readonly int _emitterCount;
    private readonly int[] _from;
    private readonly int[] _to;
    private readonly int[] _row; // node -> row of the matrix, -1 for a fixed head
    private readonly int _rows;
    private readonly ILinkLaw[] _laws;
    private readonly double[] _leastLoss; // for links without any loss of their own, else 0
    private readonly bool[] _isOpen;
    private readonly bool[] _hasCheckValve;
    private readonly bool[] _isShut; // by its check valve
    private readonly int[] _emitterNode;
    private readonly EmitterLaw[] _emitterLaw;
    private readonly PipeLaw?[] _branch;
    private readonly double[] _outlet;
    private readonly double[] _multiplier;
    private readonly int[] _count;
    private readonly double[] _draw;
    private readonly SparseLdl _matrix;
    private readonly double[] _step;

    private double[] _head;
    private double[] _flow;
    private double[] _trialHead;
    private double[] _trialFlow;
    private readonly double[] _energy;
    private readonly double[] _slope;
    private readonly double[] _emitterFlow;
    private readonly double[] _emitterSlope;
    private readonly double[] _emitterHead;
    private double[]? _startHead;
    private double[]? _startFlow;
    private bool[]? _startShut;
    private double[]? _startEmitterHead;
    private int _iterations;

    /// <summary>Analyses a network: order of elimination, pattern of the factors. Later additions to it are not seen.</summary>
    /// <param name="network">The network, with at least one node.</param>
    public NetworkSolver(Network network)
    {
        ArgumentNullException.ThrowIfNull(network);
        _network = network;
        _nodes = network.NodeCount;
        _links = network.LinkCount;
        _emitterCount = network.EmitterCount;
        _from = network.Links.Select(l => l.From).ToArray();
        _to = network.Links.Select(l => l.To).ToArray();
        _laws = network.Links.Select(l => l.Law).ToArray();
        _leastLoss = _laws.Select(LeastLoss).ToArray();
        _isOpen = network.Links.Select(l => l.IsOpen).ToArray();
        _hasCheckValve = network.Links.Select(l => l.HasCheckValve).ToArray();
        _isShut = new bool[_links];
        _draw = network.Nodes.Select(n => n.Draw).ToArray();
        _row = new int[_nodes];
        for (var i = 0; i < _nodes; i++)
        {
            _row[i] = network.Nodes[i].IsFixed ? -1 : _rows++;
        }

        _emitterNode = network.Emitters.Select(e => e.Node).ToArray();
        _emitterLaw = network.Emitters.Select(e => e.Emitter.Law).ToArray();
        _outlet = network.Emitters.Select(e => e.Emitter.OutletElevation).ToArray();
        _multiplier = network.Emitters.Select(e => e.Emitter.Multiplier).ToArray();
        _count = network.Emitters.Select(e => e.Emitter.Count).ToArray();
        _branch = BranchLaws(network);
        var edges = new (int, int)[_links];
        for (var l = 0; l < _links; l++)
        {
            edges[l] = (_row[_from[l]], _row[_to[l]]);
        }

        _matrix = new SparseLdl(_rows, edges);
        _step = new double[_rows];
        _head = new double[_nodes];
        _trialHead = new double[_nodes];
        _flow = new double[_links];
        _trialFlow = new double[_links];
        _energy = new double[_links];
        _change = new double[_links];
        _slope = new double[_links];
        _emitterFlow = new double[_emitterCount];
        _emitterSlope = new double[_emitterCount];
        _emitterHead = new double[_emitterCount];
        (_incidenceStart, _incidence) = Incidence();
        _treeLink = new int[_nodes];
        _order = new int[_nodes];
        _isolated = new bool[_nodes];
        _need = new double[_nodes];
    }

    /// <summary>Entries below the diagonal of the factor: for a tree one for each pipe between junctions.</summary>
    public int FactorEntries => _matrix.LowerEntries;

    /// <summary>[m³/s] Flow of a single emitter of each entry after the last solve; overwritten by the next.</summary>
    public ReadOnlySpan<double> EmitterFlows => _emitterFlow;

    /// <summary>[m] Head at each emitter proper after the last solve; overwritten by the next.</summary>
    public ReadOnlySpan<double> EmitterHeads => _emitterHead;

    /// <summary>[m³/s] Flow of each link after the last solve; overwritten by the next.</summary>
    public ReadOnlySpan<double> LinkFlows => _flow;

    /// <summary>[m] Head of each node after the last solve; overwritten by the next.</summary>
    public ReadOnlySpan<double> Heads => _head;

    /// <summary>Changes an emitter's flow against its law for the solves to come: manufacture, clogging, closing.</summary>
    /// <param name="emitter">Number of the entry.</param>
    /// <param name="multiplier">[-] Not negative; 0 closes it.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such entry, or the multiplier is negative.</exception>
    public void SetMultiplier(int emitter, double multiplier)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(emitter);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(emitter, _emitterCount);
        Guard.NotNegative(multiplier);
        _multiplier[emitter] = multiplier;
    }

    /// <summary>Opens or closes a link for the solves to come.</summary>
    /// <param name="link">Number of the link.</param>
    /// <param name="isOpen">False to close it.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such link.</exception>
    public void SetOpen(int link, bool isOpen)
    {
        ThrowIfNoLink(link);
        _isOpen[link] = isOpen;
    }

    /// <summary>Gives a link another law for the solves to come, such as a throttled valve or a stopped pump.</summary>
    /// <param name="link">Number of the link.</param>
    /// <param name="law">The law.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such link.</exception>
    public void SetLaw(int link, ILinkLaw law)
    {
        ThrowIfNoLink(link);
        ArgumentNullException.ThrowIfNull(law);
        _laws[link] = law;
        _leastLoss[link] = LeastLoss(law);
    }

    /// <summary>
    /// Lets every later solve start from the present answer. Each then starts from the same point, so that results are
    /// the same to the last bit in whatever order the solves are made.
    /// </summary>
    public void StartFromHere()
    {
        _startHead = (double[])_head.Clone();
        _startFlow = (double[])_flow.Clone();
        _startShut = (bool[])_isShut.Clone();
        _startEmitterHead = (double[])_emitterHead.Clone();
    }

    /// <summary>Solves and reports.</summary>
    /// <returns>The solution; <see cref="NetworkSolution.Converged"/> says whether it is one.</returns>
    public NetworkSolution Solve()
    {
        var converged = TrySolve();
        return Report(converged);
    }

    /// <summary>Solves without making a report; read the spans for the answer. Allocates nothing.</summary>
    /// <returns>True when the equations are met.</returns>
    public bool TrySolve()
    {
        _iterations = 0;
        var fresh = _startHead is null;
        if (fresh)
        {
            Array.Clear(_isShut);
            Array.Clear(_emitterHead);
        }
        else
        {
            _startHead!.CopyTo(_head, 0);
            _startFlow!.CopyTo(_flow, 0);
            _startShut!.CopyTo(_isShut, 0);
            _startEmitterHead!.CopyTo(_emitterHead, 0);
        }

        var solved = false;
        for (var round = 0; round < 2 * FlipsTogether + 8 * _links; round++)
        {
            GrowForest();
            SettleIsolated();
            if (fresh)
            {
                GuessHeads();
                fresh = false;
            }

            solved = FindBalance();
            SettleIsolated();
            if (!FlipCheckValves(oneOnly: round >= FlipsTogether))
            {
                return solved && !DrawsFromNothing();
            }
        }

        return false;
    }

    private static PipeLaw?[] BranchLaws(Network network)
    {
        // Pots of a row share one microtube: one law object for all of them.
        var known = new Dictionary<Pipe, PipeLaw>();
        var laws = new PipeLaw?[network.EmitterCount];
        for (var i = 0; i < laws.Length; i++)
        {
            if (network.Emitters[i].Emitter.Branch is { } pipe)
            {
                ref var law = ref CollectionsMarshal.GetValueRefOrAddDefault(known, pipe, out _);
                laws[i] = law ??= new PipeLaw(pipe, network.KinematicViscosity);
            }
        }

        return laws;
    }

    /// <summary>
    /// [s/m²] A link without any loss gets 10⁻⁵, a hundredth of a micrometre at a litre a second: around a ring of such
    /// links any flow would do.
    /// </summary>
    private static double LeastLoss(ILinkLaw law)
    {
        const double SomeFlow = 1e-3;
        return Math.Abs(law.At(SomeFlow).Head - law.At(0).Head) < SmallestSlope * SomeFlow ? SmallestSlope : 0;
    }

    private void ThrowIfNoLink(int link)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(link);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(link, _links);
    }

    /// <summary>Turns check valves that disagree with the water; false when all agree.</summary>
    private bool FlipCheckValves(bool oneOnly)
    {
        // Less than four microlitres an hour backward is rounding, and no reason to shut a valve in still water.
        const double Tolerance = 1e-12;
        var turned = false;
        for (var l = 0; l < _links; l++)
        {
            if (!_hasCheckValve[l] || !_isOpen[l])
            {
                continue;
            }

            var drive = _head[_from[l]] - _head[_to[l]] - _laws[l].At(0).Head;
            // A part without a source of its own has nothing to push a valve open with.
            var wrong = _isShut[l] ? drive > 1e-9 && !_isolated[_from[l]] : _flow[l] < -Tolerance;
            if (wrong)
            {
                _isShut[l] = !_isShut[l];
                turned = true;
                // One at a time, always the first: this rule cannot cycle on a system with a single answer
                // (K. G. Murty, the least-index rule for linear complementarity, from memory).
                if (oneOnly)
                {
                    return true;
                }
            }
        }

        return turned;
    }

    private bool DrawsFromNothing()
    {
        for (var i = 0; i < _nodes; i++)
        {
            if (_isolated[i] && _draw[i] != 0)
            {
                return true;
            }
        }

        return false;
    }
}
