namespace Dripwright.Engine.Stands.Frame;

/// <summary>Solves a frame for one loading after the other; the analysis is made once.</summary>
/// <remarks>
/// Direct stiffness method, twelve displacements an element, sparse L D Lᵀ. Second order: the geometric stiffness of the
/// axial forces is added and the axial forces found again until they rest; corrections with the elastic factors come near
/// them first, and a factorisation with them in place solves for the answer and proves the frame stable there, unless it
/// was proven before with no axial force any less (the geometric stiffness of a tension takes nothing away). Feet that
/// only stand are let go when they pull and held again when they would sink into the floor, until no foot changes.
/// Not for use by two threads at once.
/// Method page: docs/methods/stand-frame.md
/// </remarks>
public sealed class FrameSolver
{
    private const int MostSecondOrderRounds = 20;

    private readonly FrameMatrix _matrix;
    private readonly bool[] _supports;

    /// <summary>Analyses a frame.</summary>
    /// <param name="model">The frame.</param>
    public FrameSolver(FrameModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        Model = model;
        _matrix = new FrameMatrix(model);
        _supports = new bool[_matrix.Rows];
        for (var node = 0; node < model.Nodes.Count; node++)
        {
            for (var i = 0; i < 6; i++)
            {
                _supports[(6 * node) + i] = ((int)model.Nodes[node].Held >> i & 1) == 1;
            }
        }
    }

    /// <summary>The frame.</summary>
    public FrameModel Model { get; }

    /// <summary>Entries below the diagonal of the factor: the cost of a solution grows with them.</summary>
    public int FactorEntries => _matrix.LowerEntries;

    internal FrameMatrix Matrix => _matrix;

    /// <summary>Solves for a loading.</summary>
    /// <param name="loading">The loads.</param>
    /// <param name="options">How; first order with feet that lift where null.</param>
    /// <returns>A <see cref="FrameSolution"/> or a <see cref="FrameFault"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A load names a node or element that is not there, a place off its
    /// element, or a force that is no finite number.</exception>
    public FrameOutcome Solve(FrameLoading loading, FrameOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(loading);
        options ??= new FrameOptions();
        Guard.Positive(options.AxialFactor);
        var loads = new ElementLoads(Model, _matrix.Elements, loading);
        var first = Settled(loads, null, null, options with { SecondOrder = false }, null);
        return options.SecondOrder && first is FrameSolution solution ? SecondOrder([solution], options)[0] : first;
    }

    /// <summary>Goes on from first-order solutions to axial forces that act on the displaced shapes.</summary>
    /// <remarks>Each answer is the same whichever others are asked for with it; together they take less time.</remarks>
    /// <param name="firsts">First-order solutions of this solver's frame.</param>
    /// <param name="options">How; <see cref="FrameOptions.SecondOrder"/> is taken as set.</param>
    /// <param name="proven">[N] Axial force of each element, tension positive, with which the frame is known to be stable
    /// while the same feet are lifted: see <see cref="IsStable"/>. Null where none is known.</param>
    /// <returns>A <see cref="FrameSolution"/> or a <see cref="FrameFault"/> for each, in their order.</returns>
    public IReadOnlyList<FrameOutcome> SecondOrder(
        IReadOnlyList<FrameSolution> firsts,
        FrameOptions options,
        double[]? proven = null
    )
    {
        ArgumentNullException.ThrowIfNull(firsts);
        ArgumentNullException.ThrowIfNull(options);
        Guard.Positive(options.AxialFactor);
        var outcomes = new FrameOutcome[firsts.Count];
        // Those that stand on the same feet have the same factors.
        foreach (var alike in Enumerable.Range(0, firsts.Count).GroupBy(i => string.Join(',', firsts[i].Lifted)))
        {
            int[] members = [.. alike];
            var shapes = Displaced([.. members.Select(i => firsts[i])], options);
            for (var k = 0; k < members.Length; k++)
            {
                var first = firsts[members[k]];
                outcomes[members[k]] = Settled(
                    first.Loads,
                    first,
                    shapes[k],
                    options with
                    {
                        SecondOrder = true,
                    },
                    proven
                );
            }
        }

        return outcomes;
    }

