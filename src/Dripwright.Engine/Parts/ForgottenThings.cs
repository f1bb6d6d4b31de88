using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Parts;

/// <summary>The block of what is often forgotten, with the sizes and numbers of this rig.</summary>
internal static class ForgottenThings
{
    public static IReadOnlyList<OftenForgotten> Of(
        Rig rig,
        RigLayout layout,
        PartsTally tally,
        IReadOnlyList<HoleMark> holes
    )
    {
        List<OftenForgotten> block = [];
        void Add(string name, string why) => block.Add(new OftenForgotten(name, why));
        string Size(double diameter) => HoleTool.Size(diameter, rig.Units);
        int CountOf(Func<Counted, bool> which) => tally.Counted.Where(which).Sum(c => c.Needed + c.Spares);

        if (CountOf(c => c.Key.StartsWith("clamp-", StringComparison.Ordinal)) is > 0 and var clamps)
        {
            Add(
                "Hose clamps",
                $"one on every barb: {Labels.Of(clamps)} with spares; an unclamped barb comes off under pressure"
            );
        }

        DrainOutletType outlet = layout.Parts.Outlet;
        double[] saws = [.. new[] { outlet.PotHole, outlet.PipeHole }.Distinct().Order()];
        Add(
            "Hole saw",
            $"{string.Join(" and ", saws.Select(Size))}, the size of the seal and not of the pipe; with its arbor"
        );
        foreach (
            string tool in holes
                .Where(h => !h.Tool.StartsWith("hole saw", StringComparison.Ordinal))
                .Select(h => h.Tool)
                .Distinct()
        )
        {
            Add("Tool for the emitters' holes", $"{tool}; use the one that belongs to your emitters");
        }

        Add("Deburring tool", "every hole and cut end; chips end up in emitters");
        if (tally.Of("pvc-cement") > 0)
        {
            Add("Primer", "before cement on every solvent-welded joint; open a window");
        }

        if (tally.Of("thread-tape") > 0)
        {
            Add(
                "Thread-seal tape",
                $"every thread, wound clockwise: {Labels.Of(tally.Of("thread-tape"))} roll or more"
            );
        }

        int caps = layout
            .Runs.Where(r => r.Service == RunService.Feed)
            .Sum(r => r.Fittings.Count(f => f.Type.Kind == FittingKind.Cap));
        Add(
            "Flush caps",
            caps > 0
                ? $"{Labels.Of(caps)} at the closed ends of the feed lines, to open for flushing"
                : "this feed line has no closed end: open it at an entry to flush"
        );
        Add(
            "Strainer",
            layout.Parts.Strainer is { } strainer
                ? $"{strainer.Name}, and a second one to swap while you wash the first"
                : "this rig has none: coir crumbs will block emitters"
        );
        Add(
            "Catch cups",
            $"one at each pot for the catch test: {Labels.Of(layout.Rows.Sum(r => r.Pots.Count))}, or a dozen carried along"
        );
        Add("Pipe cutter or fine saw", $"square ends on {Size(layout.Parts.Drain.OutsideDiameter)} pipe and hose");
        Add("Marker pen", "letter every piece as in the drawings before it leaves the saw");
        Add("Measuring tape", "mark all holes of a piece from one end; steps add up their errors");
        Add("Gloves and goggles", "hole saws grab, cement burns");
        return block;
    }
}
