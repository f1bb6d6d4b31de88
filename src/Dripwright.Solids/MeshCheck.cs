namespace Dripwright.Solids;

/// <summary>Whether a mesh is the surface of a solid.</summary>
/// <remarks>
/// Every edge is walked once in each of its two directions (closed, and neighbours face the same way), no triangle uses a
/// corner twice or has two corners in one place, no two corners lie in one place, and the volume is positive (facing
/// outwards). These are the rules of the 3MF core specification 1.4, section 4.1.
/// </remarks>
/// <param name="OpenEdges">Edges without a partner in the other direction, or with more than one.</param>
/// <param name="FlatTriangles">Triangles with two corners in one place.</param>
/// <param name="DoublePoints">Corners in the place of another one.</param>
/// <param name="CubicMillimetres">[mm³] Volume, negative when inside out.</param>
public readonly record struct MeshCheck(int OpenEdges, int FlatTriangles, int DoublePoints, double CubicMillimetres)
{
    /// <summary>True for the surface of a solid.</summary>
    public bool Sound => OpenEdges == 0 && FlatTriangles == 0 && DoublePoints == 0 && CubicMillimetres > 0;

    /// <summary>Checks a mesh.</summary>
    /// <param name="mesh">The mesh.</param>
    public static MeshCheck Of(SolidMesh mesh)
    {
        var walked = new Dictionary<(int, int), int>(3 * mesh.Triangles.Count);
        var flat = 0;
        foreach (var t in mesh.Triangles)
        {
            (var a, var b, var c) = (mesh.Points[t.A], mesh.Points[t.B], mesh.Points[t.C]);
            flat += a == b || b == c || c == a ? 1 : 0;
            foreach ((var from, var to) in new[] { (t.A, t.B), (t.B, t.C), (t.C, t.A) })
            {
                walked[(from, to)] = walked.GetValueOrDefault((from, to)) + 1;
            }
        }

        var open = walked.Count(edge =>
            edge.Value != 1 || walked.GetValueOrDefault((edge.Key.Item2, edge.Key.Item1)) != 1
        );
        return new(open, flat, mesh.Points.Count - mesh.Points.Distinct().Count(), mesh.CubicMillimetres);
    }
}
