namespace Dripwright.Engine.Water;

/// <content>The steps: a first guess, Newton's direction, and how far to follow it.</content>
public sealed partial class NetworkSolver
{
    private readonly double[] _change;

    /// <summary>A linear network with each link's and emitter's mean resistance at an ordinary flow gives the start.</summary>
    private void GuessHeads()
    {
        const double OrdinaryVelocity = 0.3;
        const double OrdinaryFlow = 1e-3;
        var highest = HighestSourceHead();
        _matrix.Clear();
        Array.Clear(_step);
        for (var i = 0; i < _nodes; i++)
        {
            if (_row[i] < 0)
            {
                _head[i] = _network.Nodes[i].Elevation;
            }
            else if (_isolated[i])
            {
                _matrix.AddDiagonal(_row[i], 1);
                _step[_row[i]] = _head[i];
            }
            else
            {
                _step[_row[i]] -= _draw[i];
            }
        }

        for (var l = 0; l < _links; l++)
        {
            if (!IsLive(l))
            {
                continue;
            }

            var ordinary = _laws[l] is PipeLaw pipe ? pipe.Pipe.Area * OrdinaryVelocity : OrdinaryFlow;
            var still = _laws[l].At(0).Head;
            var conductance = 1 / Math.Max(SmallestSlope, (_laws[l].At(ordinary).Head - still) / ordinary);
            _energy[l] = -still;
            _slope[l] = 1 / conductance;
            AddLinkToMatrix(l, conductance);
            AddToStep(_from[l], conductance * still);
            AddToStep(_to[l], -conductance * still);
            AddFixedSide(_from[l], _to[l], conductance);
            AddFixedSide(_to[l], _from[l], conductance);
        }

        for (var e = 0; e < _emitterCount; e++)
        {
            var node = _emitterNode[e];
            var over = 0.5 * (highest - _outlet[e]);
            if (over > 0 && !_isolated[node])
            {
                var (flow, _) = EmitterBranch.At(_emitterLaw[e], _branch[e], _multiplier[e], over, ref _emitterHead[e]);
                var conductance = _count[e] * flow / over;
                _matrix.AddDiagonal(_row[node], conductance);
                _step[_row[node]] += conductance * _outlet[e];
            }
        }

        if (!_matrix.TryFactor())
        {
            return;
        }

        _matrix.Solve(_step);
        for (var i = 0; i < _nodes; i++)
        {
            if (_row[i] >= 0 && !_isolated[i])
            {
                _head[i] = _step[_row[i]];
            }
        }

        for (var l = 0; l < _links; l++)
        {
            if (IsLive(l))
            {
                _flow[l] = (_head[_from[l]] - _head[_to[l]] + _energy[l]) / _slope[l];
            }
        }
    }

    private double HighestSourceHead()
    {
        var highest = double.NegativeInfinity;
        for (var i = 0; i < _nodes; i++)
        {
            if (_row[i] < 0)
            {
                highest = Math.Max(highest, _network.Nodes[i].Elevation);
            }
        }

        var gain = 0.0;
        for (var l = 0; l < _links; l++)
        {
            if (IsLive(l))
            {
                gain += Math.Max(0, -_laws[l].At(0).Head);
            }
        }

        return highest + gain;
    }

    private bool FindBalance()
    {
        for (var road = 0; road < 4; road++)
        {
            if (IterateNewton())
            {
                return true;
            }

            Descend();
        }

        return IterateNewton();
    }

    private bool IterateNewton()
    {
        var merit = Evaluate(_head, _flow);
        var largest = LargestEnergy();
        for (var step = 0; step < MostIterations; step++, _iterations++)
        {
            if (largest <= EnergyTarget)
            {
                return true;
            }

            if (!TryDirection())
            {
                break;
            }

            if (!TryStep(merit, out var better))
            {
                // No step helps: either rounding is reached, or the equations cannot be met.
                Evaluate(_head, _flow);
                break;
            }

            (_head, _trialHead) = (_trialHead, _head);
            (_flow, _trialFlow) = (_trialFlow, _flow);
            merit = better;
            largest = LargestEnergy();
        }

        return largest <= EnergyLimit;
    }

