namespace Dripwright.Engine.Stands.Frame;

/// <summary>Solves a frame for one loading after the other; the analysis is made once.</summary>
/// <remarks>
/// Direct stiffness method, twelve displacements an element, sparse L D Lᵀ. Second order: the geometric stiffness of the
/// axial forces is added and the axial forces found again until they rest; corrections with the elastic factors come near
/// them first, and a factorisation with them in place solves for the answer and proves the frame stable there, unless it
/// was proven before with no axial force any less (the geometric stiffness of a tension takes nothing away). Feet that
/// only stand press, slip and lift: see <see cref="FootPath"/>; the factors are those of the frame with all feet held.
/// Not for use by two threads at once.
/// Method page: docs/methods/stand-frame.md
/// </remarks>
public sealed class FrameSolver
{
    private const int MostSecondOrderRounds = 20;

    private readonly FrameMatrix _matrix;
    private readonly bool[] _supports;
    private readonly List<(FrameLoading Loading, double[] OnFeet)> _resting = [];
    private FootStiffness? _onFeet;

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

    private FootStiffness OnFeet => _onFeet ??= new FootStiffness(Model, _matrix, _supports, null);

    /// <summary>Solves for a loading.</summary>
    /// <param name="loading">The loads.</param>
    /// <param name="options">How; first order with feet that lift and do not slip where null.</param>
    /// <param name="resting">Those of the loads that rest on the stand before the others come; null where all come together.</param>
    /// <returns>A <see cref="FrameSolution"/> or a <see cref="FrameFault"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A load names a node or element that is not there, a place off its
    /// element, or a force that is no finite number; an option lies outside its range.</exception>
    public FrameOutcome Solve(FrameLoading loading, FrameOptions? options = null, FrameLoading? resting = null)
    {
        ArgumentNullException.ThrowIfNull(loading);
        options ??= new FrameOptions();
        Check(options);
        var loads = new ElementLoads(Model, _matrix.Elements, loading);
        var first = First(loads, resting, options);
        return options.SecondOrder && first is FrameSolution solution ? SecondOrder([solution], options)[0] : first;
    }

    /// <summary>Goes on from first-order solutions to axial forces that act on the displaced shapes.</summary>
    /// <remarks>Each answer is the same whichever others are asked for with it; together they take less time.</remarks>
    /// <param name="firsts">First-order solutions of this solver's frame, found with the same law for the feet.</param>
    /// <param name="options">How; <see cref="FrameOptions.SecondOrder"/> is taken as set.</param>
    /// <param name="proof">What is known of the frame's stability: see <see cref="Prove"/>. Null where nothing is.</param>
    /// <returns>A <see cref="FrameSolution"/> or a <see cref="FrameFault"/> for each, in their order.</returns>
    public IReadOnlyList<FrameOutcome> SecondOrder(
        IReadOnlyList<FrameSolution> firsts,
        FrameOptions options,
        StabilityProof? proof = null
    )
    {
        ArgumentNullException.ThrowIfNull(firsts);
        ArgumentNullException.ThrowIfNull(options);
        Check(options);
        if (firsts.Count == 0)
        {
            return [];
        }

        _matrix.TryFactor(_supports, null);
        var shapes = DisplacedShapes.Of(Model, _matrix, _supports, OnFeet, options, firsts);
        return [.. firsts.Select((first, i) => Second(first, shapes[i], options, proof))];
    }

    /// <summary>Proves the frame stable with axial forces, if it is.</summary>
    /// <param name="tension">[N] Axial force of each element, tension positive.</param>
    /// <param name="solutions">Solutions whose feet may be free in what the proof is asked for.</param>
    /// <returns>Null where it is not stable even with all its feet held.</returns>
    public StabilityProof? Prove(double[] tension, IReadOnlyList<FrameSolution> solutions)
    {
        ArgumentNullException.ThrowIfNull(tension);
        ArgumentNullException.ThrowIfNull(solutions);
        if (!_matrix.TryFactor(_supports, tension))
        {
            return null;
        }

        var stiffness = new FootStiffness(Model, _matrix, _supports, tension);
        for (var foot = 0; foot < stiffness.Feet.Length; foot++)
        {
            if (solutions.Any(s => s.Feet.Motions[foot] != FootMotion.Sticks))
            {
                stiffness.Columns(foot);
            }
        }

        return new StabilityProof(tension, stiffness);
    }

