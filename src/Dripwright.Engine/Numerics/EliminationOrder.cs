namespace Dripwright.Engine.Numerics;

/// <summary>The order in which rows of a sparse symmetric matrix are eliminated so that little fills in.</summary>
internal static class EliminationOrder
{
    /// <summary>
    /// Minimum degree on the elimination graph itself: always take a row with fewest neighbours and join these. Feed lines
    /// are trees with a few loops, so rows stay short and the plain method is fast.
    /// </summary>
    /// <param name="n">Rows.</param>
    /// <param name="edges">Pairs of rows; pairs with a negative row are skipped.</param>
    /// <returns>For each row its place in the order.</returns>
    public static int[] MinimumDegree(int n, IReadOnlyList<(int A, int B)> edges)
    {
        var neighbours = Neighbours(n, edges);
        var position = new int[n];
        Array.Fill(position, -1);
        var buckets = new Buckets(n);
        for (var i = n - 1; i >= 0; i--)
        {
            buckets.Put(i, neighbours[i].Count);
        }

        var mark = new int[n];
        Array.Fill(mark, -1);
        for (var k = 0; k < n; k++)
        {
            var v = buckets.TakeLowest();
            position[v] = k;
            var around = neighbours[v];
            foreach (var u in around)
            {
                var list = neighbours[u];
                list.Remove(v);
                mark[u] = u;
                foreach (var w in list)
                {
                    mark[w] = u;
                }

                foreach (var w in around)
                {
                    if (mark[w] != u)
                    {
                        list.Add(w);
                    }
                }

                buckets.Move(u, list.Count);
            }

            neighbours[v] = [];
        }

        return position;
    }

    private static List<int>[] Neighbours(int n, IReadOnlyList<(int A, int B)> edges)
    {
        var neighbours = new List<int>[n];
        for (var i = 0; i < n; i++)
        {
            neighbours[i] = new List<int>(3);
        }

        foreach (var (a, b) in edges)
        {
            if (a >= 0 && b >= 0 && a != b)
            {
                neighbours[a].Add(b);
                neighbours[b].Add(a);
            }
        }

        var mark = new int[n];
        Array.Fill(mark, -1);
        for (var i = 0; i < n; i++)
        {
            DropRepeats(neighbours[i], mark, i);
        }

        return neighbours;
    }

    private static void DropRepeats(List<int> list, int[] mark, int row)
    {
        var kept = 0;
        for (var i = 0; i < list.Count; i++)
        {
            var w = list[i];
            if (mark[w] != row)
            {
                mark[w] = row;
                list[kept++] = w;
            }
        }

        list.RemoveRange(kept, list.Count - kept);
    }

    /// <summary>Doubly linked lists of rows by degree.</summary>
    private sealed class Buckets(int n)
    {
        private readonly int[] _head = Filled(n + 1);
        private readonly int[] _next = Filled(n);
        private readonly int[] _before = Filled(n);
        private readonly int[] _degree = new int[n];
        private int _lowest;

        public void Put(int row, int degree)
        {
            _degree[row] = degree;
            _before[row] = -1;
            _next[row] = _head[degree];
            if (_next[row] >= 0)
            {
                _before[_next[row]] = row;
            }

            _head[degree] = row;
            _lowest = Math.Min(_lowest, degree);
        }

        public void Move(int row, int degree)
        {
            Remove(row);
            Put(row, degree);
        }

        public int TakeLowest()
        {
            while (_head[_lowest] < 0)
            {
                _lowest++;
            }

            var row = _head[_lowest];
            Remove(row);
            return row;
        }

        private void Remove(int row)
        {
            if (_before[row] >= 0)
            {
                _next[_before[row]] = _next[row];
            }
            else
            {
                _head[_degree[row]] = _next[row];
            }

            if (_next[row] >= 0)
            {
                _before[_next[row]] = _before[row];
            }
        }

        private static int[] Filled(int length)
        {
            var array = new int[length];
            Array.Fill(array, -1);
            return array;
        }
    }
}