    /// <summary>Emitter flows from heads, balanced link flows, energy residuals; returns the sum of their squares.</summary>
    private double Evaluate(double[] head, double[] flow)
    {
        EvaluateEmitters(head);
        BalanceFlows(flow);
        var merit = 0.0;
        for (var l = 0; l < _links; l++)
        {
            if (!IsLive(l))
            {
                _energy[l] = 0;
                continue;
            }

            var loss = _laws[l].At(flow[l]);
            _energy[l] = head[_from[l]] - head[_to[l]] - loss.Head - _leastLoss[l] * flow[l];
            _slope[l] = Math.Max(SmallestSlope, loss.Slope + _leastLoss[l]);
            merit += _energy[l] * _energy[l];
        }

        return merit;
    }

    private void EvaluateEmitters(double[] head)
    {
        for (var e = 0; e < _emitterCount; e++)
        {
            var node = _emitterNode[e];
            (_emitterFlow[e], _emitterSlope[e]) = _isolated[node]
                ? (0, 0)
                : EmitterBranch.At(
                    _emitterLaw[e],
                    _branch[e],
                    _multiplier[e],
                    head[node] - _outlet[e],
                    ref _emitterHead[e]
                );
        }
    }

    private bool TryDirection()
    {
        AssembleConductances();
        Array.Clear(_step);
        for (var l = 0; l < _links; l++)
        {
            if (IsLive(l))
            {
                AddToStep(_from[l], -_energy[l] / _slope[l]);
                AddToStep(_to[l], _energy[l] / _slope[l]);
            }
        }

        if (!_matrix.TryFactor())
        {
            return false;
        }

        _matrix.Solve(_step);
        return true;
    }

    /// <summary>The matrix of both roads: what flow at each junction changes by with each head.</summary>
    private void AssembleConductances()
    {
        _matrix.Clear();
        for (var i = 0; i < _nodes; i++)
        {
            if (_isolated[i])
            {
                _matrix.AddDiagonal(_row[i], 1);
            }
        }

        for (var l = 0; l < _links; l++)
        {
            if (IsLive(l))
            {
                AddLinkToMatrix(l, 1 / _slope[l]);
            }
        }

        for (var e = 0; e < _emitterCount; e++)
        {
            var node = _emitterNode[e];
            if (!_isolated[node])
            {
                _matrix.AddDiagonal(_row[node], _count[e] * _emitterSlope[e]);
            }
        }
    }

    /// <summary>Follows the direction as far as it lowers the residuals, halving from a whole step.</summary>
    private bool TryStep(double merit, out double better)
    {
        // The links' changes must be known before the first trial overwrites energies and slopes.
        var change = _change;
        for (var l = 0; l < _links; l++)
        {
            change[l] = IsLive(l) ? (_energy[l] + StepOf(_from[l]) - StepOf(_to[l])) / _slope[l] : 0;
        }

        // Close to rounding a short search tells enough; far from it a step may have to be very short.
        var shortest = merit < 1e-16 ? 0.2 : 1e-9;
        for (var part = 1.0; part > shortest; part *= 0.5)
        {
            for (var i = 0; i < _nodes; i++)
            {
                _trialHead[i] = _row[i] < 0 || _isolated[i] ? _head[i] : _head[i] + part * _step[_row[i]];
            }

            for (var l = 0; l < _links; l++)
            {
                _trialFlow[l] = _flow[l] + part * change[l];
            }

            better = Evaluate(_trialHead, _trialFlow);
            if (better <= (1 - 1e-4 * part) * merit)
            {
                return true;
            }
        }

        better = merit;
        return false;
    }

    private double StepOf(int node) => _row[node] < 0 || _isolated[node] ? 0 : _step[_row[node]];

    private double LargestEnergy()
    {
        var largest = 0.0;
        foreach (var energy in _energy)
        {
            largest = Math.Max(largest, Math.Abs(energy));
        }

        return largest;
    }

    private void AddLinkToMatrix(int link, double conductance)
    {
        var (a, b) = (_row[_from[link]], _row[_to[link]]);
        if (a >= 0)
        {
            _matrix.AddDiagonal(a, conductance);
        }

        if (b >= 0)
        {
            _matrix.AddDiagonal(b, conductance);
        }

        if (a >= 0 && b >= 0)
        {
            _matrix.AddEdge(link, -conductance);
        }
    }

    private void AddToStep(int node, double value)
    {
        if (_row[node] >= 0)
        {
            _step[_row[node]] += value;
        }
    }

    private void AddFixedSide(int node, int other, double conductance)
    {
        if (_row[node] < 0)
        {
            AddToStep(other, conductance * _head[node]);
        }
    }
}
