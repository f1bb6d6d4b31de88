namespace Dripwright.Engine.Stands.Frame;

/// <summary>What a section passes on: forces and moments of the part beyond it on the part before it.</summary>
/// <param name="Axial">[N] Tension positive.</param>
/// <param name="ShearY">[N] Along local y.</param>
/// <param name="ShearZ">[N] Along local z.</param>
/// <param name="Twist">[N·m] About local x.</param>
/// <param name="MomentY">[N·m] About local y.</param>
/// <param name="MomentZ">[N·m] About local z.</param>
public readonly record struct SectionForces(
    double Axial,
    double ShearY,
    double ShearZ,
    double Twist,
    double MomentY,
    double MomentZ
)
{
    /// <summary>[N·m] Bending moment about both axes together.</summary>
    public double Bending => Math.Sqrt((MomentY * MomentY) + (MomentZ * MomentZ));
}

/// <summary>Displacements, forces and reactions of a frame under one loading.</summary>
public sealed record FrameSolution : FrameOutcome
{
    private readonly FrameModel _model;
    private readonly ElementMatrix[] _elements;
    private readonly ElementLoads _loads;
    private readonly double[] _x;
    private readonly bool[] _held;
    private readonly double[] _ends; // twelve end actions an element, local axes
    private readonly double[]? _tension;
    private readonly Vector3[] _reactionForce;
    private readonly Vector3[] _reactionMoment;

    internal FrameSolution(
        FrameModel model,
        ElementMatrix[] elements,
        ElementLoads loads,
        double[] x,
        bool[] held,
        FootStanding standing,
        FeetAtRest feet,
        double[]? tension
    )
    {
        (_model, _elements, _loads, _x, _held, _tension) = (model, elements, loads, x, held, tension);
        (Standing, Feet) = (standing, feet);
        int[] nodes = [.. Enumerable.Range(0, model.Nodes.Count).Where(n => model.Nodes[n].Lifts)];
        FootShifts =
        [
            .. nodes
                .Select((node, i) => new FootShift(node, feet.Motions[i], Shift(node)))
                .Where(foot => foot.Motion != FootMotion.Sticks || foot.Shift != default),
        ];
        Lifted = [.. FootShifts.Where(foot => foot.Motion == FootMotion.Lifts).Select(foot => foot.Node)];
        _ends = new double[12 * elements.Length];
        var tensions = new double[elements.Length];
        _reactionForce = new Vector3[model.Nodes.Count];
        _reactionMoment = new Vector3[model.Nodes.Count];
        Span<double> d = stackalloc double[12];
        for (var e = 0; e < elements.Length; e++)
        {
            var m = elements[e];
            var element = model.Elements[e];
            m.ToLocal(x.AsSpan(6 * element.From, 6), x.AsSpan(6 * element.To, 6), d);
            var pulled = tension?[e] ?? 0;
            var q = _ends.AsSpan(12 * e, 12);
            for (var i = 0; i < 12; i++)
            {
                var sum = loads.Held[e]?[i] ?? 0;
                for (var j = 0; j < 12; j++)
                {
                    var at = (12 * i) + j;
                    sum += (m.Elastic[at] + (pulled * m.Geometric[at])) * d[j];
                }

                q[i] = sum;
            }

            tensions[e] = (q[6] - q[0]) / 2;
            _reactionForce[element.From] += m.ToRoom(q[0], q[1], q[2]);
            _reactionMoment[element.From] += m.ToRoom(q[3], q[4], q[5]);
            _reactionForce[element.To] += m.ToRoom(q[6], q[7], q[8]);
            _reactionMoment[element.To] += m.ToRoom(q[9], q[10], q[11]);
        }

        Tensions = tensions;
    }

    internal ElementLoads Loads => _loads;

    /// <summary>[m] and [rad] Six rows a node.</summary>
    internal double[] Displacements => _x;

    /// <summary>[N] Mean axial force of each element, tension positive.</summary>
    public IReadOnlyList<double> Tensions { get; }

    /// <summary>The frame with its feet where they stood, from which the feet were followed.</summary>
    internal FootStanding Standing { get; }

    internal FeetAtRest Feet { get; }

