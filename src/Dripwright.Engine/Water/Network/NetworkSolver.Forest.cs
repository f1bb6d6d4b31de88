namespace Dripwright.Engine.Water;

/// <content>The spanning forest: which nodes a source reaches, and flows that balance at every one of them.</content>
public sealed partial class NetworkSolver
{
    private readonly int[] _incidenceStart;
    private readonly int[] _incidence;
    private readonly int[] _treeLink; // node -> link to its parent; -1 for a root
    private readonly int[] _order; // reached nodes, parents before children
    private readonly bool[] _isolated;
    private readonly double[] _need;
    private int _reached;

    private bool Passes(int link) => _isOpen[link] && !_isShut[link];

    /// <summary>True when a link can carry water: open, and reached by a source.</summary>
    private bool IsLive(int link) => Passes(link) && !_isolated[_from[link]];

    private (int[] Start, int[] Links) Incidence()
    {
        var start = new int[_nodes + 1];
        for (var l = 0; l < _links; l++)
        {
            start[_from[l] + 1]++;
            start[_to[l] + 1]++;
        }

        for (var i = 0; i < _nodes; i++)
        {
            start[i + 1] += start[i];
        }

        var next = start.AsSpan(0, _nodes).ToArray();
        var links = new int[2 * _links];
        for (var l = 0; l < _links; l++)
        {
            links[next[_from[l]]++] = l;
            links[next[_to[l]]++] = l;
        }

        return (start, links);
    }

    /// <summary>Breadth first from all fixed heads over the links that pass.</summary>
    private void GrowForest()
    {
        Array.Fill(_isolated, true);
        _reached = 0;
        for (var i = 0; i < _nodes; i++)
        {
            if (_row[i] < 0)
            {
                Reach(i, -1);
            }
        }

        Spread(0);
    }

    private void Reach(int node, int link)
    {
        _isolated[node] = false;
        _treeLink[node] = link;
        _order[_reached++] = node;
    }

    private void Spread(int firstInOrder)
    {
        for (var at = firstInOrder; at < _reached; at++)
        {
            var node = _order[at];
            for (var p = _incidenceStart[node]; p < _incidenceStart[node + 1]; p++)
            {
                var link = _incidence[p];
                var other = _from[link] == node ? _to[link] : _from[link];
                if (_isolated[other] && Passes(link))
                {
                    Reach(other, link);
                }
            }
        }
    }

    /// <summary>Gives each part without a source the level to which it would drain: its lowest way out.</summary>
    private void SettleIsolated()
    {
        if (_reached == _nodes)
        {
            return;
        }

        for (var i = 0; i < _nodes; i++)
        {
            if (_isolated[i])
            {
                // Without an outlet the part keeps what it holds; its lowest point stands for that level.
                _head[i] = double.PositiveInfinity;
            }
        }

        for (var e = 0; e < _emitterCount; e++)
        {
            var node = _emitterNode[e];
            if (_isolated[node] && _multiplier[e] > 0)
            {
                _head[node] = Math.Min(_head[node], _outlet[e]);
            }
        }

        for (var l = 0; l < _links; l++)
        {
            // It also drains out through a check valve into a live part that stands lower.
            var (from, to) = (_from[l], _to[l]);
            if (_isShut[l] && _isOpen[l] && _isolated[from] && !_isolated[to])
            {
                _head[from] = Math.Min(_head[from], _head[to] + _laws[l].At(0).Head);
            }
        }

        // The order's tail is free for walking these parts; marks are put back at the end.
        var live = _reached;
        for (var i = 0; i < _nodes; i++)
        {
            if (!_isolated[i])
            {
                continue;
            }

            var first = _reached;
            Reach(i, -1);
            Spread(first);
            SettlePart(first);
        }

        for (var at = live; at < _reached; at++)
        {
            _isolated[_order[at]] = true;
        }

        _reached = live;
        for (var l = 0; l < _links; l++)
        {
            if (_isolated[_from[l]])
            {
                _flow[l] = 0;
                _energy[l] = 0;
            }
        }
    }

    private void SettlePart(int first)
    {
        var outlet = double.PositiveInfinity;
        var lowest = double.PositiveInfinity;
        for (var at = first; at < _reached; at++)
        {
            outlet = Math.Min(outlet, _head[_order[at]]);
            lowest = Math.Min(lowest, _network.Nodes[_order[at]].Elevation);
        }

        for (var at = first; at < _reached; at++)
        {
            _head[_order[at]] = double.IsPositiveInfinity(outlet) ? lowest : outlet;
        }
    }

    /// <summary>
    /// Takes the flows of the links outside the forest as they are, and gives the forest's those that balance every node.
    /// </summary>
    private void BalanceFlows(double[] flow)
    {
        _draw.CopyTo(_need, 0);
        for (var e = 0; e < _emitterCount; e++)
        {
            _need[_emitterNode[e]] += _count[e] * _emitterFlow[e];
        }

        for (var l = 0; l < _links; l++)
        {
            if (!IsLive(l))
            {
                flow[l] = 0;
            }
            else if (_treeLink[_from[l]] != l && _treeLink[_to[l]] != l)
            {
                _need[_from[l]] += flow[l];
                _need[_to[l]] -= flow[l];
            }
        }

        for (var at = _reached - 1; at >= 0; at--)
        {
            var node = _order[at];
            var link = _treeLink[node];
            if (link >= 0)
            {
                var toNode = _to[link] == node;
                flow[link] = toNode ? _need[node] : -_need[node];
                _need[toNode ? _from[link] : _to[link]] += _need[node];
            }
        }
    }
}
