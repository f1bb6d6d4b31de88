using System.Numerics;

namespace Dripwright.Engine.Numerics;

/// <summary>
/// Sparse L D Lᵀ of a symmetric positive definite matrix whose off-diagonal entries are the edges of a graph. The order of
/// elimination (minimum degree unless one is given) and the pattern of L are found once; values may change for each
/// factorisation. The feed network and the stand's frame share it.
/// </summary>
/// <remarks>
/// A tree is eliminated leaf by leaf, so L has no more entries than the tree has edges. The numeric part is the up-looking
/// method of T. A. Davis, Algorithm 849: a concise sparse Cholesky factorization package, ACM TOMS 31(4), 2005, p. 587
/// (from memory, written anew).
/// </remarks>
internal sealed class SparseLdl
{
    private readonly int _n;
    private readonly int[] _position; // node -> row in the order of elimination
    private readonly int[] _parent;
    private readonly int[] _upperStart; // columns of the upper triangle of the reordered matrix
    private readonly int[] _upperRow;
    private readonly double[] _upperValue;
    private readonly double[] _diagonal;
    private readonly int[] _slotOfEdge; // edge -> place in _upperValue, -1 for an edge to a fixed node
    private readonly int[] _lowerStart;
    private readonly int[] _lowerRow;
    private readonly double[] _lowerValue;
    private readonly double[] _d;
    private readonly int[] _filled;
    private readonly int[] _flag;
    private readonly int[] _pattern;
    private readonly double[] _work;

    /// <summary>Finds order and pattern.</summary>
    /// <param name="n">Rows.</param>
    /// <param name="edges">Pairs of rows that share an entry; a negative row means the edge adds to a diagonal only.</param>
    public SparseLdl(int n, IReadOnlyList<(int A, int B)> edges)
        : this(n, edges, EliminationOrder.MinimumDegree(n, edges)) { }

    /// <summary>Finds the pattern for an order that is known, such as that of blocks of rows.</summary>
    /// <param name="n">Rows.</param>
    /// <param name="edges">Pairs of rows that share an entry; a negative row means the edge adds to a diagonal only.</param>
    /// <param name="position">For each row its place in the order of elimination.</param>
    public SparseLdl(int n, IReadOnlyList<(int A, int B)> edges, int[] position)
    {
        _n = n;
        _position = position;
        _slotOfEdge = new int[edges.Count];
        (_upperStart, _upperRow) = UpperPattern(edges);
        _upperValue = new double[_upperRow.Length];
        _diagonal = new double[n];
        _flag = new int[n];
        _parent = new int[n];
        _filled = new int[n];
        _pattern = new int[n];
        _work = new double[n];
        _d = new double[n];
        _lowerStart = LowerPattern();
        _lowerRow = new int[_lowerStart[n]];
        _lowerValue = new double[_lowerStart[n]];
    }

    private SparseLdl(SparseLdl like)
    {
        _n = like._n;
        _position = like._position;
        _slotOfEdge = like._slotOfEdge;
        (_upperStart, _upperRow) = (like._upperStart, like._upperRow);
        (_parent, _lowerStart) = (like._parent, like._lowerStart);
        _upperValue = new double[_upperRow.Length];
        _diagonal = new double[_n];
        _flag = new int[_n];
        _filled = new int[_n];
        _pattern = new int[_n];
        _work = new double[_n];
        _d = new double[_n];
        _lowerRow = new int[_lowerStart[_n]];
        _lowerValue = new double[_lowerStart[_n]];
    }

    /// <summary>Another matrix of the same pattern with values of its own, all zero; order and pattern are shared.</summary>
    public SparseLdl Alike() => new(this);

    /// <summary>Entries below the diagonal of L.</summary>
    public int LowerEntries => _lowerStart[_n];

    /// <summary>Sets all values to zero.</summary>
    public void Clear()
    {
        Array.Clear(_upperValue);
        Array.Clear(_diagonal);
    }

    /// <summary>Adds to a diagonal entry.</summary>
    public void AddDiagonal(int row, double value) => _diagonal[_position[row]] += value;