    internal FootLaw Law { get; init; }

    /// <summary>Feet that have lifted off.</summary>
    public IReadOnlyList<int> Lifted { get; }

    /// <summary>Feet that are not where they stood, or slip, or have lifted.</summary>
    public IReadOnlyList<FootShift> FootShifts { get; }

    /// <summary>True where axial forces act on the displaced shape.</summary>
    public bool SecondOrder => _tension is not null;

    /// <summary>[m] Shift of a node.</summary>
    /// <param name="node">Node.</param>
    public Vector3 Shift(int node) => new(_x[6 * node], _x[(6 * node) + 1], _x[(6 * node) + 2]);

    /// <summary>[rad] Turn of a node.</summary>
    /// <param name="node">Node.</param>
    public Vector3 Turn(int node) => new(_x[(6 * node) + 3], _x[(6 * node) + 4], _x[(6 * node) + 5]);

    /// <summary>What a support puts on a node: [N] and [N·m]; zero where nothing holds it.</summary>
    /// <param name="node">Node.</param>
    public (Vector3 Force, Vector3 Moment) Reaction(int node)
    {
        var f = _reactionForce[node] - _loads.OnNodes[node];
        var m = _reactionMoment[node] - _loads.MomentsOnNodes[node];
        double kept(int i, double value) => _held[(6 * node) + i] ? value : 0;
        return (
            new Vector3(kept(0, f.X), kept(1, f.Y), kept(2, f.Z)),
            new Vector3(kept(3, m.X), kept(4, m.Y), kept(5, m.Z))
        );
    }

    /// <summary>What an element's end asks of its joint, in the element's axes: axial pull positive.</summary>
    /// <param name="element">Element.</param>
    /// <param name="atEnd">False for its start, true for its end.</param>
    public SectionForces JointForces(int element, bool atEnd) => At(element, atEnd ? _elements[element].Length : 0);

    /// <summary>What an element passes on at a place; just beyond a point load that acts there.</summary>
    /// <remarks>
    /// In second order the axial force times the sideways shift against the element's start is part of the moment.
    /// </remarks>
    /// <param name="element">Element.</param>
    /// <param name="x">[m] From its start, 0 to its length.</param>
    /// <exception cref="ArgumentOutOfRangeException">The place is off the element.</exception>
    public SectionForces At(int element, double x)
    {
        Check(element, x);
        return ForcesAt(element, x, Across(element, x));
    }

    /// <summary>[m] Shift of a place on an element.</summary>
    /// <param name="element">Element.</param>
    /// <param name="x">[m] From its start, 0 to its length.</param>
    /// <exception cref="ArgumentOutOfRangeException">The place is off the element.</exception>
    public Vector3 ShiftAt(int element, double x)
    {
        Check(element, x);
        return ShiftAt(element, x, Across(element, x));
    }

    /// <summary>What an element passes on at a place, and how far the place has shifted.</summary>
    internal (SectionForces Forces, Vector3 Shift) PlaceAt(int element, double x)
    {
        Check(element, x);
        var across = Across(element, x);
        return (ForcesAt(element, x, across), ShiftAt(element, x, across));
    }

    private void Check(int element, double x) => Guard.Between(x, 0, _elements[element].Length * (1 + 1e-12));

    private SectionForces ForcesAt(int element, double x, (double Y, double Z) across)
    {
        var m = _elements[element];
        ReadOnlySpan<double> q = _ends.AsSpan(12 * element, 12);
        var w = _loads.PerMetre[element];
        var (wx, wy, wz) = (w.Dot(m.X), w.Dot(m.Y), w.Dot(m.Z));
        var n = -q[0] - (wx * x);
        var vy = q[1] + (wy * x);
        var vz = q[2] + (wz * x);
        // EI·v'' in each plane; turns about y carry the other sign there.
        var mxy = -q[5] + (q[1] * x) + (wy * x * x / 2);
        var mxz = q[4] + (q[2] * x) + (wz * x * x / 2);
        foreach (var p in _loads.Points[element] ?? [])
        {
            var arm = x - p.At;
            if (arm < 0)
            {
                break;
            }

            n -= p.Force.Dot(m.X);
            vy += p.Force.Dot(m.Y);
            vz += p.Force.Dot(m.Z);
            mxy += p.Force.Dot(m.Y) * arm;
            mxz += p.Force.Dot(m.Z) * arm;
        }

        if (_tension is not null && _tension[element] != 0)
        {
            var start = Shift(_model.Elements[element].From);
            mxy += _tension[element] * (across.Y - start.Dot(m.Y));
            mxz += _tension[element] * (across.Z - start.Dot(m.Z));
        }

        return new SectionForces(n, -vy, -vz, -q[3], -mxz, mxy);
    }

