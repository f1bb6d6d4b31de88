namespace Dripwright.Engine.Numerics;

/// <summary>Systems of a few equations, solved where they stand.</summary>
internal static class SmallSystem
{
    /// <summary>[-] A pivot below this share of the largest entry counts as none.</summary>
    private const double LeastPivot = 1e-13;

    /// <summary>Gauss with row exchange; the matrix is used up and the side becomes the answer.</summary>
    /// <param name="matrix">Row by row.</param>
    /// <param name="side">Right-hand side.</param>
    /// <returns>False where the equations do not fix the answer.</returns>
    public static bool TrySolve(double[] matrix, double[] side)
    {
        var n = side.Length;
        double largest = 0;
        foreach (var value in matrix)
        {
            largest = Math.Max(largest, Math.Abs(value));
        }

        for (var k = 0; k < n; k++)
        {
            var pivot = k;
            for (var i = k + 1; i < n; i++)
            {
                if (Math.Abs(matrix[(i * n) + k]) > Math.Abs(matrix[(pivot * n) + k]))
                {
                    pivot = i;
                }
            }

            if (!(Math.Abs(matrix[(pivot * n) + k]) > LeastPivot * largest))
            {
                return false;
            }

            if (pivot != k)
            {
                for (var j = k; j < n; j++)
                {
                    (matrix[(k * n) + j], matrix[(pivot * n) + j]) = (matrix[(pivot * n) + j], matrix[(k * n) + j]);
                }

                (side[k], side[pivot]) = (side[pivot], side[k]);
            }

            for (var i = k + 1; i < n; i++)
            {
                var share = matrix[(i * n) + k] / matrix[(k * n) + k];
                if (share == 0)
                {
                    continue;
                }

                for (var j = k + 1; j < n; j++)
                {
                    matrix[(i * n) + j] -= share * matrix[(k * n) + j];
                }

                side[i] -= share * side[k];
            }
        }

        for (var i = n - 1; i >= 0; i--)
        {
            for (var j = i + 1; j < n; j++)
            {
                side[i] -= matrix[(i * n) + j] * side[j];
            }

            side[i] /= matrix[(i * n) + i];
        }

        return true;
    }

    /// <summary>Whether a symmetric matrix takes nothing from any way it is moved; it is used up.</summary>
    /// <param name="matrix">Row by row.</param>
    /// <param name="n">Rows.</param>
    /// <param name="slack">Added to the diagonal: what rounding may take.</param>
    public static bool IsPositive(double[] matrix, int n, double slack)
    {
        for (var k = 0; k < n; k++)
        {
            var pivot = matrix[(k * n) + k] + slack;
            if (!(pivot > 0))
            {
                return false;
            }

            for (var i = k + 1; i < n; i++)
            {
                var share = matrix[(i * n) + k] / pivot;
                for (var j = k + 1; j <= i; j++)
                {
                    matrix[(i * n) + j] -= share * matrix[(j * n) + k];
                }
            }
        }

        return true;
    }
}
