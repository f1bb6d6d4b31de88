using Dripwright.Engine;
using Dripwright.Engine.Stands.Checks;
using Dripwright.Engine.Units;

namespace Dripwright.Language.Report;

/// <summary>Key figures of the stands.</summary>
internal static class StandFigures
{
    /// <summary>The figures, or null where no row has a stand or its strength was not asked for.</summary>
    public static KeyFigureGroup? Of(Plan plan, PlanWords told)
    {
        if (plan.Stand?.Rows is not [_, ..] rows)
        {
            return null;
        }

        RowStand? fallen = rows.FirstOrDefault(r => r.Fallen is not null);
        List<KeyFigure> figures = [];
        if (fallen is not null)
        {
            figures.Add(new("Stand", "does not stand", told.Of(fallen.Fallen!.Loads.Case.Name)));
        }
        else
        {
            RowStand worst = rows.MaxBy(r => r.Utilisation)!;
            var weakest = worst.Weakest!.Value;
            figures.Add(
                new(
                    "Most used up",
                    QuantityWords.Percent(weakest.Use.Utilisation),
                    $"{told.Of(weakest.Tube.Name)}; {SummaryWords.Small(told.Of(weakest.Case.Loads.Case.Name))}"
                )
            );
            figures.Add(
                new(
                    "Rails sag by",
                    $"1/{QuantityWords.Number(1 / rows.Max(r => r.LargestSag), "0")} of their span",
                    rows.Min(r => r.LowestSlope) is { } slope
                        ? $"the drain keeps {told.Quantities.Slope(slope)} at its flattest"
                        : ""
                )
            );
        }

        if (rows.Min(r => r.TipFactor) is { } tip)
        {
            figures.Add(
                new("Held against tipping", $"{QuantityWords.Number(tip, "0.#")} times", "tie it to a wall below 1.5")
            );
        }

        figures.Add(new("Heaviest foot", told.Quantities.Force(rows.Max(r => r.LargestFootForce)), "on the floor"));
        return new(FigureSubject.Stand, "Stand", figures);
    }
}
