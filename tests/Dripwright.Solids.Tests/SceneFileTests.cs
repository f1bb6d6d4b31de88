using System.Buffers.Binary;
using System.Text.Json.Nodes;
using Dripwright.Engine;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Numerics;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Scenes;
using Dripwright.Solids.Files;

namespace Dripwright.Solids.Tests;

/// <summary>The rig in the round as glTF, read back by hand from its bytes: header, JSON and numbers as the specification lays them.</summary>
public sealed class SceneFileTests
{
    private static readonly Lazy<(RigScene Scene, byte[] Bytes)> s_ten = new(() =>
    {
        var rig = RigStarter.Rig(new StarterAnswers(), PartsCatalogue.Default);
        var plan = Planner.Of(rig, [], PartsCatalogue.Default, new PlanOptions { Draws = 0 });
        var scene = RigScene.Of(plan);
        return (scene, SceneFile.Write(scene, plan.Rig.Name));
    });

    [Fact]
    public void It_is_glTF_2_with_a_node_for_each_thing_by_its_name()
    {
        var (scene, bytes) = s_ten.Value;
        var json = Json(bytes);
        Assert.Equal("2.0", (string?)json["asset"]!["version"]);
        var nodes = json["nodes"]!.AsArray();
        var root = nodes[(int)json["scenes"]![0]!["nodes"]![0]!]!;
        var named = root["children"]!.AsArray().Select(child => (string?)nodes[(int)child!]!["name"]);
        Assert.Equal(scene.Things.Select(thing => thing.Name), named);
    }

    [Fact]
    public void A_pot_says_what_it_gets_and_the_pump_what_it_gives()
    {
        var (scene, bytes) = s_ten.Value;
        var nodes = Json(bytes)["nodes"]!.AsArray();
        var pot = scene.Things.First(thing => thing.Kind == SceneKind.Pot);
        var extras = nodes.Single(node => (string?)node!["name"] == pot.Name)!["extras"]!;
        Assert.Equal(pot.Flow!.Value * 3.6e6, (double)extras["flowLitresPerHour"]!, 1e-3);
        Assert.Equal(pot.Pressure!.Value / 1000, (double)extras["pressureKilopascals"]!, 1e-3);
        Assert.Equal(1, (int)extras["row"]!);
    }

    [Fact]
    public void Its_corners_reach_as_far_as_the_scene_does_in_metres_with_y_up()
    {
        var (scene, bytes) = s_ten.Value;
        var corners = Corners(bytes).ToList();
        // The scene's corners go by the widest half width both ways, so the file's lie within, by at most a tank's half width.
        Assert.InRange(corners.Min(c => c.X), scene.Least.X - 1e-3, scene.Least.X + 0.5);
        Assert.InRange(corners.Max(c => c.X), scene.Most.X - 0.5, scene.Most.X + 1e-3);
        Assert.InRange(corners.Min(c => c.Y), scene.Least.Z - 0.05, scene.Least.Z + 0.05);
        Assert.InRange(corners.Max(c => c.Y), scene.Most.Z - 0.05, scene.Most.Z + 0.05);
        // What lies at the back of the room, y, lies at -z.
        Assert.InRange(corners.Min(c => c.Z), -scene.Most.Y - 1e-3, -scene.Most.Y + 0.5);
        Assert.InRange(corners.Max(c => c.Z), -scene.Least.Y - 0.5, -scene.Least.Y + 1e-3);
    }

    [Fact]
    public void The_same_scene_gives_the_same_bytes()
    {
        var (scene, bytes) = s_ten.Value;
        Assert.Equal(bytes, SceneFile.Write(scene, (string)Json(bytes)["scenes"]![0]!["name"]!));
    }

    [Fact]
    public void Forms_alike_share_a_mesh()
    {
        var (scene, bytes) = s_ten.Value;
        var json = Json(bytes);
        Assert.InRange(json["meshes"]!.AsArray().Count, 5, 40);
        Assert.Equal(scene.Pieces.Count, json["nodes"]!.AsArray().Count(node => node!["mesh"] is not null));
    }

