using System.Numerics;
using System.Runtime.InteropServices;
using System.Text.Json.Nodes;
using Dripwright.Engine.Scenes;
using SharpGLTF.Memory;
using SharpGLTF.Schema2;

namespace Dripwright.Solids.Files;

/// <summary>A rig in the round as a file for other programs: glTF 2.0, binary.</summary>
/// <remarks>
/// Metres, y up, as the standard asks (Khronos Group, glTF 2.0 specification, 3.4). A node for each thing, with its name and under
/// "extras" its code, stage and what was computed of it; below it a node for each of its forms. Forms alike share one mesh. The same
/// scene gives the same bytes.
/// </remarks>
public static class SceneFile
{
    // sRGB, as on paper: what is built is grey, water under pressure blue, water running back lighter, plants green.
    private static readonly Dictionary<SceneMatter, uint> s_colours = new()
    {
        [SceneMatter.Steel] = 0x8b8984,
        [SceneMatter.Print] = 0xc08a3a,
        [SceneMatter.Pot] = 0xcfcbc2,
        [SceneMatter.Medium] = 0x7a5230,
        [SceneMatter.Feed] = 0x0b539c,
        [SceneMatter.Return] = 0x86a9cd,
        [SceneMatter.Solution] = 0x3f86c9,
        [SceneMatter.Reservoir] = 0xa9a69f,
        [SceneMatter.Pump] = 0x33312e,
        [SceneMatter.Wire] = 0x55534e,
        [SceneMatter.Stem] = 0x2b6e34,
        [SceneMatter.Leaf] = 0x6aa36f,
    };

    /// <summary>Writes a scene.</summary>
    /// <param name="scene">The scene.</param>
    /// <param name="name">What the rig is called.</param>
    /// <returns>The bytes of a .glb file.</returns>
    public static byte[] Write(RigScene scene, string name)
    {
        ArgumentNullException.ThrowIfNull(scene);
        var model = ModelRoot.CreateModel();
        var root = model.UseScene(name).CreateNode(name);
        // From z up to y up: (x, y, z) becomes (x, z, -y).
        root.LocalMatrix = new Matrix4x4(1, 0, 0, 0, 0, 0, -1, 0, 0, 1, 0, 0, 0, 0, 0, 1);
        var meshes = new Meshes(model);
        var pieces = scene.Pieces.ToLookup(piece => piece.Thing);
        for (var i = 0; i < scene.Things.Count; i++)
        {
            var thing = scene.Things[i];
            var node = root.CreateNode(thing.Name);
            node.Extras = Extras(thing);
            foreach (var piece in pieces[i])
            {
                var form = node.CreateNode();
                form.Mesh = meshes.Of(piece);
                form.LocalMatrix = PlaceOf(piece);
            }
        }

        model.MergeBuffers();
        var bytes = model.WriteGLB();
        return [.. bytes];
    }

    private static JsonObject Extras(SceneThing thing)
    {
        var extras = new JsonObject { ["stage"] = thing.Stage.ToString(), ["kind"] = thing.Kind.ToString() };
        Put("code", thing.Code.Length > 0 ? JsonValue.Create(thing.Code) : null);
        Put("row", thing.Row > 0 ? JsonValue.Create(thing.Row) : null);
        Put("pot", thing.Pot > 0 ? JsonValue.Create(thing.Pot) : null);
        // In litres an hour and kilopascals, as they stand in plan.json.
        Put("flowLitresPerHour", Rounded(thing.Flow * 3.6e6));
        Put("pressureKilopascals", Rounded(thing.Pressure / 1000));
        Put("used", Rounded(thing.Utilisation));
        Put("drainDepthShare", Rounded(thing.Depth));
        return extras;

        void Put(string field, JsonNode? value)
        {
            if (value is not null)
            {
                extras[field] = value;
            }
        }
    }

    private static JsonValue? Rounded(double? value) =>
        value is { } number && double.IsFinite(number) ? JsonValue.Create(Math.Round(number, 4)) : null;

