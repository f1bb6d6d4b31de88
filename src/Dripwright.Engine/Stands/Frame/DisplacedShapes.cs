using System.Numerics;
using System.Runtime.InteropServices;

namespace Dripwright.Engine.Stands.Frame;

/// <summary>What the corrections found for one loading.</summary>
/// <param name="Tensions">[N] Axial forces on the displaced shape; those of first order where the corrections do not settle.</param>
/// <param name="X">Displacements, six rows a node; null where the corrections do not settle.</param>
/// <param name="Feet">What the feet do then.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct DisplacedShape(double[] Tensions, double[]? X, FeetAtRest Feet);

/// <summary>
/// Axial forces and displacements on the displaced shape, x = K⁻¹(f − Kg·x), with the elastic factors, for several loadings
/// side by side: each factor read serves them all. The feet are followed anew each time, what the displaced shape adds coming
/// on with the loads that do not rest on the stand.
/// </summary>
/// <remarks>
/// The steps shrink by about the share of the buckling load that acts; where that is not small, the corrections give up.
/// A loading's answer does not depend on those beside it.
/// </remarks>
internal sealed class DisplacedShapes
{
    private const int MostRounds = 16;

    private readonly FrameModel _model;
    private readonly FrameMatrix _matrix;
    private readonly bool[] _held;
    private readonly FootStiffness _stiffness;
    private readonly FootLaw _law;
    private readonly int _loadSteps;
    private readonly double[] _footRows; // of Kg·x, three a foot and loading
    private readonly FeetAtRest?[] _feet;
    private readonly IReadOnlyList<FrameSolution> _firsts;
    private readonly int _width; // vectors a row
    private readonly Vector<double>[] _start;
    private readonly Vector<double>[] _x;
    private readonly Vector<double>[] _bent;
    private readonly Vector<double>[] _resting; // axial force of each element with its nodes held still
    private readonly Vector<double>[] _tension;

    private DisplacedShapes(
        FrameModel model,
        FrameMatrix matrix,
        bool[] held,
        FootStiffness stiffness,
        FrameOptions options,
        IReadOnlyList<FrameSolution> firsts
    )
    {
        (_model, _matrix, _held, _firsts) = (model, matrix, held, firsts);
        (_stiffness, _law, _loadSteps) = (stiffness, options.Law, options.LoadSteps);
        _footRows = new double[3 * stiffness.Feet.Length * firsts.Count];
        _feet = [.. firsts.Select(first => first.Feet)];
        var lanes = Vector<double>.Count;
        _width = (firsts.Count + lanes - 1) / lanes;
        _start = Beside(matrix.Rows, (first, row) => first.Standing.X[row]);
        _x = Beside(matrix.Rows, (first, row) => first.Displacements[row]);
        _bent = new Vector<double>[_x.Length];
        _tension = Beside(matrix.Elements.Length, (first, e) => first.Tensions[e]);
        _resting = Beside(matrix.Elements.Length, (first, e) => first.Loads.Held[e] is { } q ? (q[6] - q[0]) / 2 : 0);
    }

    /// <summary>Follows the loadings from their first-order answers.</summary>
    /// <param name="model">The frame.</param>
    /// <param name="matrix">Its matrix; the elastic factors for the held rows are its last ones.</param>
    /// <param name="held">Rows that are held, all feet among them.</param>
    /// <param name="stiffness">The frame on its feet, without axial forces.</param>
    /// <param name="options">How.</param>
    /// <param name="firsts">First-order answers, one or more.</param>
    /// <returns>One for each answer, in their order.</returns>
    public static DisplacedShape[] Of(
        FrameModel model,
        FrameMatrix matrix,
        bool[] held,
        FootStiffness stiffness,
        FrameOptions options,
        IReadOnlyList<FrameSolution> firsts
    ) => new DisplacedShapes(model, matrix, held, stiffness, options, firsts).Follow(options.AxialFactor);

    private DisplacedShape[] Follow(double axialFactor)
    {
        var found = new DisplacedShape?[_firsts.Count];
        double[] sizes = [.. _firsts.Select(first => first.Displacements.Sum(v => v * v))];
        double[] before = [.. sizes.Select(_ => double.PositiveInfinity)];
        for (var round = 0; round < MostRounds && found.Any(f => f is null); round++)
        {
            var steps = Step(axialFactor);
            for (var i = 0; i < found.Length; i++)
            {
                if (found[i] is not null)
                {
                    continue;
                }

                if (steps[i] <= 1e-24 * sizes[i])
                {
                    found[i] = new DisplacedShape(Lane(_tension, i), Lane(_x, i), _feet[i]!);
                }
                else if (_feet[i] is null || !(steps[i] <= Slowest(i) * before[i]))
                {
                    found[i] = Unsettled(i);
                }

                before[i] = steps[i];
            }
        }

        return [.. found.Select((shape, i) => shape ?? Unsettled(i))];
    }