    [Fact]
    public void Every_form_is_closed_but_for_its_open_end_and_its_normals_point_out()
    {
        for (var form = 0; form < FormMesh.All.Count; form++)
        {
            var mesh = FormMesh.All[form];
            var edges = new Dictionary<(string, string), int>();
            for (var i = 0; i < mesh.Corners.Count; i += 3)
            {
                var (a, b, c) = (mesh.Corners[i], mesh.Corners[i + 1], mesh.Corners[i + 2]);
                var face = (b - a).Cross(c - a);
                Assert.True(face.Length > 1e-9);
                Assert.All(mesh.Normals.Skip(i).Take(3), normal => Assert.True(normal.Dot(face) > 0));
                foreach (var (from, to) in new[] { (a, b), (b, c), (c, a) })
                {
                    Count((Key(from), Key(to)), 1);
                    Count((Key(to), Key(from)), -1);
                }
            }

            // Where each edge is walked once each way nothing is open.
            var open = edges.Where(edge => edge.Value > 0).Select(edge => edge.Key.Item1[^1..]).ToList();
            var expected = (SceneForm)form switch
            {
                SceneForm.Tub => FormMesh.Sides,
                SceneForm.Crate => 4,
                _ => 0,
            };
            Assert.Equal(expected, open.Count);

            void Count((string, string) edge, int by) => edges[edge] = edges.GetValueOrDefault(edge) + by;
        }
    }

    private static string Key(Vector3 at) =>
        FormattableString.Invariant($"{at.X + 0.0:F6} {at.Y + 0.0:F6} {at.Z:F6}").Replace("-0.000000", "0.000000");

    private static JsonObject Json(byte[] bytes)
    {
        // Header: "glTF", version, length; then chunks of length, kind, content.
        Assert.Equal("glTF"u8.ToArray(), bytes[..4]);
        Assert.Equal(2u, BinaryPrimitives.ReadUInt32LittleEndian(bytes.AsSpan(4)));
        Assert.Equal((uint)bytes.Length, BinaryPrimitives.ReadUInt32LittleEndian(bytes.AsSpan(8)));
        var length = (int)BinaryPrimitives.ReadUInt32LittleEndian(bytes.AsSpan(12));
        return JsonNode.Parse(bytes.AsSpan(20, length))!.AsObject();
    }

    private static IEnumerable<(double X, double Y, double Z)> Corners(byte[] bytes)
    {
        var json = Json(bytes);
        var start = 20 + (int)BinaryPrimitives.ReadUInt32LittleEndian(bytes.AsSpan(12)) + 8;
        var nodes = json["nodes"]!.AsArray();
        return Under((int)json["scenes"]![0]!["nodes"]![0]!, System.Numerics.Matrix4x4.Identity);

        IEnumerable<(double, double, double)> Under(int index, System.Numerics.Matrix4x4 parent)
        {
            var node = nodes[index]!;
            var own = node["matrix"] is JsonArray m
                ? Matrix([.. m.Select(value => (float)value!)])
                : System.Numerics.Matrix4x4.Identity;
            var place = own * parent;
            if (node["mesh"] is { } mesh)
            {
                var position = json["meshes"]![(int)mesh]!["primitives"]![0]!["attributes"]!["POSITION"]!;
                foreach (var corner in Accessor((int)position))
                {
                    var at = System.Numerics.Vector3.Transform(corner, place);
                    yield return (at.X, at.Y, at.Z);
                }
            }

            foreach (var child in node["children"]?.AsArray() ?? [])
            {
                foreach (var corner in Under((int)child!, place))
                {
                    yield return corner;
                }
            }
        }

        IEnumerable<System.Numerics.Vector3> Accessor(int index)
        {
            var accessor = json["accessors"]![index]!;
            var view = json["bufferViews"]![(int)accessor["bufferView"]!]!;
            var at = start + ((int?)view["byteOffset"] ?? 0) + ((int?)accessor["byteOffset"] ?? 0);
            for (var i = 0; i < (int)accessor["count"]!; i++, at += 12)
            {
                yield return new(
                    BitConverter.ToSingle(bytes, at),
                    BitConverter.ToSingle(bytes, at + 4),
                    BitConverter.ToSingle(bytes, at + 8)
                );
            }
        }
    }

    private static System.Numerics.Matrix4x4 Matrix(float[] m) =>
        new(m[0], m[1], m[2], m[3], m[4], m[5], m[6], m[7], m[8], m[9], m[10], m[11], m[12], m[13], m[14], m[15]);
}
