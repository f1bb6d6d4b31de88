namespace Dripwright.Engine.Scenes;

/// <summary>A form of unit size in triangles: across its axis from -1 to 1 in x and y, along it from 0 to 1 in z.</summary>
/// <param name="Corners">[-] Corners, three a triangle, against the clock seen from outside.</param>
/// <param name="Normals">[-] For each corner the way out of the form there, one long.</param>
public sealed record FormMesh(IReadOnlyList<Vector3> Corners, IReadOnlyList<Vector3> Normals)
{
    /// <summary>Sides of what is round.</summary>
    public const int Sides = 16;

    private const int BallRings = 4;
    private const int BallSides = 6;

    private static readonly Vector3 s_up = Vector3.Up;

    /// <summary>The mesh of every form, in the order of <see cref="SceneForm"/>.</summary>
    public static IReadOnlyList<FormMesh> All { get; } =
    [Round(isOpen: false), Round(isOpen: true), Square(isOpen: false), Square(isOpen: true), Ball()];

    private static FormMesh Round(bool isOpen)
    {
        var draft = new Draft();
        for (var i = 0; i < Sides; i++)
        {
            var (a, b) = (Around(i, Sides), Around(i + 1, Sides));
            draft.Triangle((a, a), (b, b), (b + s_up, b));
            draft.Triangle((a, a), (b + s_up, b), (a + s_up, a));
            draft.Triangle((default, -s_up), (b, -s_up), (a, -s_up));
            if (!isOpen)
            {
                draft.Triangle((s_up, s_up), (a + s_up, s_up), (b + s_up, s_up));
            }
        }

        return draft.Close();
    }

    private static FormMesh Square(bool isOpen)
    {
        var draft = new Draft();
        Vector3[] low = [new(-1, -1, 0), new(1, -1, 0), new(1, 1, 0), new(-1, 1, 0)];
        Vector3[] ways = [new(0, -1, 0), new(1, 0, 0), new(0, 1, 0), new(-1, 0, 0)];
        for (var i = 0; i < 4; i++)
        {
            var (a, b, way) = (low[i], low[(i + 1) % 4], ways[i]);
            draft.Quad(a, b, b + s_up, a + s_up, way);
        }

        draft.Quad(low[3], low[2], low[1], low[0], -s_up);
        if (!isOpen)
        {
            draft.Quad(low[0] + s_up, low[1] + s_up, low[2] + s_up, low[3] + s_up, s_up);
        }

        return draft.Close();
    }

    private static FormMesh Ball()
    {
        var draft = new Draft();
        for (var ring = 0; ring < BallRings; ring++)
        {
            for (var side = 0; side < BallSides; side++)
            {
                var (a, b) = (At(ring, side), At(ring, side + 1));
                var (c, d) = (At(ring + 1, side + 1), At(ring + 1, side));
                // At the poles two corners are one.
                if (ring > 0)
                {
                    draft.Triangle((Lifted(a), a), (Lifted(b), b), (Lifted(c), c));
                }

                if (ring < BallRings - 1)
                {
                    draft.Triangle((Lifted(a), a), (Lifted(c), c), (Lifted(d), d));
                }
            }
        }

        return draft.Close();

        static Vector3 At(int ring, int side)
        {
            var (across, down) = Math.SinCos(Math.PI * ring / BallRings);
            return (across * Around(side, BallSides)) - (down * s_up);
        }

        static Vector3 Lifted(Vector3 at) => at with { Z = (at.Z + 1) / 2 };
    }

    private static Vector3 Around(int side, int sides)
    {
        var (y, x) = Math.SinCos(2 * Math.PI * (side % sides) / sides);
        return new(x, y, 0);
    }

    private sealed class Draft
    {
        private readonly List<Vector3> _corners = [];
        private readonly List<Vector3> _normals = [];

        public void Triangle(params (Vector3 At, Vector3 Normal)[] corners)
        {
            _corners.AddRange(corners.Select(corner => corner.At));
            _normals.AddRange(corners.Select(corner => corner.Normal));
        }

        public void Quad(Vector3 a, Vector3 b, Vector3 c, Vector3 d, Vector3 normal)
        {
            Triangle((a, normal), (b, normal), (c, normal));
            Triangle((a, normal), (c, normal), (d, normal));
        }

        public FormMesh Close() => new(_corners, _normals);
    }
}
