using Dripwright.Engine;
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

        var fallen = rows.FirstOrDefault(r => r.Fallen is not null);
        List<KeyFigure> figures = [];
        if (fallen is not null)
        {
            figures.Add(
                new(
                    Words.Of("figures.stand.heading"),
                    Words.Of("figures.stand.falls"),
                    told.Of(fallen.Fallen!.Loads.Case.Name)
                )
            );
        }
        else
        {
            var worst = rows.MaxBy(r => r.Utilisation)!;
            var weakest = worst.Weakest!.Value;
            figures.Add(
                new(
                    Words.Of("figures.stand.worst"),
                    Words.Of("figures.stand.worst.value", QuantityWords.Percent(weakest.Use.Utilisation)),
                    $"{told.Of(weakest.Tube.Name)}; {SummaryWords.Small(told.Of(weakest.Case.Loads.Case.Name))}"
                )
            );
            figures.Add(
                new(
                    Words.Of("figures.stand.sag"),
                    Words.Of("figures.stand.sag.value", QuantityWords.Number(1 / rows.Max(r => r.LargestSag), "0")),
                    rows.Min(r => r.LowestSlope) is { } slope
                        ? Words.Of("figures.stand.sag.drain", told.Quantities.Slope(slope))
                        : ""
                )
            );
        }

        if (rows.Min(r => r.TipFactor) is { } tip)
        {
            figures.Add(
                new(
                    Words.Of("figures.stand.tip"),
                    Words.Of("figures.stand.tip.value", QuantityWords.Number(tip, "0.#")),
                    Words.Of("figures.stand.tip.remark", "1.5")
                )
            );
        }

        figures.Add(
            new(
                Words.Of("figures.stand.foot"),
                told.Quantities.Force(rows.Max(r => r.LargestFootForce)),
                Words.Of("figures.stand.foot.remark")
            )
        );
        return new(FigureSubject.Stand, Words.Of("figures.stand.heading"), figures);
    }
}
