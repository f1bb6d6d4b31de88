using System.Numerics;

namespace Dripwright.Engine.Stands.Frame;

/// <summary>
/// What the frame puts on its feet when they shift: the stiffness of all else condensed onto the feet that move. Three
/// columns a foot, found when the foot first slips or lifts.
/// </summary>
/// <remarks>
/// K·x with a foot shifted by one and the other feet held gives the column; the shape x = −K⁻¹·K·e comes from the factors
/// with all feet held, so that no foot that changes asks for a factorisation (Haynsworth's condensation, from memory).
/// </remarks>
internal sealed class FootStiffness
{
    private readonly FrameModel _model;
    private readonly FrameMatrix _matrix;
    private readonly bool[] _held;
    private readonly double[]? _tension;
    private readonly Vector<double>[]?[] _shapes;
    private readonly double[]?[] _columns;
    private readonly int[][] _around; // foot -> its elements

    /// <summary>For factors that the matrix has at hand.</summary>
    /// <param name="model">The frame.</param>
    /// <param name="matrix">Its matrix, factorised with these rows held and these axial forces.</param>
    /// <param name="held">Rows that are held, all feet among them.</param>
    /// <param name="tension">[N] Axial forces on the displaced shape; null to leave them out.</param>
    public FootStiffness(FrameModel model, FrameMatrix matrix, bool[] held, double[]? tension)
    {
        (_model, _matrix, _held, _tension) = (model, matrix, held, tension);
        Feet = [.. Enumerable.Range(0, model.Nodes.Count).Where(n => model.Nodes[n].Lifts)];
        _shapes = new Vector<double>[]?[Feet.Length];
        _columns = new double[]?[Feet.Length];
        var around = Feet.Select(_ => new List<int>()).ToArray();
        var footAt = new Dictionary<int, int>();
        for (var i = 0; i < Feet.Length; i++)
        {
            footAt[Feet[i]] = i;
        }

        Own = new double[3 * Feet.Length];
        for (var e = 0; e < model.Elements.Count; e++)
        {
            foreach (var (node, offset) in ((int, int)[])[(model.Elements[e].From, 0), (model.Elements[e].To, 6)])
            {
                if (footAt.TryGetValue(node, out var foot))
                {
                    around[foot].Add(e);
                    for (var i = 0; i < 3; i++)
                    {
                        Own[(3 * foot) + i] += matrix.ElasticOf(e)[(13 * (offset + i))];
                    }
                }
            }
        }

        _around = [.. around.Select(list => list.ToArray())];
    }

    /// <summary>Nodes that are feet.</summary>
    public int[] Feet { get; }

    /// <summary>[N/m] For each direction of each foot, its own elements' stiffness: a size to measure by.</summary>
    public double[] Own { get; }

    /// <summary>Whether the floor holds a direction of a foot while it stands.</summary>
    public bool Holds(int row) => _held[(6 * Feet[row / 3]) + (row % 3)];

    /// <summary>[N/m] Forces on all feet for a shift of one foot: three a row of a foot, one for each direction it shifts.</summary>
    public double[] Columns(int foot)
    {
        Find(foot);
        return _columns[foot]!;
    }

    /// <summary>True where the columns of a foot were found before.</summary>
    public bool Knows(int foot) => _columns[foot] is not null;

    /// <summary>Adds to displacements what shifts of feet bring with them.</summary>
    /// <param name="shifts">[m] Three a foot.</param>
    /// <param name="x">Displacements, six rows a node.</param>
    public void AddTo(double[] shifts, double[] x)
    {
        for (var foot = 0; foot < Feet.Length; foot++)
        {
            var (u, v, w) = (shifts[3 * foot], shifts[(3 * foot) + 1], shifts[(3 * foot) + 2]);
            if (u == 0 && v == 0 && w == 0)
            {
                continue;
            }

            Find(foot);
            var shape = _shapes[foot]!;
            var width = shape.Length / x.Length;
            for (var row = 0; row < x.Length; row++)
            {
                x[row] +=
                    (u * At(shape, width, row, 0)) + (v * At(shape, width, row, 1)) + (w * At(shape, width, row, 2));
            }
        }
    }

