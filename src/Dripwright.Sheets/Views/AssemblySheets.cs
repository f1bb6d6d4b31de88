using Dripwright.Engine;
using Dripwright.Engine.Findings;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Views;

/// <summary>How to put the rig together, step by step, with this rig's own labels and figures.</summary>
public static class AssemblySheets
{
    /// <summary>Draws the sheets, always upright.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="paper">Size of the paper.</param>
    public static IReadOnlyList<SheetDraft> Draw(Plan plan, Paper paper)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(paper);
        var flow = new Flow(paper.Portrait, "Assembly");
        flow.Heading("Make ready");
        var stops = plan.Findings.Count(f => f.Level == FindingLevel.Stop);
        if (stops > 0)
        {
            flow.Caution(
                $"The plan has {Wording.Counted(stops, "finding")} to stop for. Change the rig first; do not cut or buy by this plan."
            );
        }

        flow.Step("Lay out all parts by the parts list and tick them off.");
        flow.Step(
            "Cut every piece by the cut diagrams and write its label on it. Deburr each end inside and out.",
            Cautions.Saw
        );
        new OverheadSteps(plan).Write(flow);
        new StandSteps(plan).Write(flow);
        new DrainSteps(plan).Write(flow);
        new FeedSteps(plan).Write(flow);
        new WaterSteps(plan).Write(flow);
        return flow.Build();
    }
}