    // Solutions that stand on the same feet.
    private DisplacedShape[] Displaced(IReadOnlyList<FrameSolution> firsts, FrameOptions options)
    {
        var held = HeldWith(firsts[0].Lifted);
        return _matrix.TryFactor(held, null)
            ? DisplacedShapes.Of(Model, _matrix, held, firsts, options.AxialFactor)
            : [.. firsts.Select(first => new DisplacedShape([.. first.Tensions], null))];
    }

    /// <summary>Whether a frame bears a multiple of its loads without buckling, all growing together.</summary>
    /// <param name="solution">A first-order solution of this solver's frame.</param>
    /// <param name="factor">[-] Multiple, 0 or more.</param>
    public bool StandsAt(FrameSolution solution, double factor)
    {
        ArgumentNullException.ThrowIfNull(solution);
        Guard.NotNegative(factor);
        return IsStable([.. solution.Tensions.Select(n => factor * n)], solution.Lifted);
    }

    /// <summary>Whether the frame is stable with axial forces that act on its displaced shape.</summary>
    /// <remarks>It is then also stable with any axial forces of which none is less.</remarks>
    /// <param name="tension">[N] Axial force of each element, tension positive.</param>
    /// <param name="lifted">Feet that have lifted off.</param>
    public bool IsStable(double[] tension, IEnumerable<int> lifted)
    {
        ArgumentNullException.ThrowIfNull(tension);
        ArgumentNullException.ThrowIfNull(lifted);
        return _matrix.TryFactor(HeldWith(lifted), tension);
    }

    /// <summary>How many times its loads a solved frame could bear before it buckles, all growing together.</summary>
    /// <param name="solution">A first-order solution of this solver's frame.</param>
    /// <returns>Null where nothing is pressed hard enough to buckle at any multiple.</returns>
    public FrameBuckling? Buckling(FrameSolution solution)
    {
        ArgumentNullException.ThrowIfNull(solution);
        return BucklingSearch.Smallest(_matrix, HeldWith(solution.Lifted), solution.Tensions);
    }

    // Solves again until no foot changes.
    private FrameOutcome Settled(
        ElementLoads loads,
        FrameSolution? first,
        DisplacedShape? shape,
        FrameOptions options,
        double[]? proven
    )
    {
        var lifted = new HashSet<int>(first?.Lifted ?? []);
        HashSet<string> seen = [];
        var oneByOne = false;
        var most = (4 * Model.Nodes.Count(n => n.Lifts)) + 10;
        for (var round = 0; ; round++)
        {
            var known = round == 0;
            var outcome = known
                ? WithFeet(loads, first, shape, lifted, options, proven)
                : WithFeet(loads, null, null, lifted, options, null);
            if (outcome is not FrameSolution solution || !options.FeetLift)
            {
                return outcome;
            }

            if (!ChangeFeet(solution, lifted, oneByOne, loads.Size))
            {
                return solution;
            }

            oneByOne |= !seen.Add(string.Join(',', lifted.Order()));
            if (round >= most)
            {
                var node = lifted.Count > 0 ? lifted.Min() : 0;
                return Fault(FrameFaultKind.NotSettled, UnitLift(node));
            }
        }
    }

