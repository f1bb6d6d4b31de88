namespace Dripwright.Solids.Tests;

public sealed class MeshCheckTests
{
    private static readonly SolidMesh s_cube = new(
        [
            new(0, 0, 0),
            new(20, 0, 0),
            new(20, 20, 0),
            new(0, 20, 0),
            new(0, 0, 20),
            new(20, 0, 20),
            new(20, 20, 20),
            new(0, 20, 20),
        ],
        [
            new(0, 2, 1),
            new(0, 3, 2),
            new(4, 5, 6),
            new(4, 6, 7),
            new(0, 1, 5),
            new(0, 5, 4),
            new(1, 2, 6),
            new(1, 6, 5),
            new(2, 3, 7),
            new(2, 7, 6),
            new(3, 0, 4),
            new(3, 4, 7),
        ]
    );

    [Fact]
    public void A_cube_is_sound_and_as_large_as_a_cube()
    {
        Assert.True(MeshCheck.Of(s_cube).Sound);
        Assert.Equal(8000, s_cube.CubicMillimetres, 9);
    }

    [Fact]
    public void A_missing_triangle_opens_three_edges() =>
        Assert.Equal(3, MeshCheck.Of(s_cube with { Triangles = [.. s_cube.Triangles.Skip(1)] }).OpenEdges);

    [Fact]
    public void A_triangle_that_faces_inwards_is_seen() =>
        Assert.False(MeshCheck.Of(s_cube with { Triangles = [new(0, 1, 2), .. s_cube.Triangles.Skip(1)] }).Sound);

    [Fact]
    public void A_cube_inside_out_has_negative_volume_and_is_not_sound()
    {
        var check = MeshCheck.Of(
            s_cube with
            {
                Triangles = [.. s_cube.Triangles.Select(t => new MeshTriangle(t.A, t.C, t.B))],
            }
        );

        Assert.Equal(0, check.OpenEdges);
        Assert.False(check.Sound);
    }

    [Fact]
    public void Two_corners_in_one_place_are_seen() =>
        Assert.Equal(1, MeshCheck.Of(s_cube with { Points = [.. s_cube.Points, new(0, 0, 0)] }).DoublePoints);
}
