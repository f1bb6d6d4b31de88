using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Proposing;

/// <summary>From a brief to a handful of rigs that pass every rule, cheapest first, each more even than the one before.</summary>
/// <remarks>Method page: docs/methods/propose.md</remarks>
public static class Proposer
{
    /// <summary>Searches rigs for a brief.</summary>
    /// <remarks>
    /// The same brief, catalogue and options give the same answer on every machine, unless it is stopped; then what was found
    /// so far is the answer and says so. Never throws for what stands in a brief that was read without a fault.
    /// </remarks>
    /// <param name="brief">A brief that was read without a fault.</param>
    /// <param name="catalogue">The catalogue it was read with.</param>
    /// <param name="options">How much may be searched; the defaults where null.</param>
    /// <param name="progress">Told after each step.</param>
    /// <param name="stop">Asks to stop and give the best so far.</param>
    public static ProposalList Of(
        Brief brief,
        PartsCatalogue catalogue,
        ProposeOptions? options = null,
        IProgress<ProposeProgress>? progress = null,
        CancellationToken stop = default
    )
    {
        ArgumentNullException.ThrowIfNull(brief);
        ArgumentNullException.ThrowIfNull(catalogue);
        var search = new Search(brief, catalogue, options ?? new ProposeOptions());
        search.Run(progress, stop);
        (var unexamined, var least) = search.Left();
        var report = new SearchReport(search.Planned, search.Placed, unexamined, least, search.Stopped);
        List<Proposal> proposals = [];
        foreach ((var rig, var mark) in search.Front.Kept)
        {
            var named = rig.Rig with { Name = NameOf(brief, proposals.Count) };
            var layout = rig.Plan.Layout;
            proposals.Add(
                new Proposal(
                    named,
                    rig.Plan with
                    {
                        Layout = layout with { Resolved = layout.Resolved.Named(named.Name) },
                    },
                    rig.Cost,
                    rig.Plan.Parts.Currency,
                    rig.Plan.Parts.Cost.LinesUnpriced,
                    rig.Uniformity,
                    UniformityMarks.All[mark],
                    least is null || rig.Cost <= least,
                    RigWords.Title(rig.Plan),
                    proposals.Count == 0 ? RigWords.First(rig.Plan) : RigWords.Beside(proposals[^1].Plan, rig.Plan)
                )
            );
        }

        return new ProposalList(
            proposals,
            proposals.Count > 0 ? [] : Obstacles.Of(brief, search),
            Remarks(brief, search.Space, catalogue),
            report
        )
        {
            Units = brief.Units,
        };
    }

    private static string NameOf(Brief brief, int index) => $"{brief.Name} {Labels.Of(index + 1)}";

    private static List<Phrase> Remarks(Brief brief, SearchSpace space, PartsCatalogue catalogue)
    {
        List<Phrase> remarks = [];
        var asked = BriefPots.Asked(brief, catalogue);
        if (asked < space.Pot.Length)
        {
            remarks.Add(
                Phrase.Of(
                    "proposal.remark.pot",
                    Measured.Length(space.Pot.Length),
                    Measured.Length(asked),
                    space.Pot.Name
                )
            );
        }
        else if (brief.Crops.Any(c => c.Spacing is null))
        {
            remarks.Add(Phrase.Of("proposal.remark.usual", Measured.Length(asked)));
        }

        return remarks;
    }
}
