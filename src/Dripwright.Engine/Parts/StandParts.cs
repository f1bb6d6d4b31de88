using Dripwright.Engine.Layout;

namespace Dripwright.Engine.Parts;

/// <summary>Counts printed joints, screws, saddles and ties of the stand.</summary>
internal static class StandParts
{
    public static void Count(PartsTally tally, RigLayout layout)
    {
        foreach (var joints in layout.Stand.Joints.GroupBy(j => j.Part))
        {
            tally.Add(joints.Key, joints.Count(), "stand", note: "print it to fit your tube");
        }

        // A screw at each end of each tube keeps a stand together that is carried about. Common practice.
        tally.Add("joint-screw", 2 * layout.Stand.Members.Count, "one at each end of each stand tube");
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
