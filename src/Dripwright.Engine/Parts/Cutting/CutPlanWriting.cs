namespace Dripwright.Engine.Parts;

/// <summary>Turns filled kinds of stock back into labelled pieces at stations.</summary>
internal static class CutPlanWriting
{
    public static CutPlan Plan(CutJob job, CutModel model, List<Batch> batches, long bound, CutMethod method)
    {
        var stocks = Stocks(job, model, batches);
        var pieces = stocks.Sum(stock => stock.Pieces.Sum(piece => CutGrain.Down(piece.Length)));
        var used = batches.Sum(batch => model.Kinds[batch.Kind].Length * batch.Times);
        var leftovers = stocks
            .Where(stock => stock.LeftoverUsable)
            .Select(stock => stock.Leftover)
            .OrderByDescending(length => length)
            .ToList();
        var cost = model.Cost(batches);
        double unit = model.ByPrice ? CutModel.PriceScale : 100_000;
        return new()
        {
            Material = job.Material,
            Stocks = stocks,
            Purchases =
            [
                .. batches
                    .Where(batch => model.Kinds[batch.Kind].Bought)
                    .GroupBy(batch => model.Kinds[batch.Kind].Length)
                    .OrderBy(group => group.Key)
                    .Select(group => new StockPurchase(CutGrain.Metres(group.Key), group.Sum(batch => batch.Times))),
            ],
            BoughtLength = CutGrain.Metres(model.BoughtLength(batches)),
            Price = model.ByPrice ? (decimal)cost / CutModel.PriceScale : null,
            UsedLength = CutGrain.Metres(used),
            Waste = CutGrain.Metres(used - pieces - leftovers.Sum(CutGrain.Down)),
            Leftovers = leftovers,
            Measure = model.ByPrice ? PurchaseMeasure.Price : PurchaseMeasure.Length,
            Purchase = cost / unit,
            LowerBound = bound / unit,
            ProvenOptimal = cost <= bound,
            LongestLeftoverProven = LeftoverShaping.IsLongest(model, batches),
            Method = method,
            SetUps = batches.Count,
            KerfTraps = KerfTraps(job),
        };
    }

    private static List<CutStock> Stocks(CutJob job, CutModel model, List<Batch> batches)
    {
        var kerf = CutGrain.Up(job.Kerf);
        var trims = CutGrain.Up(job.FirstEndTrim) + CutGrain.Up(job.FarEndTrim);
        var labels = job
            .Wanted.GroupBy(piece => CutGrain.Up(piece.Length) + kerf)
            .ToDictionary(
                group => group.Key,
                group => new Queue<string>(group.SelectMany(piece => Enumerable.Repeat(piece.Label, piece.Count)))
            );
        var marks = job
            .OnHand.GroupBy(stock =>
                (CutGrain.Down(stock.Length), CutGrain.Down(stock.Length) - (stock.AlreadySquare ? 0 : trims) + kerf)
            )
            .ToDictionary(
                group => group.Key,
                group => new Queue<(string, bool)>(
                    group.SelectMany(stock => Enumerable.Repeat((stock.Label, stock.AlreadySquare), stock.Count))
                )
            );
        var stocks = new List<CutStock>();
        foreach (
            var batch in batches
                .OrderBy(batch => model.Kinds[batch.Kind].Bought)
                .ThenBy(batch => batch.Kind)
                .ThenBy(model.Rest)
        )
        {
            var kind = model.Kinds[batch.Kind];
            for (var n = 0; n < batch.Times; n++)
            {
                var (mark, square) = kind.Bought ? (null, false) : marks[(kind.Length, kind.Room)].Dequeue();
                stocks.Add(Stock(job, model, batch, mark, square, labels));
            }
        }

        return stocks;
    }

    private static CutStock Stock(
        CutJob job,
        CutModel model,
        Batch batch,
        string? mark,
        bool square,
        Dictionary<long, Queue<string>> labels
    )
    {
        var kerf = CutGrain.Up(job.Kerf);
        var firstTrim = square ? 0 : CutGrain.Up(job.FirstEndTrim);
        var pieces = new List<PlacedPiece>();
        var end = firstTrim;
        for (var i = 0; i < batch.Pieces.Length; i++)
        {
            var size = model.Sizes[i] * model.Grain;
            for (var n = 0; n < batch.Pieces[i]; n++)
            {
                var start = pieces.Count == 0 ? end : end + kerf;
                end = start + size - kerf;
                pieces.Add(new(labels[size].Dequeue(), CutGrain.Metres(start), CutGrain.Metres(size - kerf)));
            }
        }

        var length = model.Kinds[batch.Kind].Length;
        var beyond = length - end;
        var leftover = Math.Max(0, beyond - kerf);
        return new()
        {
            OnHandLabel = mark,
            Length = CutGrain.Metres(length),
            Pieces = pieces,
            Cuts = (firstTrim > 0 ? 1 : 0) + pieces.Count - (beyond == 0 ? 1 : 0),
            Leftover = CutGrain.Metres(leftover),
            LeftoverUsable = leftover > 0 && leftover >= CutGrain.Up(job.MinimumUsableLeftover),
        };
    }

    private static List<KerfTrap> KerfTraps(CutJob job)
    {
        var kerf = CutGrain.Up(job.Kerf);
        var trims = CutGrain.Up(job.FirstEndTrim) + CutGrain.Up(job.FarEndTrim);
        var traps = new List<KerfTrap>();
        if (kerf == 0)
        {
            return traps;
        }

        foreach (var wanted in job.Wanted.GroupBy(piece => CutGrain.Up(piece.Length)).OrderByDescending(g => g.Key))
        {
            var count = wanted.Sum(piece => (long)piece.Count);
            foreach (var stock in job.Offers.Select(offer => CutGrain.Down(offer.Length)).Distinct().Order())
            {
                var room = stock - trims;
                var without = room / wanted.Key;
                var with = (room + kerf) / (wanted.Key + kerf);
                // More than one piece lost is the ordinary price of many cuts, not a trap.
                if (room > 0 && without - with == 1 && count >= without)
                {
                    var shorter = (room + kerf) / without - kerf;
                    traps.Add(
                        new(
                            CutGrain.Metres(wanted.Key),
                            CutGrain.Metres(stock),
                            (int)without,
                            (int)with,
                            CutGrain.Metres(wanted.Key - shorter)
                        )
                    );
                }
            }
        }

        return traps;
    }
}
