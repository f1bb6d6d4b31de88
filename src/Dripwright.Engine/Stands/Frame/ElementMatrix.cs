namespace Dripwright.Engine.Stands.Frame;

/// <summary>
/// One element's axes and stiffness. Displacements and end actions at each end: u, v, w along local x, y, z, then the turns
/// about them.
/// </summary>
internal sealed class ElementMatrix
{
    private static readonly int[] s_planeXy = [1, 5, 7, 11];
    private static readonly int[] s_planeXz = [2, 4, 8, 10];

    private readonly double _axial;
    private readonly double _twist;

    public ElementMatrix(FrameElement element, Vector3 from, Vector3 to)
    {
        var span = Vector3.Between(from, to);
        Length = span.Length;
        X = 1 / Length * span;
        (Y, Z) = Axes(X, element.Roll);
        var (section, steel) = (element.Section, element.Steel);
        _axial = steel.Young * section.Area / Length;
        // Twist is a chain of three springs; a free end makes it nothing.
        var free = Length / (steel.Shear * section.Torsion);
        var spins = element.Start.Twist == 0 || element.End.Twist == 0;
        _twist = spins ? 0 : 1 / (free + (1 / element.Start.Twist) + (1 / element.End.Twist));
        BeamPlane plane(double inertia, double shearArea) =>
            new(steel.Young, inertia, steel.Shear, shearArea, Length, element.Start.Bending, element.End.Bending);
        Xy = plane(section.InertiaZ, section.ShearAreaY);
        Xz = plane(section.InertiaY, section.ShearAreaZ);
        Elastic = new double[144];
        Pair(Elastic, 0, _axial);
        Pair(Elastic, 3, _twist);
        Xy.AddStiffness(Elastic, s_planeXy, 1);
        // Turning about y lowers the far end: the x-z plane sees the turns with the other sign.
        Xz.AddStiffness(Elastic, s_planeXz, -1);
        Geometric = new double[144];
        Xy.AddGeometric(Geometric, s_planeXy, 1);
        Xz.AddGeometric(Geometric, s_planeXz, -1);
    }

    public double Length { get; }
    public Vector3 X { get; }
    public Vector3 Y { get; }
    public Vector3 Z { get; }
    public BeamPlane Xy { get; }
    public BeamPlane Xz { get; }

    /// <summary>12 by 12, local axes.</summary>
    public double[] Elastic { get; }

    /// <summary>Geometric stiffness for a tension of 1 N, 12 by 12, local axes: it grows in proportion to the tension.</summary>
    public double[] Geometric { get; }

    /// <summary>[N/m] Tension for a shift of the far end against the near one, in the axes of the room.</summary>
    public Vector3 TensionPerShift => _axial * X;

    public void AddHeldPoint(double[] q, Vector3 force, double at)
    {
        var along = force.Dot(X);
        q[0] -= along * (Length - at) / Length;
        q[6] -= along * at / Length;
        Xy.AddHeldPoint(q, s_planeXy, 1, force.Dot(Y), at);
        Xz.AddHeldPoint(q, s_planeXz, -1, force.Dot(Z), at);
    }

    public void AddHeldLine(double[] q, Vector3 perMetre)
    {
        var along = perMetre.Dot(X) * Length / 2;
        q[0] -= along;
        q[6] -= along;
        Xy.AddHeldLine(q, s_planeXy, 1, perMetre.Dot(Y));
        Xz.AddHeldLine(q, s_planeXz, -1, perMetre.Dot(Z));
    }

    /// <summary>Twelve displacements of two nodes in local axes.</summary>
    public void ToLocal(ReadOnlySpan<double> from, ReadOnlySpan<double> to, Span<double> local)
    {
        for (var b = 0; b < 4; b++)
        {
            var part = (b < 2 ? from : to).Slice(3 * (b % 2), 3);
            var v = new Vector3(part[0], part[1], part[2]);
            local[3 * b] = X.Dot(v);
            local[(3 * b) + 1] = Y.Dot(v);
            local[(3 * b) + 2] = Z.Dot(v);
        }
    }

    /// <summary>A local triple in the axes of the room.</summary>
    public Vector3 ToRoom(double x, double y, double z) => (x * X) + (y * Y) + (z * Z);

    /// <summary>A 12 by 12 matrix turned from local axes to those of the room.</summary>
    public double[] ToRoom(double[] local)
    {
        var room = new double[144];
        Span<double> r = [X.X, X.Y, X.Z, Y.X, Y.Y, Y.Z, Z.X, Z.Y, Z.Z];
        Span<double> half = stackalloc double[9];
        for (var bi = 0; bi < 12; bi += 3)
        {
            for (var bj = bi; bj < 12; bj += 3)
            {
                for (var i = 0; i < 3; i++)
                {
                    var row = 12 * (bi + i);
                    for (var j = 0; j < 3; j++)
                    {
                        half[(3 * i) + j] =
                            (local[row + bj] * r[j])
                            + (local[row + bj + 1] * r[3 + j])
                            + (local[row + bj + 2] * r[6 + j]);
                    }
                }

                for (var i = 0; i < 3; i++)
                {
                    for (var j = 0; j < 3; j++)
                    {
                        var value = (r[i] * half[j]) + (r[3 + i] * half[3 + j]) + (r[6 + i] * half[6 + j]);
                        room[(12 * (bi + i)) + bj + j] = value;
                        room[(12 * (bj + j)) + bi + i] = value;
                    }
                }
            }
        }

        return room;
    }

    private static (Vector3 Y, Vector3 Z) Axes(Vector3 x, double roll)
    {
        // Local z points up as far as it can; in an upright element local y is the room's y.
        Vector3 y;
        if (Math.Abs(x.Z) > 1 - 1e-9)
        {
            y = new Vector3(0, 1, 0);
            y -= y.Dot(x) * x;
        }
        else
        {
            y = new Vector3(0, 0, 1).Cross(x);
        }

        y = 1 / y.Length * y;
        var z = x.Cross(y);
        return ((Math.Cos(roll) * y) + (Math.Sin(roll) * z), (Math.Cos(roll) * z) - (Math.Sin(roll) * y));
    }

    private static void Pair(double[] k, int i, double value)
    {
        k[(12 * i) + i] += value;
        k[(12 * (i + 6)) + i + 6] += value;
        k[(12 * i) + i + 6] -= value;
        k[(12 * (i + 6)) + i] -= value;
    }
}
