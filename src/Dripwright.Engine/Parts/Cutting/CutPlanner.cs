namespace Dripwright.Engine.Parts;

/// <summary>Plans which pieces are sawn from which stocks: least bought, then the longest single leftover.</summary>
/// <remarks>
/// Order of aims: (1) pieces on hand before anything is bought, (2) least bought, by price when every offer has one
/// and by total length otherwise, (3) the longest leftover in one piece, then the next longest. Aim 2 is proven or the
/// plan says how far it may be from the least; aim 3 is a search by exchange between stocks that says when it reached
/// its bound. The same job gives the same plan, in any order of the wanted pieces the same purchase.
/// Method page: docs/methods/cutting.md
/// </remarks>
public static class CutPlanner
{
    /// <summary>A plan for <paramref name="job"/>, or its faults.</summary>
    /// <param name="job">What is wanted, on hand and for sale.</param>
    public static CutResult Plan(CutJob job)
    {
        ArgumentNullException.ThrowIfNull(job);
        var faults = CutJobCheck.Faults(job);
        if (faults.Count > 0)
        {
            return new(null, faults);
        }

        var model = CutModel.From(job);
        var (batches, bound, method) = SolveWithAndWithoutOnHand(model);
        foreach (var batch in batches.Where(batch => model.Kinds[batch.Kind].Missing))
        {
            var kerf = CutGrain.Up(job.Kerf);
            for (var i = 0; i < batch.Pieces.Length; i++)
            {
                if (batch.Pieces[i] > 0)
                {
                    var length = model.Sizes[i] * model.Grain - kerf;
                    var label = job.Wanted.First(piece => CutGrain.Up(piece.Length) == length).Label;
                    faults.Add(CutJobCheck.NotEnoughOnHand(label, batch.Pieces[i] * batch.Times, length));
                }
            }
        }

        if (faults.Count > 0)
        {
            return new(null, faults);
        }

        var shaped = LeftoverShaping.Longest(model, batches);
        return new(CutPlanWriting.Plan(job, model, shaped, bound, method), []);
    }

    /// <summary>An unproven plan must not buy more than it would with nothing on hand.</summary>
    private static (List<Batch> Batches, long Bound, CutMethod Method) SolveWithAndWithoutOnHand(CutModel model)
    {
        if (model.Sizes.Length == 0)
        {
            return ([], 0, CutMethod.Filling);
        }

        var (best, cost, bound) = Solve(model, out var method);
        if (
            cost > bound
            && Array.Exists(model.Kinds, kind => !kind.Bought && kind.Available > 0)
            && model.WithoutOnHand() is { } bare
        )
        {
            var (plain, plainCost, _) = Solve(bare, out var plainMethod);
            if (plainCost < cost)
            {
                (best, method) = (plain, plainMethod);
            }
        }

        return (best, bound, method);
    }

    /// <summary>The best plan found, its cost, and what any plan must cost.</summary>
    internal static (List<Batch> Batches, long Cost, long Bound) Solve(CutModel model, out CutMethod method)
    {
        // With the stand-in for missing stock some kind always holds the largest piece, so a filling exists.
        var available = Array.ConvertAll(model.Kinds, kind => kind.Available);
        var best = StockFilling.Best(model, model.Demand, available)!;
        var bound = new PurchaseBound(model);
        bound.TryPlainWorths(model.Cost(best));
        method = CutMethod.Filling;
        if (model.Cost(best) > bound.Value)
        {
            (best, method) = Improve(model, bound, best);
        }

        return (best, model.Cost(best), bound.Value);
    }

    private static (List<Batch> Best, CutMethod Method) Improve(CutModel model, PurchaseBound bound, List<Batch> best)
    {
        try
        {
            return PatternProgram.Improve(model, bound, best);
        }
        catch (Exception e) when (e is DllNotFoundException or TypeInitializationException or BadImageFormatException)
        {
            // The solver has native code for the common platforms only; elsewhere the plan stands, with its gap.
            return (best, CutMethod.Filling);
        }
    }
}
