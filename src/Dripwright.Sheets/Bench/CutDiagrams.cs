using Dripwright.Engine;
using Dripwright.Engine.Parts;
using Dripwright.Engine.Units;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Bench;

/// <summary>Which piece is sawn from which length: bars drawn to scale, a list to tick off, and how good the plan is.</summary>
public static class CutDiagrams
{
    /// <summary>Most bars that are drawn for one material; more are only listed.</summary>
    private const int MostDrawn = 24;

    /// <summary>Up to so many bars, each has a line of its own to tick.</summary>
    private const int MostListedSingly = 40;

    private const string Title = "Cuts";

    /// <summary>The sheets.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="paper">Size of the sheets; they stand upright.</param>
    public static IReadOnlyList<SheetDraft> Draw(Plan plan, Paper paper)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(paper);
        var words = new Wording(plan.Rig.Units);
        var flow = new Flow(paper.Portrait, Title).Heading(Title);
        if (plan.Parts.Cuts.Count == 0)
        {
            flow.Paragraph("Nothing is cut from stock in this rig.");
        }
        else
        {
            flow.Paragraph(
                "Saw in the order drawn, from the left, and letter each piece before the next cut. A dark line is a saw cut. "
                    + "Hatched ends are long enough to keep; crossed ends are waste."
            );
        }

        var told = new PlanWords(plan.Rig.Units);
        foreach (var trouble in plan.Parts.CutTroubles)
        {
            flow.Caution(Wording.Sentence(told.Of(trouble.What))).Space(1);
        }

        foreach (var cut in plan.Parts.Cuts)
        {
            Material(flow, cut, words);
        }

