using Dripwright.Engine.Numerics;

namespace Dripwright.Engine.Strength.Frame;

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
    private readonly SparseLdl _factor;
    private readonly int[] _pairOf; // element -> its block of 36 off-diagonal entries
    private readonly bool[] _turned; // element -> its block is stored from the higher node to the lower
    private readonly int _pairStart;
    private readonly double[][] _elasticInRoom;
    private readonly double[] _local = new double[144];
    private readonly double[] _room = new double[144];

    public FrameMatrix(FrameModel model)
    {
        _model = model;
        int nodes = model.Nodes.Count;
        Elements = [.. model.Elements.Select(e => new ElementMatrix(e, model.Nodes[e.From].At, model.Nodes[e.To].At))];
        var pairs = new List<(int A, int B)>();
        var known = new Dictionary<(int, int), int>();
        _pairOf = new int[Elements.Length];
        _turned = new bool[Elements.Length];
        for (int e = 0; e < Elements.Length; e++)
        {
            var (from, to) = (model.Elements[e].From, model.Elements[e].To);
            var key = (Math.Min(from, to), Math.Max(from, to));
            if (!known.TryGetValue(key, out int pair))
            {
                pair = known[key] = pairs.Count;
                pairs.Add(key);
            }

            _pairOf[e] = pair;
            _turned[e] = from > to;
        }

        int[] order = EliminationOrder.MinimumDegree(nodes, pairs);
        var position = new int[6 * nodes];
        for (int i = 0; i < position.Length; i++)
        {
            position[i] = (6 * order[i / 6]) + (i % 6);
        }

        var edges = new List<(int A, int B)>((15 * nodes) + (36 * pairs.Count));
        for (int node = 0; node < nodes; node++)
        {
            for (int i = 1; i < 6; i++)
            {
                for (int j = 0; j < i; j++)
                {
                    edges.Add(((6 * node) + i, (6 * node) + j));
                }
            }
        }

        _pairStart = edges.Count;
        foreach (var (a, b) in pairs)
        {
            for (int i = 0; i < 6; i++)
            {
                for (int j = 0; j < 6; j++)
                {
                    edges.Add(((6 * a) + i, (6 * b) + j));
                }
            }
        }

        _factor = new SparseLdl(6 * nodes, edges, position);
        _elasticInRoom =
        [
            .. Elements.Select(m =>
            {
                var room = new double[144];
                m.ToRoom(m.Elastic, room);
                return room;
            }),
        ];
    }

    public ElementMatrix[] Elements { get; }

    public int Rows => 6 * _model.Nodes.Count;

    public int LowerEntries => _factor.LowerEntries;

    /// <summary>Puts in all values and factorises; false where the frame resists some motion with nothing.</summary>
    /// <param name="held">Rows that are held.</param>
    /// <param name="tension">[N] Axial force of each element as it acts on the displaced shape; null to leave it out.</param>
    public bool TryFactor(bool[] held, double[]? tension)
    {
        _factor.Clear();
        for (int e = 0; e < Elements.Length; e++)
        {
            if (tension is null || tension[e] == 0)
            {
                Add(e, _elasticInRoom[e], held);
            }
            else
            {
                Elements[e].Elastic.CopyTo(_local, 0);
                Elements[e].AddGeometric(_local, tension[e]);
                Elements[e].ToRoom(_local, _room);
                Add(e, _room, held);
            }
        }

        for (int row = 0; row < held.Length; row++)
        {
            if (held[row])
            {
                _factor.AddDiagonal(row, 1);
            }
        }

        return _factor.TryFactor(LeastPivot);
    }

    /// <summary>Solves in place; held rows must come in as zero.</summary>
    public void Solve(double[] x) => _factor.Solve(x);

    /// <summary>The motion that the last, failed factorisation found free.</summary>
    public double[] FreeMotion() => _factor.FailedMotion();

    /// <summary>y += K·x with the elastic stiffness.</summary>
    public void AddElastic(double[] x, double[] y)
    {
        for (int e = 0; e < Elements.Length; e++)
        {
            AddProduct(e, _elasticInRoom[e], x, y);
        }
    }

    /// <summary>Geometric stiffness of every element in the axes of the room; null where an element has no axial force.</summary>
    public double[]?[] Geometric(IReadOnlyList<double> tension)
    {
        var all = new double[]?[Elements.Length];
        for (int e = 0; e < Elements.Length; e++)
        {
            if (tension[e] != 0)
            {
                Array.Clear(_local);
                Elements[e].AddGeometric(_local, tension[e]);
                Elements[e].ToRoom(_local, all[e] = new double[144]);
            }
        }

        return all;
    }

    /// <summary>y += Kg·x.</summary>
    public void AddGeometric(double[]?[] geometric, double[] x, double[] y)
    {
        for (int e = 0; e < Elements.Length; e++)
        {
            if (geometric[e] is { } k)
            {
                AddProduct(e, k, x, y);
            }
        }
    }

    private void AddProduct(int e, double[] k, double[] x, double[] y)
    {
        int from = 6 * _model.Elements[e].From;
        int to = 6 * _model.Elements[e].To;
        for (int i = 0; i < 12; i++)
        {
            double sum = 0;
            for (int j = 0; j < 6; j++)
            {
                sum += (k[(12 * i) + j] * x[from + j]) + (k[(12 * i) + 6 + j] * x[to + j]);
            }

            y[i < 6 ? from + i : to + i - 6] += sum;
        }
    }

    private void Add(int e, double[] k, bool[] held)
    {
        int from = _model.Elements[e].From;
        int to = _model.Elements[e].To;
        AddNode(from, k, 0, held);
        AddNode(to, k, 6, held);
        int block = _pairStart + (36 * _pairOf[e]);
        for (int i = 0; i < 6; i++)
        {
            if (held[(6 * from) + i])
            {
                continue;
            }

            for (int j = 0; j < 6; j++)
            {
                if (!held[(6 * to) + j])
                {
                    int slot = _turned[e] ? (6 * j) + i : (6 * i) + j;
                    _factor.AddEdge(block + slot, k[(12 * i) + 6 + j]);
                }
            }
        }
    }

    private void AddNode(int node, double[] k, int offset, bool[] held)
    {
        int edge = 15 * node;
        for (int i = 0; i < 6; i++)
        {
            int row = 6 * node;
            if (held[row + i])
            {
                edge += i;
                continue;
            }

            _factor.AddDiagonal(row + i, k[(13 * (offset + i))]);
            for (int j = 0; j < i; j++, edge++)
            {
                if (!held[row + j])
                {
                    _factor.AddEdge(edge, k[(12 * (offset + i)) + offset + j]);
                }
            }
        }
    }
}