    /// <summary>[J] Twice the work that shifts of the feet take; negative where the frame gives way to them.</summary>
    /// <param name="shifts">[m] Three a foot.</param>
    public double Work(double[] shifts)
    {
        double work = 0;
        for (var column = 0; column < shifts.Length; column++)
        {
            if (shifts[column] == 0)
            {
                continue;
            }

            var columns = Columns(column / 3);
            for (var row = 0; row < shifts.Length; row++)
            {
                work += shifts[row] * columns[(3 * row) + (column % 3)] * shifts[column];
            }
        }

        return work;
    }

    /// <summary>[N] What the floor puts on all feet under a loading with these displacements.</summary>
    /// <param name="x">Displacements.</param>
    /// <param name="loads">Loads on the rows, those of the feet among them.</param>
    public double[] Reactions(double[] x, double[] loads)
    {
        var reactions = new double[3 * Feet.Length];
        Span<double> sum = stackalloc double[6];
        for (var foot = 0; foot < Feet.Length; foot++)
        {
            sum.Clear();
            foreach (var e in _around[foot])
            {
                _matrix.AddAtNode(e, Feet[foot], _tension?[e] ?? 0, x, sum);
            }

            for (var i = 0; i < 3; i++)
            {
                var row = (6 * Feet[foot]) + i;
                reactions[(3 * foot) + i] = _held[row] ? sum[i] - loads[row] : 0;
            }
        }

        return reactions;
    }

    // Lanes past the third stay empty where a vector holds four or more; where it holds two, a row has two vectors.
    private static double At(Vector<double>[] shape, int width, int row, int direction)
    {
        var lanes = Vector<double>.Count;
        return shape[(row * width) + (direction / lanes)][direction % lanes];
    }

    private void Find(int foot)
    {
        if (_columns[foot] is not null)
        {
            return;
        }

        if (_tension is null)
        {
            _matrix.TryFactor(_held, null);
        }

        var lanes = Vector<double>.Count;
        var width = (3 + lanes - 1) / lanes;
        var rows = _matrix.Rows;
        var shape = new Vector<double>[rows * width];
        var sides = new double[3][];
        for (var d = 0; d < 3; d++)
        {
            var unit = new double[rows];
            var side = new double[rows];
            if (_held[(6 * Feet[foot]) + d])
            {
                unit[(6 * Feet[foot]) + d] = 1;
                foreach (var e in _around[foot])
                {
                    _matrix.AddProduct(e, _tension?[e] ?? 0, unit, side);
                }
            }

            sides[d] = side;
        }

        Span<double> lane = stackalloc double[lanes];
        for (var row = 0; row < rows; row++)
        {
            for (var v = 0; v < width; v++)
            {
                lane.Clear();
                for (var k = 0; k < lanes && (v * lanes) + k < 3; k++)
                {
                    lane[k] = _held[row] ? 0 : -sides[(v * lanes) + k][row];
                }

                shape[(row * width) + v] = new Vector<double>(lane);
            }
        }

        _matrix.Solve(shape, width, _tension is not null);
        var columns = new double[9 * Feet.Length];
        var x = new double[rows];
        var none = new double[rows];
        for (var d = 0; d < 3; d++)
        {
            for (var row = 0; row < rows; row++)
            {
                x[row] = At(shape, width, row, d);
            }

            if (_held[(6 * Feet[foot]) + d])
            {
                x[(6 * Feet[foot]) + d] = 1;
            }

            var reactions = Reactions(x, none);
            for (var row = 0; row < reactions.Length; row++)
            {
                columns[(3 * row) + d] = reactions[row];
            }
        }

        for (var d = 0; d < 3; d++)
        {
            var row = (6 * Feet[foot]) + d;
            if (_held[row])
            {
                lane.Clear();
                shape[(row * width) + (d / lanes)].CopyTo(lane);
                lane[d % lanes] = 1;
                shape[(row * width) + (d / lanes)] = new Vector<double>(lane);
            }
        }

        _shapes[foot] = shape;
        _columns[foot] = columns;
    }
}