    /// <summary>Adds to the entry of an edge, above and below the diagonal.</summary>
    public void AddEdge(int edge, double value) => _upperValue[_slotOfEdge[edge]] += value;

    /// <summary>The row whose pivot stopped the last factorisation; -1 after one that went through.</summary>
    public int FailedRow { get; private set; } = -1;

    /// <summary>Factorises the present values; false if a pivot is not positive.</summary>
    /// <param name="leastPivotShare">[-] A pivot below this share of its diagonal entry counts as none.</param>
    public bool TryFactor(double leastPivotShare = 0)
    {
        FailedRow = -1;
        // Locals: the inner loop is where the time goes.
        var (flag, parent, pattern, work, d) = (_flag, _parent, _pattern, _work, _d);
        var (lowerStart, lowerRow, lowerValue, filled) = (_lowerStart, _lowerRow, _lowerValue, _filled);
        Array.Fill(flag, -1);
        Array.Clear(filled);
        for (var k = 0; k < _n; k++)
        {
            var top = _n;
            flag[k] = k;
            for (var p = _upperStart[k]; p < _upperStart[k + 1]; p++)
            {
                var i = _upperRow[p];
                work[i] += _upperValue[p];
                var length = 0;
                for (; flag[i] != k; i = parent[i])
                {
                    pattern[length++] = i;
                    flag[i] = k;
                }

                while (length > 0)
                {
                    pattern[--top] = pattern[--length];
                }
            }

            var pivot = _diagonal[k];
            for (; top < _n; top++)
            {
                var i = pattern[top];
                var y = work[i];
                work[i] = 0;
                var end = lowerStart[i] + filled[i];
                var rows = lowerRow.AsSpan(lowerStart[i], filled[i]);
                var values = lowerValue.AsSpan(lowerStart[i], rows.Length);
                for (var p = 0; p < rows.Length; p++)
                {
                    work[rows[p]] -= values[p] * y;
                }

                var l = y / d[i];
                pivot -= l * y;
                lowerRow[end] = k;
                lowerValue[end] = l;
                filled[i]++;
            }

            if (!(pivot > Math.Max(leastPivotShare * _diagonal[k], 0)))
            {
                Array.Clear(work);
                FailedRow = Array.IndexOf(_position, k);
                return false;
            }

            d[k] = pivot;
        }

        return true;
    }

    /// <summary>
    /// After a failed factorisation: the vector with 1 in the failed row and zero in all rows not yet eliminated for which
    /// the rows before it are in balance. Where the pivot was nothing, the matrix takes it to zero in the failed row too.
    /// </summary>
    /// <exception cref="InvalidOperationException">The last factorisation did not fail.</exception>
    public double[] FailedMotion()
    {
        if (FailedRow < 0)
        {
            throw new InvalidOperationException("The last factorisation did not fail.");
        }

        var k = _position[FailedRow];
        var y = new double[_n];
        y[k] = 1;
        for (var j = k - 1; j >= 0; j--)
        {
            for (var p = _lowerStart[j]; p < _lowerStart[j] + _filled[j]; p++)
            {
                y[j] -= _lowerValue[p] * y[_lowerRow[p]];
            }
        }

        var x = new double[_n];
        for (var i = 0; i < _n; i++)
        {
            x[i] = y[_position[i]];
        }

        return x;
    }

    /// <summary>Solves in place with the last factors.</summary>
    public void Solve(double[] x)
    {
        var y = _work;
        for (var i = 0; i < _n; i++)
        {
            y[_position[i]] = x[i];
        }

        for (var j = 0; j < _n; j++)
        {
            var value = y[j];
            var rows = _lowerRow.AsSpan(_lowerStart[j].._lowerStart[j + 1]);
            var values = _lowerValue.AsSpan(_lowerStart[j], rows.Length);
            for (var p = 0; p < rows.Length; p++)
            {
                y[rows[p]] -= values[p] * value;
            }
        }

        for (var j = _n - 1; j >= 0; j--)
        {
            var value = y[j] / _d[j];
            var rows = _lowerRow.AsSpan(_lowerStart[j].._lowerStart[j + 1]);
            var values = _lowerValue.AsSpan(_lowerStart[j], rows.Length);
            for (var p = 0; p < rows.Length; p++)
            {
                value -= values[p] * y[rows[p]];
            }

            y[j] = value;
        }

        for (var i = 0; i < _n; i++)
        {
            x[i] = y[_position[i]];
        }

        Array.Clear(y);
    }

