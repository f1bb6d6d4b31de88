namespace Dripwright.Engine.Water;

/// <content>
/// The slow road that always leads down, taken when Newton's steps stall: with link flows as functions of the heads at
/// their ends, the heads that balance all junctions are the minimum of a convex function (the co-content of W. Millar,
/// 1951, and C. Cherry, 1951, from memory), and a Newton direction with a search along it cannot fail to approach it. It is
/// less exact than the fast road where wide pipes carry little, so that one finishes.
/// </content>
public sealed partial class NetworkSolver
{
    private const int MostDescents = 60;

    private void Descend()
    {
        for (var turn = 0; turn < MostDescents; turn++, _iterations++)
        {
            var worst = Imbalance(_head, out var largest);
            if (worst <= 1e-10 * largest)
            {
                return;
            }

            AssembleConductances();
            for (var i = 0; i < _nodes; i++)
            {
                if (_row[i] >= 0)
                {
                    _step[_row[i]] = _isolated[i] ? 0 : -_need[i];
                }
            }

            if (!_matrix.TryFactor())
            {
                return;
            }

            _matrix.Solve(_step);
            SearchAlong(Along());
        }
    }

    /// <summary>Moves the heads along the step to where the function's slope along it has mostly gone.</summary>
    private void SearchAlong(double atStart)
    {
        // The slope along the step rises from below zero: find where it has lost nine tenths, from a whole step.
        var (low, high) = (0.0, double.PositiveInfinity);
        var part = 1.0;
        for (var trial = 0; trial < 60; trial++)
        {
            for (var i = 0; i < _nodes; i++)
            {
                _trialHead[i] = _head[i] + part * StepOf(i);
            }

            Imbalance(_trialHead, out _);
            var slope = Along();
            if (Math.Abs(slope) <= 0.1 * Math.Abs(atStart))
            {
                break;
            }

            (low, high) = slope < 0 ? (part, high) : (low, part);
            part = double.IsPositiveInfinity(high) ? 2 * part : 0.5 * (low + high);
        }

        (_head, _trialHead) = (_trialHead, _head);
    }

    private double Along()
    {
        var sum = 0.0;
        for (var i = 0; i < _nodes; i++)
        {
            sum += StepOf(i) * _need[i];
        }

        return sum;
    }

    /// <summary>What each junction gives out beyond what it gets, with link flows that follow from the heads.</summary>
    private double Imbalance(double[] head, out double largest)
    {
        EvaluateEmitters(head);
        _draw.CopyTo(_need, 0);
        largest = 1e-12;
        for (var e = 0; e < _emitterCount; e++)
        {
            _need[_emitterNode[e]] += _count[e] * _emitterFlow[e];
        }

        for (var l = 0; l < _links; l++)
        {
            if (IsLive(l))
            {
                _flow[l] = FlowFor(l, head[_from[l]] - head[_to[l]], _flow[l]);
                _need[_from[l]] += _flow[l];
                _need[_to[l]] -= _flow[l];
                largest = Math.Max(largest, Math.Abs(_flow[l]));
            }
        }

        var worst = 0.0;
        for (var i = 0; i < _nodes; i++)
        {
            if (_row[i] >= 0 && !_isolated[i])
            {
                worst = Math.Max(worst, Math.Abs(_need[i]));
            }
        }

        return worst;
    }

    /// <summary>The flow at which a link takes a given head, from a guess; also leaves its slope there.</summary>
    private double FlowFor(int link, double head, double guess)
    {
        var (low, high) = (double.NegativeInfinity, double.PositiveInfinity);
        var flow = double.IsFinite(guess) ? guess : 0;
        var reach = Math.Max(1e-7, Math.Abs(flow));
        for (var trial = 0; trial < 200; trial++)
        {
            // The least slope makes the law strictly rising, so that it can be turned round.
            var loss = _laws[link].At(flow);
            var error = loss.Head + SmallestSlope * flow - head;
            var slope = loss.Slope + SmallestSlope;
            _slope[link] = slope;
            (low, high) = error > 0 ? (low, flow) : (flow, high);
            var next = flow - error / slope;
            if (error == 0 || Math.Abs(next - flow) <= 1e-15 * Math.Abs(flow) + 1e-25)
            {
                return flow;
            }

            if (!(next > low && next < high) || Math.Abs(next - flow) > reach)
            {
                var isOpenEnded = double.IsInfinity(low) || double.IsInfinity(high);
                next = isOpenEnded ? flow - Math.Sign(error) * reach : 0.5 * (low + high);
                reach *= isOpenEnded ? 4 : 1;
                if (next == low || next == high)
                {
                    return flow;
                }
            }

            flow = next;
        }

        return flow;
    }
}
