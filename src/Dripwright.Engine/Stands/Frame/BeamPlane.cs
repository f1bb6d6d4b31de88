namespace Dripwright.Engine.Stands.Frame;

/// <summary>
/// Bending of one element in one plane, with shear and with rotational springs between its ends and its nodes. The springs
/// are condensed out exactly: the four end displacements (v₁, θ₁, v₂, θ₂) are those of the nodes.
/// </summary>
/// <remarks>
/// Turns against the chord: end moments M = S·(θ − ψ − θ₀), S = [a b; b a], a = (4+φ)EI/(L(1+φ)), b = (2−φ)EI/(L(1+φ)),
/// φ = 12EI/(G·As·L²); θ₀ are the end slopes of the same span on two hinges under its loads. Springs k₁, k₂ in series give
/// S' = (S⁻¹ + diag(1/k))⁻¹, written with r = k/(k + a) so that k = 0 and k = ∞ are ordinary cases.
/// Geometric stiffness: Przemieniecki, Theory of Matrix Structural Analysis, with the shear terms (from memory; checked by
/// published second-order and buckling values), carried from the element's ends to its nodes by the same springs.
/// </remarks>
internal readonly struct BeamPlane
{
    private readonly double _ei;
    private readonly double _length;
    private readonly double _s11;
    private readonly double _s12;
    private readonly double _s22;
    private readonly double _phi;

    // Turn of the element's end against the chord for a unit turn of the node against the chord.
    private readonly double _g11;
    private readonly double _g12;
    private readonly double _g21;
    private readonly double _g22;

    public BeamPlane(double young, double inertia, double shear, double shearArea, double length, double k1, double k2)
    {
        _ei = young * inertia;
        _length = length;
        _phi = double.IsPositiveInfinity(shearArea) ? 0 : 12 * _ei / (shear * shearArea * length * length);
        var a = (4 + _phi) * _ei / (length * (1 + _phi));
        var b = (2 - _phi) * _ei / (length * (1 + _phi));
        var r1 = double.IsPositiveInfinity(k1) ? 1 : k1 / (k1 + a);
        var r2 = double.IsPositiveInfinity(k2) ? 1 : k2 / (k2 + a);
        var c = b / a * (b / a);
        var d = 1 - (c * (1 - r1) * (1 - r2));
        _s11 = r1 * a * (1 - (c * (1 - r2))) / d;
        _s22 = r2 * a * (1 - (c * (1 - r1))) / d;
        _s12 = b * r1 * r2 / d;
        var det = (a * a) - (b * b);
        _g11 = ((a * _s11) - (b * _s12)) / det;
        _g12 = ((a * _s12) - (b * _s22)) / det;
        _g21 = ((a * _s12) - (b * _s11)) / det;
        _g22 = ((a * _s22) - (b * _s12)) / det;
    }

    public double Flexibility => 1 / _ei;

    /// <summary>Adds the 4 by 4 stiffness at the given places of a 12 by 12 matrix; turns carry a sign.</summary>
    public void AddStiffness(double[] k, ReadOnlySpan<int> place, double turnSign)
    {
        // Rows of the map from end displacements to turns against the chord.
        Span<double> t1 = [1 / _length, 1, -1 / _length, 0];
        Span<double> t2 = [1 / _length, 0, -1 / _length, 1];
        for (var i = 0; i < 4; i++)
        {
            for (var j = 0; j < 4; j++)
            {
                var value = (t1[i] * ((_s11 * t1[j]) + (_s12 * t2[j]))) + (t2[i] * ((_s12 * t1[j]) + (_s22 * t2[j])));
                k[(12 * place[i]) + place[j]] += Sign(i, j, turnSign) * value;
            }
        }
    }

    /// <summary>Adds the geometric stiffness for a tension of 1 N.</summary>
    public void AddGeometric(double[] k, ReadOnlySpan<int> place, double turnSign)
    {
        var l = _length;
        var e = (1 + _phi) * (1 + _phi);
        var shift = 1 / l * (1.2 + (2 * _phi) + (_phi * _phi)) / e;
        var mixed = 0.1 / e;
        var near = l * ((2.0 / 15) + (_phi / 6) + (_phi * _phi / 12)) / e;
        var far = -l * ((1.0 / 30) + (_phi / 6) + (_phi * _phi / 12)) / e;
        Span<double> inner =
        [
            shift,
            mixed,
            -shift,
            mixed,
            mixed,
            near,
            -mixed,
            far,
            -shift,
            -mixed,
            shift,
            -mixed,
            mixed,
            far,
            -mixed,
            near,
        ];
        // Element ends from nodes: shifts as they are, turns through the springs about the chord ψ = (v₂ − v₁)/L.
        var c1 = (1 - _g11 - _g12) / l;
        var c2 = (1 - _g21 - _g22) / l;
        Span<double> map = [1, 0, 0, 0, -c1, _g11, c1, _g12, 0, 0, 1, 0, -c2, _g21, c2, _g22];
        Span<double> half = stackalloc double[16];
        for (var i = 0; i < 4; i++)
        {
            for (var j = 0; j < 4; j++)
            {
                double sum = 0;
                for (var m = 0; m < 4; m++)
                {
                    sum += inner[(4 * i) + m] * map[(4 * m) + j];
                }

                half[(4 * i) + j] = sum;
            }
        }

        for (var i = 0; i < 4; i++)
        {
            for (var j = 0; j < 4; j++)
            {
                double sum = 0;
                for (var m = 0; m < 4; m++)
                {
                    sum += map[(4 * m) + i] * half[(4 * m) + j];
                }

                k[(12 * place[i]) + place[j]] += Sign(i, j, turnSign) * sum;
            }
        }
    }

    /// <summary>Adds the end actions that hold the nodes still under a point load across the element.</summary>
    public void AddHeldPoint(double[] q, ReadOnlySpan<int> place, double turnSign, double load, double at)
    {
        var a = at;
        var b = _length - at;
        var slope = load * a * b / (6 * _ei * _length);
        AddHeld(q, place, turnSign, slope * (_length + b), -slope * (_length + a), load * b, load * a);
    }

    /// <summary>Adds the end actions that hold the nodes still under an even load across the element.</summary>
    public void AddHeldLine(double[] q, ReadOnlySpan<int> place, double turnSign, double perMetre)
    {
        var slope = perMetre * _length * _length * _length / (24 * _ei);
        var half = perMetre * _length * _length / 2;
        AddHeld(q, place, turnSign, slope, -slope, half, half);
    }

    private void AddHeld(
        double[] q,
        ReadOnlySpan<int> place,
        double turnSign,
        double slope1,
        double slope2,
        double aboutEnd,
        double aboutStart
    )
    {
        var m1 = -((_s11 * slope1) + (_s12 * slope2));
        var m2 = -((_s12 * slope1) + (_s22 * slope2));
        q[place[0]] += (m1 + m2 - aboutEnd) / _length;
        q[place[1]] += turnSign * m1;
        q[place[2]] += (-(m1 + m2) - aboutStart) / _length;
        q[place[3]] += turnSign * m2;
    }

    private static double Sign(int i, int j, double turnSign) => (i + j) % 2 == 0 ? 1 : turnSign;
}
