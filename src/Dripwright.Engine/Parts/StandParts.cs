using Dripwright.Engine.Layout;

namespace Dripwright.Engine.Parts;

/// <summary>Counts printed joints, screws, saddles and ties of the stand.</summary>
internal static class StandParts
{
    public static void Count(PartsTally tally, RigLayout layout)
    {
        foreach (var joints in layout.Stand.Joints.GroupBy(j => j.Part))
        {
            bool clamp = joints.Key == StandPlacement.BraceClamp;
            tally.Add(
                joints.Key,
                joints.Count(),
                clamp ? "braces of the stand" : "stand",
                note: clamp ? "to fit your tube" : "print it to fit your tube"
            );
        }

        // A screw at each end of each tube keeps a stand together that is carried about. Common practice.
        // A brace is held by its clamps.
        int pieces = layout.Stand.Members.Count(m => m.Role != MemberRole.Brace);
        tally.Add("joint-screw", 2 * pieces, "one at each end of each stand tube");
        HashSet<int> onStands = [.. layout.Stand.Members.Select(m => m.Row)];
        foreach (RowLayout row in layout.Rows)
        {
            int frames = row.Modules + 1;
            if (onStands.Contains(row.Number))
            {
                tally.Add("pipe-saddle", frames, "drain, one at each frame", note: "print it to fit your pipe");
            }

            tally.Add("cable-tie", frames * Math.Min(2, row.Feed.Count), "feed line, one at each module joint");
        }
    }
}
