using System.Globalization;
using Dripwright.Engine.Parts;

namespace Dripwright.Engine.Tests.Parts;

/// <summary>Checks of a plan that share no code with the planner.</summary>
internal static class CutPlanCheck
{
    private const double Grain = 1e-5;

    /// <summary>The first mistake of the plan, in words; null when there is none.</summary>
    public static string? Mistake(CutJob job, CutPlan plan)
    {
        var wanted = job
            .Wanted.SelectMany(piece => Enumerable.Repeat(piece.Label, piece.Count))
            .Order(StringComparer.Ordinal);
        var cut = plan.Stocks.SelectMany(stock => stock.Pieces).ToList();
        if (!wanted.SequenceEqual(cut.Select(piece => piece.Label).Order(StringComparer.Ordinal)))
        {
            return "the labels cut are not the labels wanted";
        }

        var lengths = job.Wanted.ToDictionary(piece => piece.Label, piece => piece.Length);
        if (cut.Exists(p => p.Length < lengths[p.Label] - 1e-8 || p.Length > lengths[p.Label] + Grain))
        {
            return "a piece is not as long as wanted";
        }

        foreach (var stock in plan.Stocks)
        {
            if (StockMistake(job, stock) is { } mistake)
            {
                return mistake;
            }
        }

        foreach (var mark in plan.Stocks.Where(stock => !stock.IsBought).GroupBy(stock => stock.OnHandLabel))
        {
            if (mark.Count() > job.OnHand.Where(stock => stock.Label == mark.Key).Sum(stock => stock.Count))
            {
                return "more pieces on hand are used than there are";
            }
        }

        var bought = plan.Stocks.Where(stock => stock.IsBought).ToList();
        if (bought.Count != plan.Purchases.Sum(purchase => purchase.Count))
        {
            return "the purchase is not what is cut";
        }

        if (Math.Abs(plan.BoughtLength - bought.Sum(stock => stock.Length)) > 1e-6)
        {
            return "the bought length does not add up";
        }

        var parts = cut.Sum(piece => piece.Length) + plan.Leftovers.Sum() + plan.Waste;
        return Math.Abs(parts - plan.UsedLength) > 1e-6 ? "pieces, leftovers and waste are not the whole" : null;
    }

    /// <summary>Stocks that first fit decreasing needs for a job with one length on offer and nothing on hand.</summary>
    public static int FirstFitDecreasing(CutJob job)
    {
        var room = Whole(job.Offers[0].Length) - Whole(job.FirstEndTrim) - Whole(job.FarEndTrim) + Whole(job.Kerf);
        var stocks = new List<long>();
        var pieces = job.Wanted.SelectMany(p => Enumerable.Repeat(Whole(p.Length) + Whole(job.Kerf), p.Count));
        foreach (var piece in pieces.OrderDescending())
        {
            var at = stocks.FindIndex(left => left >= piece);
            if (at < 0)
            {
                stocks.Add(room - piece);
            }
            else
            {
                stocks[at] -= piece;
            }
        }

        return stocks.Count;
    }

    /// <summary>The plan piece by piece, to compare two runs.</summary>
    public static string Text(CutPlan plan) =>
        string.Join(
            '\n',
            plan.Stocks.Select(stock =>
                string.Create(CultureInfo.InvariantCulture, $"{stock.OnHandLabel} {stock.Length} {stock.Leftover}: ")
                + string.Join(
                    ' ',
                    stock.Pieces.Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.Label}@{p.Start}"))
                )
            )
        );

    private static string? StockMistake(CutJob job, CutStock stock)
    {
        var source = job.OnHand.FirstOrDefault(s => s.Label == stock.OnHandLabel);
        if (stock.IsBought ? job.Offers.All(o => o.Length != stock.Length) : source!.Length != stock.Length)
        {
            return "a stock is of no length on offer or on hand";
        }

        var square = source?.AlreadySquare ?? false;
        var end = square ? 0 : job.FirstEndTrim;
        for (var i = 0; i < stock.Pieces.Count; i++)
        {
            var start = end + (i > 0 ? job.Kerf : 0);
            if (Math.Abs(stock.Pieces[i].Start - start) > Grain / 2)
            {
                return "a piece does not start where the saw left off";
            }

            end = stock.Pieces[i].Start + stock.Pieces[i].Length;
        }

        if (end > stock.Length - (square ? 0 : job.FarEndTrim) + 1e-8)
        {
            return "a stock is overfilled";
        }

        return Math.Abs(stock.Leftover - Math.Max(0, stock.Length - end - job.Kerf)) > Grain / 2
            ? "the leftover is not what remains beyond the last cut"
            : null;
    }

    private static long Whole(double metres) => (long)Math.Ceiling(metres * 100_000 - 1e-4);
}
