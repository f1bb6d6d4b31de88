using Dripwright.Engine;
using Dripwright.Language;
using Dripwright.Language.Report;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Views;

/// <summary>The first sheets of a pack: what is built, whether it works, and what to beware of.</summary>
public static class CoverSheet
{
    /// <summary>Draws the sheets, always upright; findings flow over to as many as they need.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="paper">Size of the paper.</param>
    public static IReadOnlyList<SheetDraft> Draw(Plan plan, Paper paper)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(paper);
        var summary = PlanSummary.Of(plan);
        var flow = new Flow(paper.Portrait, Words.Of("sheet.cover.title"));
        flow.Heading(plan.Rig.Name).Paragraph(Wording.Sentence(summary.Sentence));
        flow.Figure(PlanView.PictureHeight(plan, flow.Width), box => PlanView.Picture(plan, box));
        var table = new Table(
            new Column(Words.Of("sheet.cover.about")),
            new Column(Words.Of("sheet.cover.figure")),
            new Column(Words.Of("sheet.cover.value")),
            new Column("")
        );
        foreach (var group in summary.Groups)
        {
            foreach (var (i, figure) in group.Figures.Where(f => f.Chief).Index())
            {
                table.Row(
                    i == 0 ? group.Heading : "",
                    figure.Name,
                    Wording.Sentence(figure.Value),
                    Wording.Sentence(figure.Remark)
                );
            }
        }

        flow.Table(table);
        Findings(plan, flow);
        flow.Heading(Words.Of("sheet.cover.begin")).Caution(Cautions.Mains).Caution(Cautions.Weight(plan));
        var hang = plan.Layout.Wires.Count > 0 ? Words.Of("sheet.caution.hang") : "";
        flow.Caution(Wording.Sentences(Cautions.Climb, hang, Cautions.Codes));
        return flow.Build();
    }

    private static void Findings(Plan plan, Flow flow)
    {
        var counts = plan.Findings.GroupBy(f => FindingMarks.GradeOf(f.Level)).ToDictionary(g => g.Key, g => g.Count());
        int Of(Grade grade) => counts.GetValueOrDefault(grade);
        flow.Heading(Words.Of("sheet.cover.findings"));
        flow.Paragraph(
            Of(Grade.Stop) > 0
                ? Words.Of(
                    "sheet.cover.stop",
                    Wording.Count(Of(Grade.Stop)),
                    Wording.Count(Of(Grade.Mend)),
                    Wording.Counted("sheet.count.note", Of(Grade.Note))
                )
            : plan.Findings.Count == 0 ? Words.Of("sheet.cover.none")
            : Words.Of(
                "sheet.cover.mend",
                Wording.Count(Of(Grade.Mend)),
                Wording.Counted("sheet.count.note", Of(Grade.Note))
            )
        );
        var told = new PlanWords(plan.Rig.Units).Of(plan.Findings);
        for (var i = 0; i < told.Count; i++)
        {
            var block = new FindingBlock(told[i], i + 1, flow.Width);
            flow.Figure(block.Height, block.Draw);
        }
    }
}