    /// <summary>From the unit form to the piece's place: rows are where x, y and z of the form go.</summary>
    private static Matrix4x4 PlaceOf(ScenePiece piece)
    {
        var (u, v) = piece.Across();
        var (x, y) = (piece.AtFrom.X * u, piece.AtFrom.Y * v);
        var (z, at) = (piece.To - piece.From, piece.From);
        return new Matrix4x4(
            (float)x.X,
            (float)x.Y,
            (float)x.Z,
            0,
            (float)y.X,
            (float)y.Y,
            (float)y.Z,
            0,
            (float)z.X,
            (float)z.Y,
            (float)z.Z,
            0,
            (float)at.X,
            (float)at.Y,
            (float)at.Z,
            1
        );
    }

    /// <summary>The meshes of a file: one for each form, draught and matter.</summary>
    private sealed class Meshes(ModelRoot model)
    {
        private readonly Dictionary<(SceneForm, long, long, SceneMatter), Mesh> _known = [];
        private readonly Dictionary<SceneMatter, Material> _materials = [];

        public Mesh Of(ScenePiece piece)
        {
            var (x, y) = (piece.AtTo.X / piece.AtFrom.X, piece.AtTo.Y / piece.AtFrom.Y);
            var key = (piece.Form, Thousandths(x), Thousandths(y), piece.Matter);
            if (!_known.TryGetValue(key, out var mesh))
            {
                mesh = _known[key] = Made(piece, x, y);
            }

            return mesh;
        }

        private static long Thousandths(double value) => (long)Math.Round(value * 1000);

        private Mesh Made(ScenePiece piece, double x, double y)
        {
            var form = FormMesh.All[(int)piece.Form];
            var mesh = model.CreateMesh($"{piece.Form} of {piece.Matter}".ToLowerInvariant());
            var primitive = mesh.CreatePrimitive();
            primitive.DrawPrimitiveType = PrimitiveType.TRIANGLES;
            primitive.Material = MaterialOf(piece.Matter);
            primitive.SetVertexAccessor(
                "POSITION",
                Accessor(
                    form.Corners.Select(c => new Vector3(
                        (float)(c.X * (1 + ((x - 1) * c.Z))),
                        (float)(c.Y * (1 + ((y - 1) * c.Z))),
                        (float)c.Z
                    ))
                )
            );
            primitive.SetVertexAccessor(
                "NORMAL",
                Accessor(form.Normals.Select(n => new Vector3((float)n.X, (float)n.Y, (float)n.Z)))
            );
            return mesh;
        }

        private Accessor Accessor(IEnumerable<Vector3> values)
        {
            Vector3[] all = [.. values];
            var view = model.UseBufferView(
                MemoryMarshal.AsBytes<Vector3>(all).ToArray(),
                0,
                null,
                0,
                BufferMode.ARRAY_BUFFER
            );
            var accessor = model.CreateAccessor();
            accessor.SetVertexData(view, 0, all.Length, new AttributeFormat(DimensionType.VEC3));
            return accessor;
        }

        private Material MaterialOf(SceneMatter matter)
        {
            if (!_materials.TryGetValue(matter, out var material))
            {
                material = _materials[matter] = model.CreateMaterial(matter.ToString().ToLowerInvariant());
                material.InitializePBRMetallicRoughness();
                material.DoubleSided = true;
                var colour = material.FindChannel("BaseColor")!.Value;
                colour.Color = new Vector4(
                    Linear(s_colours[matter] >> 16),
                    Linear(s_colours[matter] >> 8),
                    Linear(s_colours[matter]),
                    1
                );
                var rough = material.FindChannel("MetallicRoughness")!.Value;
                rough.SetFactor("MetallicFactor", 0);
                rough.SetFactor("RoughnessFactor", 0.9f);
            }

            return material;
        }

        // glTF asks for linear colours: IEC 61966-2-1, the sRGB transfer function.
        private static float Linear(uint part)
        {
            var share = (part & 0xff) / 255.0;
            return (float)(share <= 0.04045 ? share / 12.92 : Math.Pow((share + 0.055) / 1.055, 2.4));
        }
    }
}