    private Vector3 ShiftAt(int element, double x, (double Y, double Z) across)
    {
        var m = _elements[element];
        var share = x / m.Length;
        var e = _model.Elements[element];
        var along = ((1 - share) * Shift(e.From).Dot(m.X)) + (share * Shift(e.To).Dot(m.X));
        var stretch = 1 / (e.Steel.Young * e.Section.Area);
        along += stretch * _loads.PerMetre[element].Dot(m.X) * x * (m.Length - x) / 2;
        foreach (var p in _loads.Points[element] ?? [])
        {
            var near = Math.Min(x, p.At) * (m.Length - Math.Max(x, p.At)) / m.Length;
            along += stretch * p.Force.Dot(m.X) * near;
        }

        return m.ToRoom(along, across.Y, across.Z);
    }

    /// <summary>Places on an element where a moment can be largest: ends, middle, loads, and where a shear is nothing.</summary>
    internal IEnumerable<double> Stations(int element)
    {
        var m = _elements[element];
        yield return 0;
        if (_loads.Points[element] is { } points)
        {
            foreach (var p in points)
            {
                yield return Math.Min(p.At, m.Length);
            }
        }

        if (_loads.PerMetre[element] != default || _tension is not null)
        {
            for (var i = 1; i < 8; i++)
            {
                yield return i * m.Length / 8;
            }
        }

        yield return m.Length;
    }

    // Shift along local y and z: chord, end moments on two hinges, loads on two hinges.
    private (double Y, double Z) Across(int element, double x)
    {
        var m = _elements[element];
        var e = _model.Elements[element];
        var l = m.Length;
        var s = x / l;
        ReadOnlySpan<double> q = _ends.AsSpan(12 * element, 12);
        var first = l * l / 6 * ((2 * s) - (3 * s * s) + (s * s * s));
        var second = l * l / 6 * ((s * s * s) - s);
        var from = Shift(e.From);
        var to = Shift(e.To);
        var y = ((1 - s) * from.Dot(m.Y)) + (s * to.Dot(m.Y));
        var z = ((1 - s) * from.Dot(m.Z)) + (s * to.Dot(m.Z));
        y += ((q[5] * first) + (q[11] * second)) * m.Xy.Flexibility;
        z -= ((q[4] * first) + (q[10] * second)) * m.Xz.Flexibility;
        var shearY = 1 / (e.Steel.Shear * e.Section.ShearAreaY);
        var shearZ = 1 / (e.Steel.Shear * e.Section.ShearAreaZ);
        var w = _loads.PerMetre[element];
        var line = x * ((l * l * l) - (2 * l * x * x) + (x * x * x)) / 24;
        var lineMoment = x * (l - x) / 2;
        y += w.Dot(m.Y) * ((line * m.Xy.Flexibility) + (lineMoment * shearY));
        z += w.Dot(m.Z) * ((line * m.Xz.Flexibility) + (lineMoment * shearZ));
        if (_loads.Points[element] is { } points)
        {
            foreach (var p in points)
            {
                var a = x <= p.At ? x : l - x;
                var b = x <= p.At ? l - p.At : p.At;
                var bend = b * a * ((l * l) - (b * b) - (a * a)) / (6 * l);
                var moment = b * a / l;
                y += p.Force.Dot(m.Y) * ((bend * m.Xy.Flexibility) + (moment * shearY));
                z += p.Force.Dot(m.Z) * ((bend * m.Xz.Flexibility) + (moment * shearZ));
            }
        }

        return (y, z);
    }
}
