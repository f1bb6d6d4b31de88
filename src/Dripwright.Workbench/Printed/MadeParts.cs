using System.Globalization;
using Dripwright.Engine.Fittings;
using Dripwright.Solids;
using Dripwright.Solids.Pictures;

namespace Dripwright.Workbench.Printed;

/// <summary>A printed part whose solid was computed.</summary>
/// <param name="Mesh">Its mesh as it is printed.</param>
/// <param name="Estimate">What one piece takes.</param>
/// <param name="Picture">As it is used.</param>
internal sealed record MadePart(SolidMesh Mesh, PrintEstimate Estimate, FittingPicture Picture);

/// <summary>Solids take a moment each, and a rig's stand seldom changes while its owner types: the last ones are kept.</summary>
internal static class MadeParts
{
    private const int MostKept = 48;

    private static readonly Lock s_turn = new();
    private static readonly Dictionary<string, MadePart> s_kept = new(StringComparer.Ordinal);
    private static readonly Queue<string> s_order = [];

    /// <summary>The part, computed now or before.</summary>
    public static MadePart Of(Fitting fitting)
    {
        var key = Key(fitting);
        lock (s_turn)
        {
            if (s_kept.TryGetValue(key, out var kept))
            {
                return kept;
            }
        }

        // Two pages that want the same part at once compute it twice, which harms nobody.
        var mesh = Meshes.Of(fitting);
        var made = new MadePart(mesh, Meshes.Estimate(fitting, mesh), FittingPicture.InUse(fitting, mesh));
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

    /// <summary>Everything that the shape follows from.</summary>
    private static string Key(Fitting fitting)
    {
        var p = fitting.Parameters;
        var ways = string.Join(
            ';',
            (p.Sockets ?? []).Select(s => string.Create(CultureInfo.InvariantCulture, $"{s.X:R} {s.Y:R} {s.Z:R}"))
        );
        FormattableString rest =
            $"{fitting.Kind} {p.Number} {p.TubeShape} {p.TubeOutside:R} {p.Clearance:R} {p.SocketDepth:R} {p.JointCentre:R} {p.PipeOutside:R} {p.HoseOutside:R} {p.HolePitch:R} {p.PilotDrill:R} {p.StakeDiameter:R} {p.RimThickness:R} {p.Printer} {p.Plastic.Name} {p.Load.Moment:R} {p.Load.Temperature:R}";
        return $"{rest.ToString(CultureInfo.InvariantCulture)} {ways}";
    }
}
