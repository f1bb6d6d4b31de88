using Dripwright.Engine.Printed;
using Dripwright.Engine.Printed.Shapes;
using Dripwright.Solids;
using Dripwright.Solids.Pictures;

namespace Dripwright.Pack;

/// <summary>A printed part whose solid was computed.</summary>
/// <param name="Mesh">Its mesh as it is printed.</param>
/// <param name="Picture">As it is used.</param>
public sealed record MadePart(SolidMesh Mesh, PrintPicture Picture);

/// <summary>Solids take a moment each, and a rig's stand seldom changes while its owner types: the last ones are kept.</summary>
public static class MadeParts
{
    private const int MostKept = 48;

    private static readonly Lock s_turn = new();
    private static readonly Dictionary<Key, MadePart> s_kept = [];
    private static readonly Queue<Key> s_order = [];

    /// <summary>The part, computed now or before.</summary>
    /// <param name="design">What is printed.</param>
    public static MadePart Of(PrintDesign design)
    {
        ArgumentNullException.ThrowIfNull(design);
        // Kept by the shape itself and not by what it was made from: no measure can be forgotten here.
        var key = new Key(Meshes.SignOf(design.Shape), design.InUse);
        lock (s_turn)
        {
            if (s_kept.TryGetValue(key, out var kept))
            {
                return kept;
            }
        }

        // Two pages that want the same part at once compute it twice, which harms nobody.
        var mesh = Meshes.Of(design);
        var made = new MadePart(mesh, PrintPicture.InUse(design, mesh));
        lock (s_turn)
        {
            if (s_kept.TryAdd(key, made))
            {
                s_order.Enqueue(key);
                while (s_order.Count > MostKept)
                {
                    s_kept.Remove(s_order.Dequeue());
                }
            }
        }

        return made;
    }

    private readonly record struct Key(string Shape, Placement InUse);
}