        return flow.Build();
    }

    private static void Material(Flow flow, CutPlan cut, Wording words)
    {
        var patterns = Alike(cut);
        var longest = cut.Stocks.Select(s => s.Length).DefaultIfEmpty(1).Max();
        Func<Box, Element> Bar(List<(int Number, CutStock Stock)> pattern) =>
            box => CutBar.Draw(box, pattern[0].Stock, longest, Caption(pattern, words), words);
        var (heading, about) = (Wording.Sentence(cut.Material), About(cut, words));
        if (patterns.Count == 0)
        {
            flow.Heading(heading).Paragraph(about);
            return;
        }

        flow.Titled(heading, about, CutBar.Height, Bar(patterns[0]));
        foreach (var pattern in patterns.Take(MostDrawn).Skip(1))
        {
            flow.Figure(CutBar.Height, Bar(pattern));
        }

        foreach (var trap in cut.KerfTraps)
        {
            flow.Caution(
                $"The saw's width costs a piece: a length of {words.Length(trap.StockLength)} gives "
                    + $"{Wording.Count(trap.WithKerf)} pieces of {words.MarkWithUnit(trap.PieceLength)}, not "
                    + $"{Wording.Count(trap.WithoutKerf)}. Each would have to be {words.Size(trap.ShortenBy)} shorter."
            );
            flow.Space(1);
        }

        if (patterns.Count > MostDrawn)
        {
            flow.Paragraph(
                $"{Wording.Count(patterns.Count - MostDrawn)} more ways to cut are only listed, or this would fill a book."
            );
        }

        flow.Space(2).Table(List(cut, words));
    }

    private static string About(CutPlan cut, Wording words) =>
        string.Join(' ', Buy(cut, words), Least(cut, words), Rest(cut, words));

    private static string Buy(CutPlan cut, Wording words)
    {
        var buy = cut
            .Purchases.Where(p => p.Count > 0)
            .Select(p => $"{Wording.Count(p.Count)}\u00a0of\u00a0{words.Length(p.Length)}")
            .ToList();
        var used = cut.Stocks.Count(s => !s.IsBought && s.Pieces.Count > 0);
        var have =
            used == 0 ? "" : $" {Wording.Counted(used, "length")} on hand {(used == 1 ? "is" : "are")} used first.";
        return (buy.Count == 0 ? "Nothing to buy." : $"Buy {string.Join(" and ", buy)}.") + have;
    }

    private static string Least(CutPlan cut, Wording words)
    {
        if (cut.ProvenOptimal)
        {
            return "No way of cutting buys less: this is proven.";
        }

        var gap = cut.Measure == PurchaseMeasure.Length ? words.Length(cut.Gap) : QuantityWords.Number(cut.Gap, "0.00");
        return $"At the very best a plan could buy {gap} less.";
    }

    private static string Rest(CutPlan cut, Wording words)
    {
        var keep = cut.Leftovers.Count == 0 ? "" : $" Worth keeping: {LeftoverList(cut, words)}.";
        return $"{Wording.Percent(cut.WasteShare)} is waste.{keep}";
    }

    private static string LeftoverList(CutPlan cut, Wording words) =>
        BenchWords.Labels([.. cut.Leftovers.GroupBy(words.Length).Select(g => Times(g.Count(), g.Key))], 6);

    private static string Caption(List<(int Number, CutStock Stock)> pattern, Wording words)
    {
        var bars = QuantityWords.Numbers(pattern.Select(p => p.Number));
        var from = pattern[0].Stock.IsBought ? "" : ", " + pattern[0].Stock.OnHandLabel;
        var length = words.Length(pattern[0].Stock.Length);
        return pattern.Count == 1
            ? $"Bar {bars}: {length}{from}"
            : $"Cut {Wording.Count(pattern.Count)} like this: bars {bars}, {length}{from}";
    }

    /// <summary>Bars that are sawn at the same places, in the order of the plan.</summary>
    private static List<List<(int Number, CutStock Stock)>> Alike(CutPlan cut) =>
        [
            .. cut
                .Stocks.Select((stock, i) => (Number: i + 1, Stock: stock))
                .Where(s => s.Stock.Pieces.Count > 0)
                .GroupBy(s =>
                    string.Join(
                        ' ',
                        s.Stock.Pieces.Select(p => p.Length)
                            .Append(s.Stock.Length)
                            .Append(s.Stock.IsBought ? 1 : 0)
                            .Select(v => QuantityWords.Number(v, "R"))
                    )
                )
                .Select(g => g.ToList()),
        ];

    private static Table List(CutPlan cut, Wording words)
    {
        var table = new Table(
            new("Bar", Align.Middle),
            new("Length", Align.Right),
            new("From"),
            new("Pieces in the order of sawing"),
            new("Left over", Align.Right),
            new("Cut", Align.Tick)
        );
        foreach (var bars in cut.Stocks.Count > MostListedSingly ? Alike(cut) : Singly(cut))
        {
            var stock = bars[0].Stock;
            table.Row(
                QuantityWords.Numbers(bars.Select(b => b.Number)),
                words.Length(stock.Length),
                stock.OnHandLabel?.Replace(' ', '\u00a0') ?? "new",
                stock.Pieces.Count == 0 ? "not needed"
                    : bars.Count == 1 ? Pieces(stock, words)
                    : ManyPieces(bars, words),
                stock.Leftover <= 0 ? "none" : words.Length(stock.Leftover) + (stock.LeftoverUsable ? ", keep" : "")
            );
        }

        return table;
    }

    private static List<List<(int Number, CutStock Stock)>> Singly(CutPlan cut) =>
        [.. cut.Stocks.Select((stock, i) => new List<(int, CutStock)> { (i + 1, stock) })];

    /// <summary>Bars sawn alike: the lengths once, then the labels bar by bar.</summary>
    private static string ManyPieces(List<(int Number, CutStock Stock)> bars, Wording words)
    {
        var lengths = bars[0]
            .Stock.Pieces.GroupBy(p => words.MarkWithUnit(p.Length))
            .Select(g => Times(g.Count(), g.Key));
        var labels = bars.Select(b =>
                string.Join(" + ", b.Stock.Pieces.GroupBy(p => p.Label).Select(g => Times(g.Count(), g.Key)))
            )
            .GroupBy(text => text)
            .Select(g => g.Count() == 1 ? g.Key : $"{g.Key} ({Wording.Counted(g.Count(), "bar")})");
        return $"each {string.Join(" + ", lengths)}: {string.Join("; ", labels)}";
    }

    private static string Times(int count, string what) =>
        count == 1 ? what : $"{Wording.Count(count)}\u00a0×\u00a0{what}";

    private static string Pieces(CutStock stock, Wording words) =>
        string.Join(
            "; ",
            stock
                .Pieces.Select(p => $"{p.Label}\u00a0{words.MarkWithUnit(p.Length)}")
                .GroupBy(text => text)
                .Select(g => Times(g.Count(), g.Key))
        );
}
