using System.Globalization;

namespace Dripwright.Engine.Water;

/// <content>What is said about a solve.</content>
public sealed partial class NetworkSolver
{
    // [m³/s] 3.6 microlitres an hour: what still water's rounding is measured against.
    private const double StillFlow = 1e-12;

    private NetworkSolution Report(bool converged)
    {
        var total = TotalFlow();
        var (mass, worstNode) = WorstImbalance();
        var worstLink = -1;
        for (var l = 0; l < _links; l++)
        {
            if (worstLink < 0 || Math.Abs(_energy[l]) > Math.Abs(_energy[worstLink]))
            {
                worstLink = l;
            }
        }

        var energy = worstLink < 0 ? 0 : Math.Abs(_energy[worstLink]);
        return new NetworkSolution
        {
            Converged = converged,
            Reason = Reason(converged, total, energy, worstLink),
            Iterations = _iterations,
            Heads = (double[])_head.Clone(),
            LinkFlows = (double[])_flow.Clone(),
            EmitterFlows = (double[])_emitterFlow.Clone(),
            EmitterHeads = HeadsAtEmitters(),
            TotalFlow = total,
            MassResidual = mass,
            EnergyResidual = energy,
            WorstNode = worstNode,
            WorstLink = worstLink,
            IsolatedNodes = Where(_nodes, i => _isolated[i]),
            ShutCheckValves = Where(_links, l => _isShut[l] && _isOpen[l]),
            PumpsOutsideCurve = Where(
                _links,
                l => _laws[l] is PumpLaw pump && IsLive(l) && pump.IsOutsideCurve(_flow[l])
            ),
        };
    }

    private double TotalFlow()
    {
        var total = 0.0;
        for (var e = 0; e < _emitterCount; e++)
        {
            total += _count[e] * _emitterFlow[e];
        }

        for (var i = 0; i < _nodes; i++)
        {
            total += _isolated[i] ? 0 : Math.Max(0, _draw[i]);
        }

        return total;
    }

    /// <summary>Largest imbalance, summed afresh from the answer's flows, over the largest flow there is.</summary>
    private (double Relative, int Node) WorstImbalance()
    {
        var balance = new double[_nodes];
        // A pump may drive water round a bypass with nothing leaving: the largest flow anywhere is the measure.
        var largest = StillFlow;
        for (var l = 0; l < _links; l++)
        {
            balance[_from[l]] -= _flow[l];
            balance[_to[l]] += _flow[l];
            largest = Math.Max(largest, Math.Abs(_flow[l]));
        }

        for (var e = 0; e < _emitterCount; e++)
        {
            balance[_emitterNode[e]] -= _count[e] * _emitterFlow[e];
        }

        var worst = 0;
        for (var i = 0; i < _nodes; i++)
        {
            if (_row[i] < 0 || _isolated[i])
            {
                balance[i] = 0;
                continue;
            }

            balance[i] -= _draw[i];
            if (Math.Abs(balance[i]) > Math.Abs(balance[worst]))
            {
                worst = i;
            }
        }

        return _nodes == 0 ? (0, 0) : (Math.Abs(balance[worst]) / largest, worst);
    }

    private double[] HeadsAtEmitters()
    {
        var heads = new double[_emitterCount];
        for (var e = 0; e < _emitterCount; e++)
        {
            // A closed emitter feels the whole head of the line; an isolated or dry one none.
            var over = _head[_emitterNode[e]] - _outlet[e];
            heads[e] = _isolated[_emitterNode[e]] ? 0 : Math.Max(0, _multiplier[e] == 0 ? over : _emitterHead[e]);
        }

        return heads;
    }

    private string Reason(bool converged, double total, double energy, int worstLink)
    {
        for (var i = 0; i < _nodes; i++)
        {
            if (_isolated[i] && _draw[i] != 0)
            {
                return string.Create(
                    CultureInfo.InvariantCulture,
                    $"Node {i} has a set draw of {_draw[i]:G4} m³/s, but no open link joins it to a source."
                );
            }
        }

        if (!converged)
        {
            return worstLink < 0 || energy <= EnergyLimit
                ? "No answer was found: the check valves do not come to rest."
                : string.Create(
                    CultureInfo.InvariantCulture,
                    $"No answer was found after {_iterations} steps: at link {worstLink} ({_network.Links[worstLink].Kind}, node {_from[worstLink]} to {_to[worstLink]}) the heads miss by {energy:G3} m."
                );
        }

        return total > 0 || _emitterCount == 0 ? string.Empty : WhyNothingFlows();
    }

    private string WhyNothingFlows()
    {
        var lowest = double.PositiveInfinity;
        var reachable = double.PositiveInfinity;
        for (var e = 0; e < _emitterCount; e++)
        {
            if (_multiplier[e] > 0)
            {
                lowest = Math.Min(lowest, _outlet[e]);
                reachable = _isolated[_emitterNode[e]] ? reachable : Math.Min(reachable, _outlet[e]);
            }
        }

        if (double.IsPositiveInfinity(lowest))
        {
            return "Nothing flows: every emitter is closed.";
        }

        var highest = double.NegativeInfinity;
        for (var i = 0; i < _nodes; i++)
        {
            highest = _isolated[i] ? highest : Math.Max(highest, _head[i]);
        }

        return double.IsPositiveInfinity(reachable)
            ? "Nothing flows: no open link joins any emitter to a source."
            : string.Create(
                CultureInfo.InvariantCulture,
                $"Nothing flows: the head reaches {highest:F2} m and the lowest outlet stands at {reachable:F2} m."
            );
    }

    private static int[] Where(int count, Func<int, bool> holds)
    {
        var found = new List<int>();
        for (var i = 0; i < count; i++)
        {
            if (holds(i))
            {
                found.Add(i);
            }
        }

        return [.. found];
    }
}
