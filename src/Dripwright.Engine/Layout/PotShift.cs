using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Layout;

/// <summary>Moves a row's pots aside where, centred, a hole of theirs would lie on a joint of the stand.</summary>
/// <remarks>By as little as clears every hole, and only as far as the last module has room. Method page: docs/methods/layout.md</remarks>
internal static class PotShift
{
    /// <summary>[m] Less overlap than this is rounding.</summary>
    private const double Rounding = 1e-6;

    /// <summary>How far to move the pots.</summary>
    /// <param name="resolved">The rig.</param>
    /// <param name="row">The row.</param>
    /// <param name="length">[m] Of its modules.</param>
    /// <param name="first">[m] Station of its first pot, centred.</param>
    /// <returns>[m] Towards the right; 0 where nothing clashes or nothing helps.</returns>
    public static double Of(ResolvedRig resolved, ResolvedRow row, double length, double first)
    {
        var room = first - (row.Pot.Length / 2);
        if (room <= 0 || !Clashes(resolved, row, length, first))
        {
            return 0;
        }

        // Away from the reservoir first, so that a rig and its mirror image stay alike.
        var away = resolved.Rig.Reservoir.At == RowEnd.Left ? 1 : -1;
        var step = resolved.Rig.Units == UnitSystem.Us ? 0.0254 / 8 : 0.002;
        for (var i = 1; i * step <= room; i++)
        {
            foreach (var shift in (double[])[away * i * step, -away * i * step])
            {
                if (!Clashes(resolved, row, length, first + shift))
                {
                    return shift;
                }
            }
        }

        return 0;
    }

    private static bool Clashes(ResolvedRig resolved, ResolvedRow row, double length, double first)
    {
        var parts = resolved.Parts;
        var joint = parts.Tube.Outside / 2;
        var module = row.Spec.ModuleLength;
        bool OnJoint(double station, double radius)
        {
            var nearest = Math.Clamp(Math.Round(station / module) * module, 0, length);
            return Math.Abs(station - nearest) < joint + radius - Rounding;
        }

        for (var i = 0; i < row.Spec.Pots; i++)
        {
            var pot = first + (i * row.Spec.Spacing);
            if (OnJoint(pot, parts.Outlet.PipeHole / 2))
            {
                return true;
            }

            foreach (var offset in FeedPlacement.Offsets(row.Spec, row.Pot, resolved.Rig.Feed, row.Pots[i].Emitters))
            {
                if (OnJoint(pot + offset, parts.Emitter.Punch / 2))
                {
                    return true;
                }
            }
        }

        return false;
    }
}
