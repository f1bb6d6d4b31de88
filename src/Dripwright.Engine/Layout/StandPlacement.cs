using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Layout;

/// <summary>Places the tubes and printed joints of the knock-down stand.</summary>
/// <remarks>
/// A frame of legs and a cross-member stands at every module joint, and as many more between as the stand says; rails span from frame to frame under the pots. A single
/// row has two rails, a staggered row two under each of its lines. Pots that stand on the floor have no stand.
/// </remarks>
internal static class StandPlacement
{
    /// <summary>[m] Height of the low tie over the floor: under it a broom still passes. Common practice.</summary>
    private const double TieHeight = 0.15;

    /// <summary>[m] How far a pot may overhang its outer rails on each side. Common practice.</summary>
    private const double Overhang = 0.025;

    /// <summary>Catalogue key of what holds a tie to a leg.</summary>
    internal const string Clip = "joint-clip";

    public static StandLayout Place(
        Rig rig,
        RigParts parts,
        IReadOnlyList<RowPlace> rows,
        IReadOnlyList<PipeRun> drains
    )
    {
        List<StandMember> members = [];
        List<StandJoint> joints = [];
        List<DrainHanger> hangers = [];
        var inset = rig.Stand.JointCentre + rig.Stand.SocketDepth + parts.Tube.Outside;
        foreach ((var row, var drain) in rows.Zip(drains))
        {
            if (row.Spec.StandHeight > 2 * parts.Tube.Outside)
            {
                List<StandMember> own = [];
                PlaceRow(rig.Stand, parts.Tube.Outside, row, own, joints);
                var held = DrainHanging.Of(rig.Stand, row, drain, own, parts.Tube.Outside);
                hangers.AddRange(held);
                var braces = StandBraces.Of(own, rig.Stand.Bracing, inset, parts.Tube.Outside, held);
                members.AddRange(own);
                members.AddRange(braces);
                foreach (var brace in braces)
                {
                    joints.Add(new StandJoint(StandLayout.Clamp, row.Number, brace.From));
                    joints.Add(new StandJoint(StandLayout.Clamp, row.Number, brace.To));
                }
            }
        }

        joints.AddRange(
            hangers
                .Where(hanger => hanger.Mount != HangerMount.Tie)
                .Select(hanger => new StandJoint(StandLayout.Hanger, hanger.Row, hanger.At))
        );
        return new StandLayout(parts.Tube, members, joints) { BraceInset = inset, Hangers = hangers };
    }

    /// <summary>[m] Offsets of the rails from the row's middle, front to back.</summary>
    internal static double[] RailOffsets(Stand stand, RowPlace row)
    {
        var half = Math.Max((row.Pot.Width / 2) - Overhang, 0.3 * row.Pot.Width);
        if (row.Spec.Arrangement == Arrangement.Single)
        {
            half = stand.Depth is { } depth ? depth / 2 : half;
            return [-half, half];
        }

        var line = row.Spec.LineDistance / 2;
        var outer = stand.Depth is { } given ? given / 2 : line + half;
        // Where the two lines stand so close that the inner rails would meet, one middle rail carries both.
        return line - half > 0.03 ? [-outer, -(line - half), line - half, outer] : [-outer, 0, outer];
    }

    private static void PlaceRow(
        Stand stand,
        double outside,
        RowPlace row,
        List<StandMember> members,
        List<StandJoint> joints
    )
    {
        var offsets = RailOffsets(stand, row);
        var z = row.Base - (outside / 2);
        var n = Labels.Of(row.Number);
        var lay = stand.JointCentre;

        void Add(string name, MemberRole role, Vector3 from, Vector3 to, double cutFrom, double cutTo) =>
            members.Add(
                new StandMember($"S{n}-{name}", role, row.Number, from, to, from.DistanceTo(to) - cutFrom - cutTo)
            );

        var bays = row.Modules * (1 + stand.ExtraFrames);
        var bay = row.Spec.ModuleLength / (1 + stand.ExtraFrames);
        for (var frame = 0; frame <= bays; frame++)
        {
            var x = row.OriginX + (frame * bay);
            var end = frame == 0 || frame == bays;
            for (var i = 0; i < offsets.Length; i++)
            {
                var outer = i == 0 || i == offsets.Length - 1;
                var top = new Vector3(x, row.CentreY + offsets[i], z);
                joints.Add(new StandJoint(JointKey(outer, end), row.Number, top));
                if (outer)
                {
                    var foot = top with { Z = row.Floor };
                    Add("leg", MemberRole.Leg, foot, top, StandLayout.FootFloor, lay);
                    joints.Add(new StandJoint("joint-foot", row.Number, foot));
                }

                if (i > 0)
                {
                    Add(
                        $"cross{CrossLetter(offsets, i)}",
                        MemberRole.Cross,
                        top with
                        {
                            Y = row.CentreY + offsets[i - 1],
                        },
                        top,
                        lay,
                        lay
                    );
                }

                if (frame > 0)
                {
                    Add("rail", MemberRole.Rail, top with { X = x - bay }, top, lay, lay);
                }
            }

            if (stand.LowTies && row.Spec.StandHeight > 3 * TieHeight)
            {
                // Ties are clipped to the legs, not socketed: they run from leg centre to leg centre and a tube's width beyond.
                var front = new Vector3(x, row.CentreY + offsets[0], row.Floor + TieHeight);
                var back = new Vector3(x, row.CentreY + offsets[^1], row.Floor + TieHeight);
                Add("tie", MemberRole.Tie, front, back, -outside, -outside);
                joints.Add(new StandJoint(Clip, row.Number, front));
                joints.Add(new StandJoint(Clip, row.Number, back));
                if (frame > 0)
                {
                    var start = back with { X = x - bay, Z = row.Floor + (2 * TieHeight) };
                    var to = start with { X = x };
                    Add("back-tie", MemberRole.Tie, start, to, -outside, -outside);
                    joints.Add(new StandJoint(Clip, row.Number, start));
                    joints.Add(new StandJoint(Clip, row.Number, to));
                }
            }
        }
    }

    private static string CrossLetter(double[] offsets, int i) =>
        // Inner and outer cross-members of a staggered row differ in length, so they are told apart.
        offsets.Length == 4
        && i == 2
            ? "-inner"
            : "";

    private static string JointKey(bool outer, bool end) =>
        (outer, end) switch
        {
            (true, true) => "joint-three-way",
            (true, false) => "joint-four-way",
            (false, true) => "joint-tee",
            (false, false) => "joint-cross",
        };
}
