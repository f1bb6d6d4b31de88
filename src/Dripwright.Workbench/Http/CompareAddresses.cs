using Dripwright.Engine;
using Dripwright.Engine.Extending;
using Dripwright.Engine.Rigs;
using Dripwright.Language;
using Dripwright.Workbench.Hosting;
using Dripwright.Workbench.Work;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Dripwright.Workbench.Http;

/// <summary>From one revision of a rig to another: what changed, what to buy, what is left over.</summary>
internal static class CompareAddresses
{
    /// <summary>A part to buy.</summary>
    /// <param name="Part">Catalogue key.</param>
    /// <param name="Name">What to call it in a shop.</param>
    /// <param name="For">Where it goes.</param>
    /// <param name="EachMillimetres">Length of each, for what is cut from stock; 0 for pieces.</param>
    /// <param name="Needed">Pieces needed, spares included.</param>
    /// <param name="Have">Of these there already.</param>
    /// <param name="Buy">Pieces to buy.</param>
    internal sealed record BuyLine(
        string Part,
        string Name,
        string For,
        double EachMillimetres,
        int Needed,
        int Have,
        int Buy
    );

    /// <summary>A part of the one rig that the other does not take.</summary>
    internal sealed record LeftLine(string Part, string Name, int Count, double EachMillimetres);

    /// <summary>The way from one to the other.</summary>
    /// <param name="Changes">What differs in the rig files.</param>
    /// <param name="Buy">What to buy; what the one rig has is used first.</param>
    /// <param name="Left">What remains of it.</param>
    /// <param name="Cost">What the purchase costs, as far as there are prices.</param>
    /// <param name="Currency">Of the cost.</param>
    /// <param name="LinesUnpriced">Lines to buy without a price.</param>
    internal sealed record CompareAnswer(
        IReadOnlyList<RigChange> Changes,
        IReadOnlyList<BuyLine> Buy,
        IReadOnlyList<LeftLine> Left,
        decimal Cost,
        string Currency,
        int LinesUnpriced
    );

    public static void Map(RouteGroupBuilder api) =>
        api.MapGet("/rigs/{id:int}/compare", Compare)
            .WithTags(RigRoutes.KeptTag)
            .WithName("CompareRig")
            .WithSummary("What must be bought to get from one saved revision to another, or to the draft")
            .Produces<CompareAnswer>()
            .ProducesProblem(404)
            .ProducesProblem(422)
            .ProducesProblem(503);

    private static async Task<IResult> Compare(
        HttpContext context,
        RequestWork work,
        GardenOfRequest here,
        int id,
        int from,
        int? to
    )
    {
        var before = await Planned(new RigQuestion(context, work, here, id, from));
        var after = await Planned(new RigQuestion(context, work, here, id, to));
        var steps = await work.Run(_ => Expansion.Of(before, after), context.RequestAborted);
        var told = new PlanWords(after.Rig.Units);
        return Results.Ok(
            new CompareAnswer(
                RigDifference.Of(before.Rig, after.Rig),
                [
                    .. steps.Buy.Select(line => new BuyLine(
                        line.Part,
                        told.Of(line.Name),
                        told.Of(line.Where),
                        Millimetres(line.EachLength),
                        line.Needed + line.Spares,
                        line.OnHand,
                        line.Buy
                    )),
                ],
                [
                    .. steps.Left.Select(left => new LeftLine(
                        left.Part,
                        told.Of(left.Name),
                        left.Count,
                        Millimetres(left.Length)
                    )),
                ],
                steps.Cost.Known,
                after.Parts.Currency,
                steps.Cost.LinesUnpriced
            )
        );
    }

    private static Task<Plan> Planned(RigQuestion asked) => asked.Of(draws: false, (plan, _) => plan);

    private static double Millimetres(double metres) => Math.Round(metres * 1000, 1);
}