    // First is the first-order solution with these feet lifted, and shape what follows from it, where they are known.
    private FrameOutcome WithFeet(
        ElementLoads loads,
        FrameSolution? first,
        DisplacedShape? shape,
        HashSet<int> lifted,
        FrameOptions options,
        double[]? proven
    )
    {
        var held = HeldWith(lifted);
        if (!_matrix.TryFactor(held, null))
        {
            return Fault(lifted.Count > 0 ? FrameFaultKind.Tips : FrameFaultKind.Loose, _matrix.FreeMotion());
        }

        var solution = first ?? Solved(loads, held, lifted, null);
        if (!options.SecondOrder)
        {
            return solution;
        }

        var (tensions, x) = shape ?? Displaced([solution], options)[0];
        if (x is not null && proven is not null)
        {
            double[] acting = [.. tensions.Select(n => options.AxialFactor * n)];
            if (!acting.Where((n, e) => n < proven[e]).Any())
            {
                return new FrameSolution(Model, _matrix.Elements, loads, x, held, [.. lifted.Order()], acting);
            }
        }

        for (var round = 0; round < MostSecondOrderRounds; round++)
        {
            double[] tension = [.. tensions.Select(n => options.AxialFactor * n)];
            if (!_matrix.TryFactor(held, tension))
            {
                return Fault(FrameFaultKind.Buckles, _matrix.FreeMotion());
            }

            var next = Solved(loads, held, lifted, tension);
            double change = 0;
            double most = 0;
            for (var e = 0; e < tension.Length; e++)
            {
                change = Math.Max(change, Math.Abs(next.Tensions[e] - tensions[e]));
                most = Math.Max(most, Math.Abs(next.Tensions[e]));
            }

            solution = next;
            tensions = [.. next.Tensions];
            if (change <= 1e-4 * most)
            {
                return solution;
            }
        }

        // Axial forces that never rest are those of a frame on the verge.
        return Fault(FrameFaultKind.Buckles, LargestMotion(solution));
    }

    private FrameSolution Solved(ElementLoads loads, bool[] held, HashSet<int> lifted, double[]? tension)
    {
        var x = loads.Rows(held);
        _matrix.Solve(x);
        // One round of refinement: what rounding left over is solved for once more.
        var rest = loads.Rows(held);
        var product = new double[rest.Length];
        _matrix.AddElastic(x, product);
        if (tension is not null)
        {
            _matrix.AddGeometric(tension, x, product);
        }

        for (var i = 0; i < rest.Length; i++)
        {
            rest[i] = held[i] ? 0 : rest[i] - product[i];
        }

        _matrix.Solve(rest);
        for (var i = 0; i < rest.Length; i++)
        {
            x[i] += rest[i];
        }

        return new FrameSolution(Model, _matrix.Elements, loads, x, held, [.. lifted.Order()], tension);
    }

    private bool ChangeFeet(FrameSolution solution, HashSet<int> lifted, bool oneByOne, double size)
    {
        var leastForce = 1e-9 * size;
        List<(int Node, double Wrong)> wrong = [];
        for (var node = 0; node < Model.Nodes.Count; node++)
        {
            if (!Model.Nodes[node].Lifts)
            {
                continue;
            }

            if (!lifted.Contains(node))
            {
                var push = solution.Reaction(node).Force.Z;
                if (push < -leastForce)
                {
                    wrong.Add((node, -push));
                }
            }
            else if (solution.Shift(node).Z < -1e-12)
            {
                wrong.Add((node, double.PositiveInfinity));
            }
        }

        if (oneByOne && wrong.Count > 1)
        {
            wrong = [wrong.MaxBy(w => w.Wrong)];
        }

        foreach (var (node, _) in wrong)
        {
            if (!lifted.Remove(node))
            {
                lifted.Add(node);
            }
        }

        return wrong.Count > 0;
    }

    private bool[] HeldWith(IEnumerable<int> lifted)
    {
        var held = (bool[])_supports.Clone();
        foreach (var node in lifted)
        {
            // A lifted foot is free to move and rock; that it could spin in its socket is nobody's concern.
            held.AsSpan(6 * node, 5).Clear();
        }

        return held;
    }

    private double[] UnitLift(int node)
    {
        var motion = new double[_matrix.Rows];
        motion[(6 * node) + 2] = 1;
        return motion;
    }

    private double[] LargestMotion(FrameSolution solution)
    {
        var motion = new double[_matrix.Rows];
        for (var node = 0; node < Model.Nodes.Count; node++)
        {
            var (s, t) = (solution.Shift(node), solution.Turn(node));
            ((ReadOnlySpan<double>)[s.X, s.Y, s.Z, t.X, t.Y, t.Z]).CopyTo(motion.AsSpan(6 * node));
        }

        return motion;
    }

    private FrameFault Fault(FrameFaultKind kind, double[] motion) => FreeMotions.Fault(Model, kind, motion);
}
