using Dripwright.Engine;
using Dripwright.Engine.Parts;
using Dripwright.Engine.Units;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Lists;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Bench;

/// <summary>Which piece is sawn from which length: bars drawn to scale, a list to tick off, and how good the plan is.</summary>
public static class CutDiagrams
{
    /// <summary>Most bars that are drawn for one material; more are only listed.</summary>
    private const int MostDrawn = 24;

    /// <summary>Up to so many bars, each has a line of its own to tick.</summary>
    private const int MostListedSingly = 40;

    private static string Title => Words.Of("bench.cuts.title");

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
            flow.Paragraph(Words.Of("bench.cuts.none"));
        }
        else
        {
            flow.Paragraph(Words.Of("bench.cuts.how"));
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
                Words.Of(
                    "bench.cuts.kerf",
                    words.Length(trap.StockLength),
                    trap.WithKerf,
                    words.MarkWithUnit(trap.PieceLength),
                    trap.WithoutKerf,
                    words.Size(trap.ShortenBy)
                )
            );
            flow.Space(1);
        }

        if (patterns.Count > MostDrawn)
        {
            flow.Paragraph(Words.Of("bench.cuts.more", patterns.Count - MostDrawn));
        }

        flow.Space(2).Table(List(cut, words));
    }

    private static string About(CutPlan cut, Wording words) =>
        string.Join(' ', Buy(cut, words), Least(cut, words), Rest(cut, words));

    private static string Buy(CutPlan cut, Wording words)
    {
        var buy = cut
            .Purchases.Where(p => p.Count > 0)
            .Select(p => Words.Of("bench.cuts.stock", p.Count, words.Length(p.Length)))
            .ToList();
        var used = cut.Stocks.Count(s => !s.IsBought && s.Pieces.Count > 0);
        var have = used == 0 ? "" : " " + Words.Count("bench.cuts.have", used);
        return (buy.Count == 0 ? Words.Of("bench.cuts.buynone") : Words.Of("bench.cuts.buy", All(buy))) + have;
    }

    private static string All(List<string> each) =>
        each.Count == 1 ? each[0] : Words.Of("list.and", string.Join(", ", each.SkipLast(1)), each[^1]);

    private static string Least(CutPlan cut, Wording words)
    {
        if (cut.ProvenOptimal)
        {
            return Words.Of("bench.cuts.proven");
        }

        var gap = cut.Measure == PurchaseMeasure.Length ? words.Length(cut.Gap) : QuantityWords.Number(cut.Gap, "0.00");
        return Words.Of("bench.cuts.gap", gap);
    }

    private static string Rest(CutPlan cut, Wording words)
    {
        var keep = cut.Leftovers.Count == 0 ? "" : " " + Words.Of("bench.cuts.leftovers", LeftoverList(cut, words));
        return Words.Of("bench.cuts.waste", Wording.Percent(cut.WasteShare)) + keep;
    }

    private static string LeftoverList(CutPlan cut, Wording words) =>
        BenchWords.Labels([.. cut.Leftovers.GroupBy(words.Length).Select(g => Times(g.Count(), g.Key))], 6);

    private static string Caption(List<(int Number, CutStock Stock)> pattern, Wording words)
    {
        var bars = PlanWords.Numbers(pattern.Select(p => p.Number));
        var from = pattern[0].Stock.IsBought ? "" : ", " + BenchWords.OnHand(pattern[0].Stock.OnHandLabel!);
        var length = words.Length(pattern[0].Stock.Length);
        return pattern.Count == 1
            ? Words.Of("bench.cuts.bar", bars, length, from)
            : Words.Of("bench.cuts.alike", pattern.Count, bars, length, from);
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
            new(Words.Of("bench.cuts.column.bar"), Align.Middle),
            new(Words.Of("bench.cuts.column.length"), Align.Right),
            new(Words.Of("bench.cuts.column.from")),
            new(Words.Of("bench.cuts.column.pieces")),
            new(Words.Of("bench.cuts.column.left"), Align.Right),
            new(Words.Of("bench.cuts.column.cut"), Align.Tick)
        );
        foreach (var bars in cut.Stocks.Count > MostListedSingly ? Alike(cut) : Singly(cut))
        {
            var stock = bars[0].Stock;
            table.Row(
                PlanWords.Numbers(bars.Select(b => b.Number)),
                words.Length(stock.Length),
                stock.OnHandLabel is { } number ? BenchWords.OnHand(number) : Words.Of("bench.cuts.new"),
                stock.Pieces.Count == 0 ? Words.Of("bench.cuts.unneeded")
                    : bars.Count == 1 ? Pieces(stock, words)
                    : ManyPieces(bars, words),
                stock.Leftover <= 0 ? Words.Of("bench.cuts.nothing")
                    : stock.LeftoverUsable ? Words.Of("bench.cuts.left", words.Length(stock.Leftover))
                    : words.Length(stock.Leftover)
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
                string.Join(" + ", b.Stock.Pieces.GroupBy(BenchWords.Piece).Select(g => Times(g.Count(), g.Key)))
            )
            .GroupBy(text => text)
            .Select(g => g.Count() == 1 ? g.Key : $"{g.Key} ({Words.Count("bench.cuts.bars", g.Count())})");
        return Words.Of("bench.cuts.each", string.Join(" + ", lengths), string.Join("; ", labels));
    }

    private static string Times(int count, string what) =>
        count == 1 ? what : $"{Wording.Count(count)}\u00a0×\u00a0{what}";

    private static string Pieces(CutStock stock, Wording words) =>
        string.Join(
            "; ",
            stock
                .Pieces.Select(p => $"{BenchWords.Piece(p)}\u00a0{words.MarkWithUnit(p.Length)}")
                .GroupBy(text => text)
                .Select(g => Times(g.Count(), g.Key))
        );
}
