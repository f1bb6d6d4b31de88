using System.Numerics;

namespace Dripwright.Engine.Stands.Frame;

/// <summary>The stiffness of a whole frame: order and pattern found once, values put in for each state of its supports.</summary>
/// <remarks>
/// Six rows a node, ordered node by node by minimum degree. A held row keeps its place with 1 on the diagonal, so that a
/// foot may lift and land without a new analysis.
/// </remarks>
internal sealed class FrameMatrix
{
    /// <summary>
    /// A pivot below this share of its diagonal entry counts as none: rounding leaves about 1e-15 of a true mechanism, and a
    /// slender cantilever of 200 elements has 1e-8.
    /// </summary>
    private const double LeastPivot = 1e-11;

    private readonly FrameModel _model;
    private readonly SparseLdl _elastic;
    private readonly SparseLdl _displaced; // with axial forces
    private readonly int[] _pairOf; // element -> its block of 36 off-diagonal entries
    private readonly bool[] _turned; // element -> its block is stored from the higher node to the lower
    private readonly int _pairStart;
    private readonly double[][] _elasticInRoom;
    private readonly double[][] _geometricInRoom; // for a tension of 1 N
    private SparseLdl _last;
    private bool[]? _elasticHeld; // rows held in the good elastic factors; null while there are none

    public FrameMatrix(FrameModel model)
    {
        _model = model;
        var nodes = model.Nodes.Count;
        Elements = [.. model.Elements.Select(e => new ElementMatrix(e, model.Nodes[e.From].At, model.Nodes[e.To].At))];
        var pairs = new List<(int A, int B)>();
        var known = new Dictionary<(int, int), int>();
        _pairOf = new int[Elements.Length];
        _turned = new bool[Elements.Length];
        for (var e = 0; e < Elements.Length; e++)
        {
            var (from, to) = (model.Elements[e].From, model.Elements[e].To);
            var key = (Math.Min(from, to), Math.Max(from, to));
            if (!known.TryGetValue(key, out var pair))
            {
                pair = known[key] = pairs.Count;
                pairs.Add(key);
            }

            _pairOf[e] = pair;
            _turned[e] = from > to;
        }

        var order = EliminationOrder.MinimumDegree(nodes, pairs);
        var position = new int[6 * nodes];
        for (var i = 0; i < position.Length; i++)
        {
            position[i] = (6 * order[i / 6]) + (i % 6);
        }

        var edges = new List<(int A, int B)>((15 * nodes) + (36 * pairs.Count));
        for (var node = 0; node < nodes; node++)
        {
            for (var i = 1; i < 6; i++)
            {
                for (var j = 0; j < i; j++)
                {
                    edges.Add(((6 * node) + i, (6 * node) + j));
                }
            }
        }

        _pairStart = edges.Count;
        foreach (var (a, b) in pairs)
        {
            for (var i = 0; i < 6; i++)
            {
                for (var j = 0; j < 6; j++)
                {
                    edges.Add(((6 * a) + i, (6 * b) + j));
                }
            }
        }

        _elastic = new SparseLdl(6 * nodes, edges, position);
        _displaced = _elastic.Alike();
        _last = _elastic;
        _elasticInRoom = [.. Elements.Select(m => m.ToRoom(m.Elastic))];
        _geometricInRoom = [.. Elements.Select(m => m.ToRoom(m.Geometric))];
    }

    public ElementMatrix[] Elements { get; }

    public int Rows => 6 * _model.Nodes.Count;

    public int LowerEntries => _elastic.LowerEntries;

    /// <summary>
    /// Puts in all values and factorises; false where the frame resists some motion with nothing. Without axial forces the
    /// factors are kept for as long as the same rows are held.
    /// </summary>
    /// <param name="held">Rows that are held.</param>
    /// <param name="tension">[N] Axial force of each element as it acts on the displaced shape; null to leave it out.</param>
    public bool TryFactor(bool[] held, double[]? tension)
    {
        _last = tension is null ? _elastic : _displaced;
        if (tension is null)
        {
            if (_elasticHeld is not null && held.AsSpan().SequenceEqual(_elasticHeld))
            {
                return true;
            }

            _elasticHeld = null;
        }

        _last.Clear();
        for (var e = 0; e < Elements.Length; e++)
        {
            Add(e, tension?[e] ?? 0, held);
        }

        for (var row = 0; row < held.Length; row++)
        {
            if (held[row])
            {
                _last.AddDiagonal(row, 1);
            }
        }

        var good = _last.TryFactor(LeastPivot);
        if (tension is null && good)
        {
            _elasticHeld = held;
        }

        return good;
    }

    /// <summary>Solves in place with the last factors; held rows must come in as zero.</summary>
    public void Solve(double[] x) => _last.Solve(x);

    /// <summary>Solves in place for several right-hand sides side by side, as <see cref="SparseLdl.Solve(Vector{double}[], int)"/>.</summary>
    public void Solve(Vector<double>[] x, int width) => _last.Solve(x, width);

    /// <summary>The same with the factors that have axial forces in them, or with those that have none, whichever came last.</summary>
    public void Solve(Vector<double>[] x, int width, bool displaced) =>
        (displaced ? _displaced : _elastic).Solve(x, width);

    /// <summary>An element's elastic stiffness in the axes of the room, twelve rows.</summary>
    public ReadOnlySpan<double> ElasticOf(int element) => _elasticInRoom[element];

