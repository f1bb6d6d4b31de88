using Dripwright.Engine;
using Dripwright.Engine.Findings;
using Dripwright.Language;
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
        var flow = new Flow(paper.Portrait, Words.Of("sheet.assembly.title"));
        flow.Heading(Words.Of("sheet.assembly.ready"));
        var stops = plan.Findings.Count(f => f.Level == FindingLevel.Stop);
        if (stops > 0)
        {
            flow.Caution(Words.Of("sheet.assembly.stop", Wording.Counted("sheet.count.finding", stops)));
        }

        flow.Step(Words.Of("sheet.assembly.layout"));
        flow.Step(Words.Of("sheet.assembly.cut"), Cautions.Saw);
        new CropWireSteps(plan).Write(flow);
        new StandSteps(plan).Write(flow);
        new DrainSteps(plan).Write(flow);
        new FeedSteps(plan).Write(flow);
        new WaterSteps(plan).Write(flow);
        return flow.Build();
    }
}
