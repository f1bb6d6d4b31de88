using Dripwright.Engine.Findings;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Stands.Sections;

namespace Dripwright.Engine.Curing.Ideas;

/// <summary>What a builder changes at a stand that does not hold.</summary>
internal static class StandIdeas
{
    /// <summary>Braces, frames, stiffer tube, alone and together, the least work first.</summary>
    public static IEnumerable<Cure> Stiffer(Asked asked)
    {
        var stand = asked.Rig.Stand;
        FieldChange[] braced = stand.Bracing == Bracing.Both ? [] : [Set.To("stand.bracing", "both")];
        List<FieldChange[]> frames =
        [
            [],
        ];
        for (var n = stand.ExtraFrames + 1; Set.Whole("stand.extraFrames", n) is { } more && n <= 2; n++)
        {
            frames.Add([more]);
        }

        List<FieldChange[]> tubes =
        [
            [],
            .. Tubes(asked).Select(t => (FieldChange[])t),
        ];
        var all = new List<(int Effort, Cure Cure)>();
        foreach (var (t, tube) in tubes.Index())
        {
            foreach (var (f, frame) in frames.Index())
            {
                foreach (var brace in braced.Length > 0 ? new[] { [], braced } : [braced])
                {
                    FieldChange[] changes = [.. brace, .. frame, .. tube];
                    if (changes.Length > 0)
                    {
                        // A tube is bought anew; a brace and a frame are more of the same.
                        all.Add(((3 * t) + (2 * f) + brace.Length, Cure.Of(changes)));
                    }
                }
            }
        }

        return all.OrderBy(one => one.Effort).Select(one => one.Cure);
    }

    /// <summary>The stiffest that the catalogue has, braced and framed: where that is not enough, no tube is.</summary>
    public static IEnumerable<Cure> Stiffest(Asked asked) => Stiffer(asked).TakeLast(1);

    /// <summary>The stiffest stand on shorter modules.</summary>
    public static IEnumerable<Cure> StiffestShort(Asked asked) =>
        Stiffer(asked)
            .TakeLast(1)
            .SelectMany(stiff =>
                RowIdeas.ShorterModules(asked).Select(cure => Cure.Of([.. stiff.Changes, .. cure.Changes]))
            );

    // New tube has its whole wall, whatever the condition of the old one.
    private static IEnumerable<FieldChange[]> Tubes(Asked asked)
    {
        var now = asked.Parts.Tube;
        var modulus = TubeSection.Of(now).Properties.ModulusY;
        FieldChange[] whole = asked.Rig.Stand.WallLeft < 1 ? [Set.Share("stand.wallLeft", 1)] : [];
        // Joints are printed for one tube; one that was measured for them is measured anew.
        FieldChange[] measured = asked.Rig.Printing.TubeOutside is null ? [] : [Set.Out("printing.tubeOutside")];
        return asked
            .Catalogue.Tubes.Values.Where(t => TubeSection.Of(t).Properties.ModulusY > 1.02 * modulus)
            .OrderBy(t => t.Shape != now.Shape)
            .ThenBy(t => TubeSection.Of(t).Properties.ModulusY)
            .ThenBy(t => t.Key, StringComparer.Ordinal)
            .Select(t => (FieldChange[])[Set.To("stand.tube", t.Key), .. whole, .. measured]);
    }

    /// <summary>Joints that hold as printed ones do, where the file says that the grower's hold less.</summary>
    public static IEnumerable<Cure> BetterJoints(Asked asked)
    {
        var stand = asked.Rig.Stand;
        List<FieldChange> changes = [];
        if (stand.JointSlip is not null)
        {
            changes.Add(Set.Out("stand.jointSlip"));
        }

        if (stand.JointPull is not null)
        {
            changes.Add(Set.Out("stand.jointPull"));
        }

        if (stand.JointSink is not null)
        {
            changes.Add(Set.Out("stand.jointSink"));
        }

        return changes.Count > 0 ? [Cure.Of(changes)] : [];
    }

    /// <summary>Deeper sockets.</summary>
    public static IEnumerable<Cure> DeeperSockets(Asked asked) =>
        new[] { 0.03, 0.04, 0.05, 0.07 }
            .Where(d => d > asked.Rig.Stand.SocketDepth + 0.002)
            .SelectMany(d => Set.Cure(RigCure.LengthUp(asked.Rig, "stand.socketDepth", d)));

    /// <summary>A deeper stand.</summary>
    public static IEnumerable<Cure> Deeper(Asked asked)
    {
        if (asked.Rig.Stand.Depth is not null)
        {
            yield return Cure.Of([Set.Out("stand.depth")]);
        }

        var now = asked.Layout.Rows.Max(r => r.Depth);
        foreach (var depth in new[] { 1.25, 1.5, 2 })
        {
            foreach (var cure in Set.Cure(RigCure.LengthUp(asked.Rig, "stand.depth", depth * now)))
            {
                yield return cure;
            }
        }
    }

    /// <summary>Tied to the wall or the frame of the house.</summary>
    public static IEnumerable<Cure> Tied(Asked asked) =>
        asked.Rig.Stand.Tied ? [] : Set.Cure(RigCure.Yes("stand.tied"));

    /// <summary>Rubber under the feet.</summary>
    public static IEnumerable<Cure> Rubber(Asked asked) =>
        asked.Rig.Stand.Feet == FootMaterial.Rubber ? [] : [Cure.Of([Set.To("stand.feet", "rubber")])];

    /// <summary>Rubber under the feet of a deeper stand.</summary>
    public static IEnumerable<Cure> RubberAndDeeper(Asked asked) =>
        Rubber(asked)
            .SelectMany(rubber => Deeper(asked).Select(deeper => Cure.Of([.. rubber.Changes, .. deeper.Changes])));

    /// <summary>Low ties between the legs.</summary>
    public static IEnumerable<Cure> LowTies(Asked asked) =>
        asked.Rig.Stand.LowTies ? [] : Set.Cure(RigCure.Yes("stand.lowTies"));
}