    /// <summary>Whether a frame bears a multiple of its loads without buckling, all growing together.</summary>
    /// <param name="solution">A first-order solution of this solver's frame.</param>
    /// <param name="factor">[-] Multiple, 0 or more.</param>
    public bool StandsAt(FrameSolution solution, double factor)
    {
        ArgumentNullException.ThrowIfNull(solution);
        Guard.NotNegative(factor);
        return IsStable([.. solution.Tensions.Select(n => factor * n)], solution);
    }

    /// <summary>Whether the frame is stable with axial forces that act on its displaced shape.</summary>
    /// <remarks>It is then also stable with any axial forces of which none is less.</remarks>
    /// <param name="tension">[N] Axial force of each element, tension positive.</param>
    /// <param name="solution">The feet that slip and lift in it are free.</param>
    public bool IsStable(double[] tension, FrameSolution solution)
    {
        ArgumentNullException.ThrowIfNull(tension);
        ArgumentNullException.ThrowIfNull(solution);
        return Prove(tension, [solution])?.Covers(tension, solution.Feet, solution.Law) == true;
    }

    /// <summary>How many times its loads a solved frame could bear before it buckles, all growing together.</summary>
    /// <remarks>A foot that slips is held by friction against any other way than its own: here it counts as held.</remarks>
    /// <param name="solution">A first-order solution of this solver's frame.</param>
    /// <returns>Null where nothing is pressed hard enough to buckle at any multiple.</returns>
    public FrameBuckling? Buckling(FrameSolution solution)
    {
        ArgumentNullException.ThrowIfNull(solution);
        return BucklingSearch.Smallest(_matrix, HeldWith(solution.Lifted), solution.Tensions);
    }

    private static void Check(FrameOptions options)
    {
        Guard.Positive(options.AxialFactor);
        if (options.LoadSteps < 1)
        {
            throw new ArgumentOutOfRangeException(nameof(options), options.LoadSteps, "There is a step at least.");
        }

        if (!(options.Friction >= 0))
        {
            throw new ArgumentOutOfRangeException(nameof(options), options.Friction, "Friction is 0 or more.");
        }
    }

    private FrameOutcome First(ElementLoads loads, FrameLoading? resting, FrameOptions options)
    {
        if (!_matrix.TryFactor(_supports, null))
        {
            return Fault(FrameFaultKind.Loose, _matrix.FreeMotion());
        }

        var x = Solved(loads, null);
        var all = OnFeet.Reactions(x, loads.OnRows);
        var before = new double[all.Length];
        if (resting is not null && options.FeetLift)
        {
            before = RestingOn(resting);
        }

        var standing = new FootStanding(x, before, all);
        var feet = Followed(OnFeet, standing, options);
        return feet.Found ? Answer(loads, OnFeet, standing, feet, options, null) : Gone(OnFeet, feet);
    }

    // Several loadings come after the same one: it is solved once.
    private double[] RestingOn(FrameLoading resting)
    {
        foreach (var (known, reactions) in _resting)
        {
            if (ReferenceEquals(known, resting))
            {
                return reactions;
            }
        }

        var there = new ElementLoads(Model, _matrix.Elements, resting);
        var rows = there.Rows(_supports);
        _matrix.Solve(rows);
        var found = OnFeet.Reactions(rows, there.OnRows);
        _resting.Add((resting, found));
        return found;
    }

    private static FeetAtRest Followed(FootStiffness stiffness, FootStanding standing, FrameOptions options) =>
        options.FeetLift
            ? new FootPath(stiffness, options.Law, standing.Resting, standing.All).Follow(options.LoadSteps)
            : new FeetAtRest(
                new double[standing.All.Length],
                new FootMotion[standing.All.Length / 3],
                new double[standing.All.Length],
                true
            );

    private FrameSolution Answer(
        ElementLoads loads,
        FootStiffness stiffness,
        FootStanding standing,
        FeetAtRest feet,
        FrameOptions options,
        double[]? tension
    )
    {
        var x = standing.X;
        if (!feet.Still)
        {
            x = (double[])x.Clone();
            stiffness.AddTo(feet.Shifts, x);
        }

        return Answer(loads, standing, feet, options, tension, x);
    }

    private FrameSolution Answer(
        ElementLoads loads,
        FootStanding standing,
        FeetAtRest feet,
        FrameOptions options,
        double[]? tension,
        double[] x
    )
    {
        var lifted = OnFeet.Feet.Where((_, i) => feet.Motions[i] == FootMotion.Lifts);
        return new FrameSolution(Model, _matrix.Elements, loads, x, HeldWith(lifted), standing, feet, tension)
        {
            Law = options.Law,
        };
    }

