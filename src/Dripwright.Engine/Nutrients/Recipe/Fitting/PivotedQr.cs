namespace Dripwright.Engine.Nutrients.Recipe.Fitting;

/// <summary>A matrix as Q·R with its columns in order of what they add (Householder, column pivoting), so that its rank shows.</summary>
internal sealed class PivotedQr
{
    private const double RankTolerance = 1e-11;

    private readonly double[][] _columns;
    private readonly double[] _heads;
    private readonly int _rows;

    /// <summary>Factors the matrix; its columns are overwritten.</summary>
    /// <remarks>What is shorter than 1e-11 of the magnitude is rounding. The matrix cannot tell that itself: all of it may be.</remarks>
    public PivotedQr(double[][] columns, int rows, double magnitude)
    {
        this._columns = columns;
        this._rows = rows;
        var count = columns.Length;
        Order = new int[count];
        _heads = new double[count];
        var norms = new double[count];
        for (var j = 0; j < count; j++)
        {
            Order[j] = j;
            norms[j] = Dot(columns[j], columns[j], 0);
        }
        for (var k = 0; k < Math.Min(count, rows); k++)
        {
            var best = k;
            for (var j = k + 1; j < count; j++)
            {
                best = norms[j] > norms[best] ? j : best;
            }
            (columns[k], columns[best]) = (columns[best], columns[k]);
            (norms[k], norms[best]) = (norms[best], norms[k]);
            (Order[k], Order[best]) = (Order[best], Order[k]);
            var length = Math.Sqrt(Dot(columns[k], columns[k], k));
            if (length <= RankTolerance * magnitude)
            {
                break;
            }
            Rank++;
            Reflect(k, length, norms);
        }
    }

    /// <summary>Number of columns that are independent of each other.</summary>
    public int Rank { get; }

    /// <summary>Which column of the matrix stands where.</summary>
    public int[] Order { get; }

    /// <summary>Qᵀ·v, in place.</summary>
    public void TransposedTimes(double[] v)
    {
        for (var k = 0; k < Rank; k++)
        {
            Reflect(_columns[k], k, v);
        }
    }

    /// <summary>Q·v, in place.</summary>
    public void Times(double[] v)
    {
        for (var k = Rank - 1; k >= 0; k--)
        {
            Reflect(_columns[k], k, v);
        }
    }

    /// <summary>Solves R·x = y for the independent columns; the others get 0. Given back in the matrix's order.</summary>
    public double[] Back(double[] y)
    {
        var x = new double[_columns.Length];
        for (var k = Rank - 1; k >= 0; k--)
        {
            var sum = y[k];
            for (var j = k + 1; j < Rank; j++)
            {
                sum -= _columns[j][k] * x[Order[j]];
            }
            x[Order[k]] = sum / _heads[k];
        }
        return x;
    }

    // The reflection's vector is kept in its column from k down, scaled so that 2/vᵀv = 1/v₀.
    private void Reflect(int k, double length, double[] norms)
    {
        var column = _columns[k];
        var sign = column[k] > 0 ? 1 : -1;
        for (var i = k; i < _rows; i++)
        {
            column[i] /= sign * length;
        }
        column[k] += 1;
        _heads[k] = -sign * length;
        for (var j = k + 1; j < _columns.Length; j++)
        {
            Reflect(column, k, _columns[j]);
            norms[j] = Dot(_columns[j], _columns[j], k + 1);
        }
    }

    private void Reflect(double[] by, int k, double[] v)
    {
        var scale = Dot(by, v, k) / by[k];
        for (var i = k; i < _rows; i++)
        {
            v[i] -= scale * by[i];
        }
    }

    private double Dot(double[] a, double[] b, int from)
    {
        var sum = 0.0;
        for (var i = from; i < _rows; i++)
        {
            sum += a[i] * b[i];
        }
        return sum;
    }
}
