using System.Buffers.Binary;
using Dripwright.Engine;
using Dripwright.Engine.Numerics;
using Dripwright.Engine.Scenes;
using Dripwright.Sheets.Screen;

namespace Dripwright.Workbench.Round;

/// <summary>A scene as the page's script reads it.</summary>
/// <param name="Name">Whose it is.</param>
/// <param name="Least">[m] The least corner, from which places count.</param>
/// <param name="Most">[m] The greatest corner.</param>
/// <param name="Step">[m] Of one count of a place.</param>
/// <param name="Things">Name of each thing, as a tap tells it.</param>
/// <param name="Labels">What things are, in words; each once.</param>
/// <param name="LabelOf">For each thing the number of its label.</param>
/// <param name="Ramp">Colours of the scale's steps, as #rrggbb.</param>
/// <param name="Forms">The forms of unit size, by the numbers that pieces give.</param>
/// <param name="Pieces">28 bytes a piece, little end first; see <see cref="Packed"/>.</param>
public sealed record RoundData(
    string Name,
    double[] Least,
    double[] Most,
    double Step,
    IReadOnlyList<string> Things,
    IReadOnlyList<string> Labels,
    IReadOnlyList<int> LabelOf,
    IReadOnlyList<string> Ramp,
    IReadOnlyList<RoundForm> Forms,
    byte[] Pieces
)
{
    /// <summary>Bytes of one piece.</summary>
    public const int PieceBytes = 28;

    private static readonly IReadOnlyList<RoundForm> s_forms =
    [
        .. FormMesh.All.Select(
            (mesh, form) =>
                new RoundForm(
                    (SceneForm)form is SceneForm.Block or SceneForm.Crate,
                    RoundForm.Flat(mesh.Corners),
                    RoundForm.Flat(mesh.Normals)
                )
        ),
    ];

    private const byte Over = 7;
    private const byte Weakest = 8;

    /// <summary>The data of a plan.</summary>
    /// <param name="plan">The plan, in the units to show.</param>
    /// <param name="colour">What the colours say.</param>
    public static RoundData Of(Plan plan, ScreenColour colour)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var scene = RigScene.Of(plan);
        var labels = SceneLabels.Of(plan, scene);
        List<string> distinct = [.. labels.Distinct()];
        var numbers = distinct.Select((label, i) => (label, i)).ToDictionary(at => at.label, at => at.i);
        var size = scene.Most - scene.Least;
        var step = Math.Max(size.X, Math.Max(size.Y, size.Z)) / ushort.MaxValue;
        return new(
            plan.Rig.Name,
            [scene.Least.X, scene.Least.Y, scene.Least.Z],
            [scene.Most.X, scene.Most.Y, scene.Most.Z],
            step,
            [.. scene.Things.Select(SceneLabels.Tapped)],
            distinct,
            [.. labels.Select(label => numbers[label])],
            Dripwright.Sheets.Screen.Ramp.Colours,
            s_forms,
            Packed(scene, step, Shades(plan, scene, colour))
        );
    }

    /// <summary>
    /// Each piece: both ends as three counts from the least corner, four half widths in tenths of a millimetre, its thing, speed in
    /// mm/s, form, matter, shade and stage.
    /// </summary>
    private static byte[] Packed(RigScene scene, double step, byte[] shades)
    {
        var bytes = new byte[scene.Pieces.Count * PieceBytes];
        for (var i = 0; i < scene.Pieces.Count; i++)
        {
            var piece = scene.Pieces[i];
            var to = bytes.AsSpan(i * PieceBytes, PieceBytes);
            Place(piece.From, to);
            Place(piece.To, to[6..]);
            Count(piece.AtFrom.X / 1e-4, to[12..]);
            Count(piece.AtFrom.Y / 1e-4, to[14..]);
            Count(piece.AtTo.X / 1e-4, to[16..]);
            Count(piece.AtTo.Y / 1e-4, to[18..]);
            Count(piece.Thing, to[20..]);
            var speed = Math.Clamp(Math.Round(piece.Speed * 1000), short.MinValue, short.MaxValue);
            BinaryPrimitives.WriteInt16LittleEndian(to[22..], (short)speed);
            to[24] = (byte)piece.Form;
            to[25] = (byte)piece.Matter;
            // What fills a pot keeps its own colour, so that the wall's is seen as the scale's.
            to[26] = piece.Matter is SceneMatter.Medium or SceneMatter.Solution ? (byte)0 : shades[piece.Thing];
            to[27] = (byte)scene.Things[piece.Thing].Stage;
        }

        return bytes;

        void Place(Vector3 at, Span<byte> into)
        {
            Count((at.X - scene.Least.X) / step, into);
            Count((at.Y - scene.Least.Y) / step, into[2..]);
            Count((at.Z - scene.Least.Z) / step, into[4..]);
        }

        static void Count(double value, Span<byte> into) =>
            BinaryPrimitives.WriteUInt16LittleEndian(into, (ushort)Math.Clamp(Math.Round(value), 0, ushort.MaxValue));
    }

    private static byte[] Shades(Plan plan, RigScene scene, ScreenColour colour)
    {
        var scale = StepScale.Of(plan, colour);
        return
        [
            .. scene.Things.Select(thing =>
                colour is ScreenColour.Load ? LoadShade(thing.Utilisation)
                : scale is not null && thing is { Kind: SceneKind.Pot, Flow: { } flow }
                    ? (byte)scale.StepOf(scale.Value(flow, thing.Pressure ?? 0))
                : thing.IsWeakest ? Weakest
                : (byte)0
            ),
        ];
    }

    private static byte LoadShade(double? used) =>
        used is not { } share ? (byte)0
        : share > 1 ? Over
        : (byte)Math.Clamp(RoundLegend.LoadEdges.Count(edge => edge <= share), 1, StepScale.Steps);
}

/// <summary>A form of unit size as the page's script reads it.</summary>
/// <param name="Square">Whether it has edges, which are drawn as lines.</param>
/// <param name="Corners">x, y and z of each corner, three corners a triangle.</param>
/// <param name="Normals">The way out at each corner, likewise.</param>
public sealed record RoundForm(bool Square, IReadOnlyList<double> Corners, IReadOnlyList<double> Normals)
{
    internal static IReadOnlyList<double> Flat(IEnumerable<Vector3> places) =>
        [.. places.SelectMany(at => new[] { at.X, at.Y, at.Z }.Select(value => Math.Round(value, 5)))];
}
