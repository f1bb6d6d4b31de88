using System.Globalization;
using Dripwright.Engine.Proposing;
using Dripwright.Engine.Units;
using Dripwright.Language;
using Spectre.Console;

namespace Dripwright.Screen;

/// <summary>The answer to a brief on a screen or in a text file.</summary>
internal static class ProposalView
{
    private static readonly Style s_heading = new(decoration: Decoration.Bold);

    public static void Draw(IAnsiConsole console, ProposalList answer)
    {
        var told = new PlanWords(answer.Units);
        foreach (var (index, proposal) in answer.Proposals.Index())
        {
            var number = (index + 1).ToString(CultureInfo.InvariantCulture);
            var cost = proposal.Cost.ToString("0.00", CultureInfo.InvariantCulture) + Space(proposal.Currency);
            var even = QuantityText.Format(Dimension.Share, proposal.Uniformity, proposal.Rig.Units);
            Line(console, $"{number}  {cost}  {Words.Of("program.suggest.even", even)}", s_heading);
            Indented(console, $"{told.Of(proposal.Title)}.");
            Indented(console, told.Of(proposal.Why) + Unpriced(proposal));
            Line(console, "", Style.Plain);
        }

        if (answer.Proposals.Any(p => p.Plan.Parts.Cost.AnyInvented))
        {
            Line(console, Words.Of("program.suggest.typical"), Style.Plain);
        }

        foreach (var obstacle in answer.Obstacles)
        {
            Line(console, Words.Of("program.suggest.nothing"), s_heading);
            Indented(console, told.Of(obstacle.What));
            Indented(console, $"→ {told.Of(obstacle.Remedy)}");
        }

        foreach (var remark in answer.Remarks)
        {
            Line(console, told.Of(remark), Style.Plain);
        }

        Line(console, Searched(answer.Search), Style.Plain);
    }

    private static string Unpriced(Proposal proposal) =>
        proposal.LinesUnpriced == 0 ? "" : " " + Words.Count("program.suggest.unpriced", proposal.LinesUnpriced);

    private static string Searched(SearchReport search)
    {
        var planned = Words.Of("program.suggest.searched", search.Planned, search.Placed);
        if (search.Complete)
        {
            return Words.Of("program.suggest.complete", planned);
        }

        return Words.Of(
            search.Stopped ? "program.suggest.stopped" : "program.suggest.limit",
            planned,
            search.Unexamined,
            search.LeastCostUnexamined?.ToString("0.00", CultureInfo.InvariantCulture) ?? ""
        );
    }

    private static string Space(string currency) => currency.Length == 0 ? "" : " " + currency;

    private static void Line(IAnsiConsole console, string text, Style style) =>
        console.Write(new Text(Plain.Line(text) + "\n", style));

    private static void Indented(IAnsiConsole console, string text) =>
        console.Write(new Padder(new Text(Plain.Line(text)), new Padding(3, 0, 0, 0)));
}
