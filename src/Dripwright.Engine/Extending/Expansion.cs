using Dripwright.Engine.Parts;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Extending;

/// <summary>A part of the old rig that the new one does not take.</summary>
/// <param name="Part">Catalogue key.</param>
/// <param name="Name">What to call it in a shop.</param>
/// <param name="Count">Pieces.</param>
/// <param name="Length">[m] Length of each, for what was cut from stock; 0 for pieces.</param>
public sealed record PartLeft(string Part, Phrase Name, int Count, double Length);

/// <summary>What must be bought to get from one rig to another.</summary>
/// <remarks>
/// The old rig is taken apart: its pieces, cut lengths, usable leftovers, spares and what came in whole packs are on hand
/// for the new one, whose parts, cuts and packs are then planned anew. So the list is never short: a cut length serves
/// only where a wanted one fits into it. Assumed: all of the old parts list was bought, and everything can be used again
/// (a glued joint cannot). Salts are no part of it: every fill takes new ones. Method page: docs/methods/expansion.md
/// </remarks>
/// <param name="Buy">What to buy; pieces taken from the old rig stand as on hand.</param>
/// <param name="Cuts">How to cut what is cut for the new rig, lengths from the old one first.</param>
/// <param name="Left">What remains of the old rig.</param>
/// <param name="Cost">What the purchase costs.</param>
public sealed record Expansion(
    IReadOnlyList<PartLine> Buy,
    IReadOnlyList<CutPlan> Cuts,
    IReadOnlyList<PartLeft> Left,
    CostSum Cost
)
{
    /// <summary>The expansion from one plan to another.</summary>
    /// <param name="from">The rig that stands, built by its parts list.</param>
    /// <param name="to">The rig wanted.</param>
    public static Expansion Of(Plan from, Plan to)
    {
        ArgumentNullException.ThrowIfNull(from);
        ArgumentNullException.ThrowIfNull(to);
        List<OnHand> held = [.. OldRigParts.Of(from, to.Rig.Feed.MicrotubeLength)];
        var rig = to.Rig with { OnHand = [.. held, .. OldRigParts.NotUsedUp(to.Rig.OnHand, from)] };
        var plan = PartsPlanner.Plan(rig, to.Layout, to.CropWire, to.Printed, null);
        return new Expansion(
            [.. plan.Lines.Where(line => line.Buy > 0)],
            plan.Cuts,
            [.. Remaining(held, plan, NamesOf(from))],
            plan.Cost
        );
    }

    private static Dictionary<string, Phrase> NamesOf(Plan plan) =>
        plan.Parts.Lines.GroupBy(line => line.Part).ToDictionary(group => group.Key, group => group.First().Name);

    private static IEnumerable<PartLeft> Remaining(List<OnHand> held, PartsPlan plan, Dictionary<string, Phrase> names)
    {
        var used = plan
            .Lines.Where(line => line.EachLength <= 0)
            .GroupBy(line => line.Part)
            .ToDictionary(group => group.Key, group => group.Sum(line => line.OnHand));
        foreach (var item in held)
        {
            var count = item.Count;
            if (item.Length is { } length)
            {
                count -= Taken(plan, names[item.Part], length);
            }
            else if (used.TryGetValue(item.Part, out var taken))
            {
                count -= taken;
            }

            if (count > 0)
            {
                yield return new PartLeft(item.Part, names[item.Part], count, item.Length ?? 0);
            }
        }
    }

    private static int Taken(PartsPlan plan, Phrase material, double length) =>
        plan
            .Cuts.Where(cut => Phrase.Plain(cut.Material) == material)
            .SelectMany(cut => cut.Stocks)
            .Count(stock => !stock.IsBought && stock.Pieces.Count > 0 && OldRigParts.IsSame(stock.Length, length));
}