    /// <summary>y += (K + N·Kg)·x for one element.</summary>
    public void AddProduct(int element, double tension, double[] x, double[] y)
    {
        AddProduct(element, _elasticInRoom[element], 1, x, y);
        if (tension != 0)
        {
            AddProduct(element, _geometricInRoom[element], tension, x, y);
        }
    }

    /// <summary>Adds the six rows of (K + N·Kg)·x that one element has at one of its nodes.</summary>
    public void AddAtNode(int element, int node, double tension, double[] x, Span<double> sum)
    {
        var (k, g) = (_elasticInRoom[element], _geometricInRoom[element]);
        var from = 6 * _model.Elements[element].From;
        var to = 6 * _model.Elements[element].To;
        var offset = _model.Elements[element].From == node ? 0 : 6;
        for (var i = 0; i < 6; i++)
        {
            for (var j = 0; j < 6; j++)
            {
                var at = (12 * (offset + i)) + j;
                sum[i] +=
                    ((k[at] + (tension * g[at])) * x[from + j]) + ((k[at + 6] + (tension * g[at + 6])) * x[to + j]);
            }
        }
    }

    /// <summary>The motion that the last, failed factorisation found free.</summary>
    public double[] FreeMotion() => _last.FailedMotion();

    /// <summary>y += K·x with the elastic stiffness.</summary>
    public void AddElastic(double[] x, double[] y)
    {
        for (var e = 0; e < Elements.Length; e++)
        {
            AddProduct(e, _elasticInRoom[e], 1, x, y);
        }
    }

    /// <summary>y += Kg·x with the geometric stiffness for an axial force of each element.</summary>
    public void AddGeometric(double[] tension, double[] x, double[] y)
    {
        for (var e = 0; e < Elements.Length; e++)
        {
            if (tension[e] != 0)
            {
                AddProduct(e, _geometricInRoom[e], tension[e], x, y);
            }
        }
    }

    /// <summary>y += Kg·x for several sides side by side, each with axial forces of its own.</summary>
    /// <param name="tension">[N] Axial forces, one row of vectors an element.</param>
    /// <param name="times">Times the axial forces.</param>
    /// <param name="x">One row of vectors for each row of the frame.</param>
    /// <param name="y">As x.</param>
    /// <param name="width">Vectors a row.</param>
    public void AddGeometric(Vector<double>[] tension, double times, Vector<double>[] x, Vector<double>[] y, int width)
    {
        for (var e = 0; e < Elements.Length; e++)
        {
            var k = _geometricInRoom[e];
            ReadOnlySpan<Vector<double>> from = x.AsSpan(6 * _model.Elements[e].From * width, 6 * width);
            ReadOnlySpan<Vector<double>> to = x.AsSpan(6 * _model.Elements[e].To * width, 6 * width);
            for (var i = 0; i < 12; i++)
            {
                var row = i < 6 ? (6 * _model.Elements[e].From) + i : (6 * _model.Elements[e].To) + i - 6;
                ReadOnlySpan<double> line = k.AsSpan(12 * i, 12);
                for (var v = 0; v < width; v++)
                {
                    var sum = Vector<double>.Zero;
                    for (var j = 0; j < 6; j++)
                    {
                        var at = (j * width) + v;
                        sum += (line[j] * from[at]) + (line[6 + j] * to[at]);
                    }

                    y[(row * width) + v] += times * tension[(e * width) + v] * sum;
                }
            }
        }
    }

    private void AddProduct(int e, double[] k, double times, double[] x, double[] y)
    {
        var from = 6 * _model.Elements[e].From;
        var to = 6 * _model.Elements[e].To;
        for (var i = 0; i < 12; i++)
        {
            double sum = 0;
            for (var j = 0; j < 6; j++)
            {
                sum += (k[(12 * i) + j] * x[from + j]) + (k[(12 * i) + 6 + j] * x[to + j]);
            }

            y[i < 6 ? from + i : to + i - 6] += times * sum;
        }
    }

    private void Add(int e, double tension, bool[] held)
    {
        var from = _model.Elements[e].From;
        var to = _model.Elements[e].To;
        var k = _elasticInRoom[e];
        var g = _geometricInRoom[e];
        AddNode(from, 0);
        AddNode(to, 6);
        var block = _pairStart + (36 * _pairOf[e]);
        for (var i = 0; i < 6; i++)
        {
            if (held[(6 * from) + i])
            {
                continue;
            }

            for (var j = 0; j < 6; j++)
            {
                if (!held[(6 * to) + j])
                {
                    var slot = _turned[e] ? (6 * j) + i : (6 * i) + j;
                    var at = (12 * i) + 6 + j;
                    _last.AddEdge(block + slot, k[at] + (tension * g[at]));
                }
            }
        }

        void AddNode(int node, int offset)
        {
            var edge = 15 * node;
            var row = 6 * node;
            for (var i = 0; i < 6; i++)
            {
                if (held[row + i])
                {
                    edge += i;
                    continue;
                }

                var at = (12 * (offset + i)) + offset;
                _last.AddDiagonal(row + i, k[at + i] + (tension * g[at + i]));
                for (var j = 0; j < i; j++, edge++)
                {
                    if (!held[row + j])
                    {
                        _last.AddEdge(edge, k[at + j] + (tension * g[at + j]));
                    }
                }
            }
        }
    }
}
