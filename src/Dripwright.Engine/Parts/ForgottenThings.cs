using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Parts;

/// <summary>The block of what is often forgotten, with the sizes and numbers of this rig.</summary>
internal static class ForgottenThings
{
    public static IReadOnlyList<OftenForgotten> Of(RigLayout layout, PartsTally tally, IReadOnlyList<HoleMark> holes)
    {
        List<OftenForgotten> block = [];
        void Add(string name, Phrase why) => block.Add(new OftenForgotten(Phrase.Of(name), why));
        int CountOf(Func<Counted, bool> which) => tally.Counted.Where(which).Sum(c => c.Needed + c.Spares);

        if (CountOf(c => c.Key.StartsWith("clamp-", StringComparison.Ordinal)) is > 0 and var clamps)
        {
            Add("part.forgotten.clamps", Phrase.Of("part.forgotten.clamps.why", clamps));
        }

        var outlet = layout.Parts.Outlet;
        double[] saws = [.. new[] { outlet.PotHole, outlet.PipeHole }.Distinct().Order()];
        Add(
            "part.forgotten.saw",
            Phrase.Of("part.forgotten.saw.why", new Several([.. saws.Select(saw => Phrase.Of(Measured.Tool(saw)))]))
        );
        foreach (var tool in holes.Where(h => h.Tool.Key != HoleTool.Saw).Select(h => h.Tool).Distinct())
        {
            Add("part.forgotten.tool", Phrase.Of("part.forgotten.tool.why", tool));
        }

        Add("part.forgotten.deburring", Phrase.Of("part.forgotten.deburring.why"));
        if (tally.Of("pvc-cement") > 0)
        {
            Add("part.forgotten.primer", Phrase.Of("part.forgotten.primer.why"));
        }

        if (tally.Of("thread-tape") > 0)
        {
            Add("part.forgotten.tape", Phrase.Counted("part.forgotten.tape.why", tally.Of("thread-tape")));
        }

        var caps = layout
            .Runs.Where(r => r.Service == RunService.Feed)
            .Sum(r => r.Fittings.Count(f => f.Type.Kind == FittingKind.Cap));
        Add(
            "part.forgotten.caps",
            caps > 0 ? Phrase.Of("part.forgotten.caps.why", caps) : Phrase.Of("part.forgotten.caps.none")
        );
        Add(
            "part.forgotten.strainer",
            layout.Parts.Strainer is { } strainer
                ? Phrase.Of("part.forgotten.strainer.why", strainer.Name)
                : Phrase.Of("part.forgotten.strainer.none")
        );
        Add("part.forgotten.cups", Phrase.Of("part.forgotten.cups.why", layout.Rows.Sum(r => r.Pots.Count)));
        Add(
            "part.forgotten.cutter",
            Phrase.Of("part.forgotten.cutter.why", Measured.Tool(layout.Parts.Drain.OutsideDiameter))
        );
        Add("part.forgotten.marker", Phrase.Of("part.forgotten.marker.why"));
        Add("part.forgotten.measure", Phrase.Of("part.forgotten.measure.why"));
        Add("part.forgotten.gloves", Phrase.Of("part.forgotten.gloves.why"));
        return block;
    }
}