    private FrameOutcome Second(FrameSolution first, DisplacedShape shape, FrameOptions options, StabilityProof? proof)
    {
        var loads = first.Loads;
        if (shape.X is { } known)
        {
            double[] acting = [.. shape.Tensions.Select(n => options.AxialFactor * n)];
            if (proof?.Covers(acting, shape.Feet, options.Law) == true)
            {
                return Answer(loads, first.Standing, shape.Feet, options, acting, known);
            }
        }

        var tensions = shape.Tensions;
        FrameSolution? last = null;
        for (var round = 0; round < MostSecondOrderRounds; round++)
        {
            double[] tension = [.. tensions.Select(n => options.AxialFactor * n)];
            if (!_matrix.TryFactor(_supports, tension))
            {
                return Fault(FrameFaultKind.Buckles, _matrix.FreeMotion());
            }

            var stiffness = new FootStiffness(Model, _matrix, _supports, tension);
            var x = Solved(loads, tension);
            var standing = new FootStanding(x, first.Standing.Resting, stiffness.Reactions(x, loads.OnRows));
            var feet = Followed(stiffness, standing, options);
            if (!feet.Found && stiffness.Work(feet.Shifts) >= 0 && feet.Shifts.Any(s => s != 0))
            {
                return Gone(stiffness, feet);
            }

            if (!feet.Found || !StabilityProof.IsPositive(stiffness, feet, options.Law))
            {
                // On its displaced shape the frame gives way where its feet let it: it goes on as it had begun.
                return Fault(
                    feet.Motions.Contains(FootMotion.Lifts) ? FrameFaultKind.Tips : FrameFaultKind.Buckles,
                    LargestMotion(last ?? first)
                );
            }

            var next = Answer(loads, stiffness, standing, feet, options, tension);
            double change = 0;
            double most = 0;
            for (var e = 0; e < tension.Length; e++)
            {
                change = Math.Max(change, Math.Abs(next.Tensions[e] - tensions[e]));
                most = Math.Max(most, Math.Abs(next.Tensions[e]));
            }

            last = next;
            tensions = [.. next.Tensions];
            if (change <= 1e-4 * most)
            {
                return next;
            }
        }

        // Axial forces that never rest are those of a frame on the verge.
        return Fault(FrameFaultKind.Buckles, LargestMotion(last ?? first));
    }

    // Displacements with all feet held where they stand.
    private double[] Solved(ElementLoads loads, double[]? tension)
    {
        var x = loads.Rows(_supports);
        _matrix.Solve(x);
        // One round of refinement: what rounding left over is solved for once more.
        var rest = loads.Rows(_supports);
        var product = new double[rest.Length];
        _matrix.AddElastic(x, product);
        if (tension is not null)
        {
            _matrix.AddGeometric(tension, x, product);
        }

        for (var i = 0; i < rest.Length; i++)
        {
            rest[i] = _supports[i] ? 0 : rest[i] - product[i];
        }

        _matrix.Solve(rest);
        for (var i = 0; i < rest.Length; i++)
        {
            x[i] += rest[i];
        }

        return x;
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

    // Feet that find no rest: they tip where they rise faster than they slide.
    private FrameFault Gone(FootStiffness stiffness, FeetAtRest feet)
    {
        var motion = new double[_matrix.Rows];
        stiffness.AddTo(feet.Shifts, motion);
        double rise = 0;
        double slide = 0;
        for (var i = 0; i < feet.Shifts.Length; i += 3)
        {
            rise = Math.Max(rise, Math.Abs(feet.Shifts[i + 2]));
            slide = Math.Max(
                slide,
                Math.Sqrt((feet.Shifts[i] * feet.Shifts[i]) + (feet.Shifts[i + 1] * feet.Shifts[i + 1]))
            );
        }

        var most = Math.Max(rise, slide);
        return Fault(rise > slide ? FrameFaultKind.Tips : FrameFaultKind.Walks, motion) with
        {
            Feet =
            [
                .. stiffness.Feet.Where(
                    (_, i) =>
                        new Vector3(feet.Shifts[3 * i], feet.Shifts[(3 * i) + 1], feet.Shifts[(3 * i) + 2]).Length
                        > 0.1 * most
                ),
            ],
        };
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
