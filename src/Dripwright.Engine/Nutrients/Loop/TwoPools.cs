namespace Dripwright.Engine.Nutrients.Loop;

/// <summary>Two mixed volumes with flows between them that stay the same for a while: solved exactly.</summary>
/// <remarks>
/// x' = A x + b has x(t) = e^(At) x₀ + t φ₁(At) b, and ∫x = t φ₁(At) x₀ + t² φ₂(At) b. Both off-diagonal flows are above
/// nought, so A has two real, unlike eigenvalues and any function of it is a line through two points.
/// </remarks>
internal readonly record struct TwoPools(double A11, double A12, double A21, double A22, double B1, double B2)
{
    /// <summary>When the second concentration turns from falling to rising or the other way; null when it never does.</summary>
    /// <remarks>Its slope is α e^(slow t) + β e^(fast t): from slope and bend at the start, nought where e^((slow - fast) t) = -β/α.</remarks>
    public double? Turn(double x1, double x2)
    {
        (var slow, var fast) = Eigenvalues();
        var rise1 = (A11 * x1) + (A12 * x2) + B1;
        var rise2 = (A21 * x1) + (A22 * x2) + B2;
        var bend = (A21 * rise1) + (A22 * rise2);
        var alpha = (bend - (fast * rise2)) / (slow - fast);
        var beta = rise2 - alpha;
        var ratio = -beta / alpha;
        return ratio > 1 && double.IsFinite(ratio) ? Math.Log(ratio) / (slow - fast) : null;
    }

    /// <summary>Both concentrations after a time, and their integrals over it.</summary>
    public (double X1, double X2, double Sum1, double Sum2) After(double x1, double x2, double time)
    {
        (var slow, var fast) = Eigenvalues();
        var s = Functions(slow * time);
        var f = Functions(fast * time);
        (var end1, var end2) = Apply(s.E, f.E, slow, fast, x1, x2);
        (var push1, var push2) = Apply(s.P, f.P, slow, fast, B1, B2);
        (var held1, var held2) = Apply(s.P, f.P, slow, fast, x1, x2);
        (var grown1, var grown2) = Apply(s.Q, f.Q, slow, fast, B1, B2);
        return (
            end1 + (time * push1),
            end2 + (time * push2),
            time * (held1 + (time * grown1)),
            time * (held2 + (time * grown2))
        );
    }

    private (double Slow, double Fast) Eigenvalues()
    {
        var middle = (A11 + A22) / 2;
        var half = (A11 - A22) / 2;
        var fast = middle - Math.Sqrt((half * half) + (A12 * A21));
        // The slow one is a small difference where little is lost; from the determinant it keeps its digits.
        return (((A11 * A22) - (A12 * A21)) / fast, fast);
    }

    private (double, double) Apply(double atSlow, double atFast, double slow, double fast, double x1, double x2)
    {
        var slope = (atSlow - atFast) / (slow - fast);
        var y1 = ((A11 - fast) * x1) + (A12 * x2);
        var y2 = (A21 * x1) + ((A22 - fast) * x2);
        return ((atFast * x1) + (slope * y1), (atFast * x2) + (slope * y2));
    }

    /// <summary>e^z, (e^z - 1)/z and ((e^z - 1)/z - 1)/z, by their series where the quotients lose digits.</summary>
    private static (double E, double P, double Q) Functions(double z)
    {
        if (Math.Abs(z) > 0.5)
        {
            var e = Math.Exp(z);
            var p = (e - 1) / z;
            return (e, p, (p - 1) / z);
        }

        var term = 0.5;
        var q = 0.5;
        for (var n = 3; n < 20; n++)
        {
            term *= z / n;
            q += term;
        }

        var first = 1 + (z * q);
        return (1 + (z * first), first, q);
    }
}