    /// <summary>Solves in place with the last factors for several right-hand sides side by side.</summary>
    /// <param name="x">One row of vectors for each row of the matrix; every lane is a right-hand side of its own.</param>
    /// <param name="width">Vectors a row.</param>
    public void Solve(Vector<double>[] x, int width)
    {
        var y = new Vector<double>[x.Length];
        for (var i = 0; i < _n; i++)
        {
            x.AsSpan(i * width, width).CopyTo(y.AsSpan(_position[i] * width));
        }

        for (var j = 0; j < _n; j++)
        {
            var own = y.AsSpan(j * width, width);
            for (var p = _lowerStart[j]; p < _lowerStart[j + 1]; p++)
            {
                var other = y.AsSpan(_lowerRow[p] * width, width);
                var l = new Vector<double>(_lowerValue[p]);
                for (var v = 0; v < other.Length; v++)
                {
                    other[v] -= l * own[v];
                }
            }
        }

        for (var j = _n - 1; j >= 0; j--)
        {
            var own = y.AsSpan(j * width, width);
            var d = new Vector<double>(_d[j]);
            for (var v = 0; v < own.Length; v++)
            {
                own[v] /= d;
            }

            for (var p = _lowerStart[j]; p < _lowerStart[j + 1]; p++)
            {
                var other = y.AsSpan(_lowerRow[p] * width, width);
                var l = new Vector<double>(_lowerValue[p]);
                for (var v = 0; v < other.Length; v++)
                {
                    own[v] -= l * other[v];
                }
            }
        }

        for (var i = 0; i < _n; i++)
        {
            y.AsSpan(_position[i] * width, width).CopyTo(x.AsSpan(i * width));
        }
    }

    private (int[] Start, int[] Row) UpperPattern(IReadOnlyList<(int A, int B)> edges)
    {
        // Every edge keeps its own slot, so parallel pipes simply stand twice in a column.
        var start = new int[_n + 1];
        for (var e = 0; e < edges.Count; e++)
        {
            var (a, b) = edges[e];
            _slotOfEdge[e] = -1;
            if (a >= 0 && b >= 0)
            {
                start[Math.Max(_position[a], _position[b]) + 1]++;
            }
        }

        for (var i = 0; i < _n; i++)
        {
            start[i + 1] += start[i];
        }

        var next = start.AsSpan(0, _n).ToArray();
        var row = new int[start[_n]];
        for (var e = 0; e < edges.Count; e++)
        {
            var (a, b) = edges[e];
            if (a >= 0 && b >= 0)
            {
                var (low, high) = (Math.Min(_position[a], _position[b]), Math.Max(_position[a], _position[b]));
                var slot = next[high]++;
                row[slot] = low;
                _slotOfEdge[e] = slot;
            }
        }

        return (start, row);
    }

    private int[] LowerPattern()
    {
        var count = new int[_n + 1];
        Array.Fill(_flag, -1);
        for (var k = 0; k < _n; k++)
        {
            _parent[k] = -1;
            _flag[k] = k;
            for (var p = _upperStart[k]; p < _upperStart[k + 1]; p++)
            {
                for (var i = _upperRow[p]; _flag[i] != k; i = _parent[i])
                {
                    if (_parent[i] < 0)
                    {
                        _parent[i] = k;
                    }

                    count[i + 1]++;
                    _flag[i] = k;
                }
            }
        }

        for (var i = 0; i < _n; i++)
        {
            count[i + 1] += count[i];
        }

        return count;
    }
}