    private DisplacedShape Unsettled(int i) => new([.. _firsts[i].Tensions], null, _firsts[i].Feet);

    // A foot that changes what it does breaks the even shrinking of the steps.
    private double Slowest(int i) => _feet[i]!.Still ? 0.05 : 0.25;

    // One correction of all; the squares of how far each moved.
    private double[] Step(double axialFactor)
    {
        Array.Clear(_bent);
        _matrix.AddGeometric(_tension, axialFactor, _x, _bent, _width);
        KeepFootRows();
        for (var row = 0; row < _held.Length; row++)
        {
            if (_held[row])
            {
                _bent.AsSpan(row * _width, _width).Clear();
            }
        }

        _matrix.Solve(_bent, _width, false);
        MoveFeet();
        var moved = new Vector<double>[_width];
        for (var row = 0; row < _held.Length; row++)
        {
            for (var v = 0; v < _width; v++)
            {
                var at = (row * _width) + v;
                var next = _start[at] - _bent[at];
                var by = next - _x[at];
                moved[v] += by * by;
                _x[at] = next;
            }
        }

        for (var e = 0; e < _matrix.Elements.Length; e++)
        {
            var element = _matrix.Elements[e];
            var pull = element.TensionPerShift;
            var from = 6 * _model.Elements[e].From * _width;
            var to = 6 * _model.Elements[e].To * _width;
            for (var v = 0; v < _width; v++, from++, to++)
            {
                _tension[(e * _width) + v] =
                    _resting[(e * _width) + v]
                    + (pull.X * (_x[to] - _x[from]))
                    + (pull.Y * (_x[to + _width] - _x[from + _width]))
                    + (pull.Z * (_x[to + (2 * _width)] - _x[from + (2 * _width)]));
            }
        }

        var steps = new double[_firsts.Count];
        for (var i = 0; i < steps.Length; i++)
        {
            steps[i] = moved[i / Vector<double>.Count][i % Vector<double>.Count];
        }

        return steps;
    }

    private void KeepFootRows()
    {
        ReadOnlySpan<double> bent = MemoryMarshal.Cast<Vector<double>, double>(_bent.AsSpan());
        var stride = _width * Vector<double>.Count;
        var rows = 3 * _stiffness.Feet.Length;
        for (var row = 0; row < rows; row++)
        {
            var at = ((6 * _stiffness.Feet[row / 3]) + (row % 3)) * stride;
            for (var i = 0; i < _firsts.Count; i++)
            {
                _footRows[(i * rows) + row] = bent[at + i];
            }
        }
    }

    // What the axial forces bend changes what the feet must bear, and what the feet do about it is taken off the bending.
    private void MoveFeet()
    {
        if (_stiffness.Feet.Length == 0)
        {
            return;
        }

        var lanes = MemoryMarshal.Cast<Vector<double>, double>(_bent.AsSpan());
        var stride = _width * Vector<double>.Count;
        var rows = 3 * _stiffness.Feet.Length;
        var loads = new double[_held.Length];
        for (var i = 0; i < _firsts.Count; i++)
        {
            var bent = Lane(_bent, i);
            var change = _stiffness.Reactions(bent, loads);
            double[] all =
            [
                .. _firsts[i]
                    .Standing.All.Select(
                        (r, row) => r + (_stiffness.Holds(row) ? _footRows[(i * rows) + row] - change[row] : 0)
                    ),
            ];
            var feet = new FootPath(_stiffness, _law, _firsts[i].Standing.Resting, all).Follow(_loadSteps);
            _feet[i] = feet.Found ? feet : null;
            if (!feet.Found || feet.Still)
            {
                continue;
            }

            _stiffness.AddTo([.. feet.Shifts.Select(s => -s)], bent);
            for (var row = 0; row < bent.Length; row++)
            {
                lanes[(row * stride) + i] = bent[row];
            }
        }
    }

    private Vector<double>[] Beside(int rows, Func<FrameSolution, int, double> value)
    {
        var beside = new Vector<double>[rows * _width];
        var lanes = MemoryMarshal.Cast<Vector<double>, double>(beside.AsSpan());
        var stride = _width * Vector<double>.Count;
        for (var i = 0; i < _firsts.Count; i++)
        {
            for (var row = 0; row < rows; row++)
            {
                lanes[(row * stride) + i] = value(_firsts[i], row);
            }
        }

        return beside;
    }

    private double[] Lane(Vector<double>[] beside, int i)
    {
        ReadOnlySpan<double> lanes = MemoryMarshal.Cast<Vector<double>, double>(beside.AsSpan());
        var stride = _width * Vector<double>.Count;
        var lane = new double[beside.Length / _width];
        for (var row = 0; row < lane.Length; row++)
        {
            lane[row] = lanes[(row * stride) + i];
        }

        return lane;
    }
}
