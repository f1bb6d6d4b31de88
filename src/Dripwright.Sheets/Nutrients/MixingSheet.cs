using Dripwright.Engine;
using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Nutrients.Correcting;
using Dripwright.Engine.Nutrients.Planning;
using Dripwright.Engine.Nutrients.Recipe;
using Dripwright.Engine.Tending;
using Dripwright.Engine.Units;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Nutrients;

/// <summary>What to weigh, in which order it goes in, and what is kept apart: for the wall beside the tank.</summary>
public static class MixingSheet
{
    private static string AcidCaution => Words.Of("bench.mixing.caution.acid");

    private static string ApartCaution => Words.Of("bench.mixing.caution.apart");

    /// <summary>The sheets; none where no feed is asked for.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="paper">Size of the sheets; they stand upright.</param>
    public static IReadOnlyList<SheetDraft> Draw(Plan plan, Paper paper)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(paper);
        if (plan.Nutrients is not { } feed)
        {
            return [];
        }

        var words = new QuantityWords(plan.Rig.Units);
        var told = new PlanWords(plan.Rig.Units);
        var flow = new Flow(paper.Portrait, Words.Of("bench.mixing.title"));
        flow.Heading(Words.Of("bench.mixing.heading", feed.Crop.Name, words.Volume(feed.Volume)))
            .Paragraph(
                string.Join(
                    ' ',
                    [
                        Words.Of("bench.mixing.ec", feed.Ec, feed.CationRule, feed.Wanted),
                        .. feed.PH is { } ph
                            ? new[]
                            {
                                Words.Of(
                                    "bench.mixing.ph",
                                    FeedWords.Number(ph, 1),
                                    FeedWords.Number(feed.WantedPH, 1)
                                ),
                            }
                            : [],
                        // While the carbon dioxide that acid sets free is still in it, the pen reads something else.
                        .. feed is { MixedPH: { } mixed, PH: { } rested } && Math.Abs(mixed - rested) > 0.1
                            ? new[] { Words.Of("bench.mixing.ph.mixed", FeedWords.Number(mixed, 1)) }
                            : [],
                        Words.Of("bench.mixing.water", feed.FilledEc),
                        Words.Of("bench.mixing.source", told.Of(feed.TargetSource)),
                    ]
                )
            )
            .Caution(Words.Of("bench.mixing.caution"));
        if (feed.Stock is { } stock)
        {
            Cans(flow, feed, stock, words, told);
        }
        else
        {
            Tank(flow, plan, feed, told);
        }

        Traces(flow, feed.Recipe, told);
        ElementBars.Add(flow, feed.Recipe, told);
        foreach (var cure in feed.Cures)
        {
            flow.Bullet(
                Words.Of(
                    "bench.mixing.cure",
                    told.Of(Elements.Short(cure.Constituent, feed.Recipe.Job.Target.NitrogenIsSum)),
                    Signed(cure.MissAfter),
                    Signed(cure.MissBefore),
                    cure.Salt.Name
                )
            );
        }

        return flow.Build();
    }

    private static void Tank(Flow flow, Plan plan, NutrientPlan feed, PlanWords told)
    {
        var recipe = feed.Recipe;
        flow.Heading(Words.Of("bench.mixing.weigh"))
            .Table(Weights(recipe.Lines.Select(line => (line.Salt, line.Weighed, line.Measured)), recipe, told));
        var calcium = Names(recipe, StockPart.A, chelates: false);
        var chelates = Names(recipe, StockPart.A, chelates: true);
        var others = string.Join(
            ", ",
            recipe
                .Lines.Where(line => line.Salt.Part != StockPart.A && line.Salt.Kind != SaltKind.Acid)
                .Select(line => line.Salt.Name)
        );
        flow.Heading(Words.Of("bench.mixing.order")).RestartSteps();
        flow.Step(
            string.Join(
                ' ',
                [
                    Words.Of("bench.mixing.step.four", told.Of(WaterPoured.Of(plan, feed.Volume))),
                    .. WaterPoured.Mark(plan, feed.Volume).Select(told.Of),
                ]
            )
        );
        Acid(flow, recipe.Lines.Select(line => (line.Salt, line.Measured)), null);
        if (others.Length > 0)
        {
            flow.Step(Words.Of("bench.mixing.step.others", others));
        }

        if (calcium.Length > 0)
        {
            flow.Step(Words.Of("bench.mixing.step.calcium", calcium), ApartCaution);
        }

        if (chelates.Length > 0)
        {
            flow.Step(Words.Of("bench.mixing.step.chelates", chelates));
        }

        flow.Step(Words.Of("bench.mixing.step.read"));
    }

    private static void Cans(Flow flow, NutrientPlan feed, StockPlan stock, QuantityWords words, PlanWords told)
    {
        var parts = FeedWords.Number(stock.Job.PartsOfFeed, 0);
        foreach (var can in stock.Cans)
        {
            var hasAcid = can.Lines.Any(line => line.Salt.Kind == SaltKind.Acid);
            if (can.Name == "B")
            {
                // Each can has its own sheet, to lie beside it.
                flow.NewSheet();
            }

            flow.Heading(Words.Of("bench.mixing.tank", can.Name, words.Volume(can.Volume), parts))
                .Table(Weights(can.Lines.Select(line => (line.Salt, line.Weighed, line.Measured)), feed.Recipe, told))
                .RestartSteps()
                .Step(
                    Words.Of(hasAcid ? "bench.mixing.step.half.cold" : "bench.mixing.step.half.warm", can.Name)
                        + (can.Name == "B" ? " " + Words.Of("bench.mixing.step.half.apart") : "")
                );
            Acid(flow, can.Lines.Select(line => (line.Salt, line.Measured)), can.Name);
            if (hasAcid)
            {
                flow.Step(Words.Of("bench.mixing.step.warm"));
            }

            flow.Step(
                can.Name == "A" ? Words.Of("bench.mixing.step.dissolve.a") : Words.Of("bench.mixing.step.dissolve.b"),
                can.Name == "A" ? ApartCaution : null
            );
            flow.Step(Words.Of("bench.mixing.step.store", words.Volume(can.Volume)));
        }

        var dose = feed.Volume * stock.DosePerLitre;
        flow.NewSheet()
            .Heading(Words.Of("bench.mixing.dose"))
            .RestartSteps()
            .Step(Words.Of("bench.mixing.step.nine", words.Volume(feed.Volume)))
            .Step(
                Words.Of(
                    "bench.mixing.step.dose",
                    FeedWords.Millilitres(dose),
                    FeedWords.Number(stock.InjectorPercent, 2)
                ),
                Words.Of("bench.mixing.caution.cup")
            )
            .Step(Words.Of("bench.mixing.step.read"));
        flow.Paragraph(
            stock.MostParts is { } most
                ? Words.Of("bench.mixing.keep", FeedWords.Number(most, 0))
                : Words.Of("bench.mixing.keepnot")
        );
    }

    private static void Acid(Flow flow, IEnumerable<(Salt Salt, double? Measured)> lines, string? tank)
    {
        foreach (var (salt, measured) in lines)
        {
            if (salt.Kind == SaltKind.Acid && measured is { } volume)
            {
                flow.Step(
                    tank is null
                        ? Words.Of("bench.mixing.step.acid.reservoir", FeedWords.Millilitres(volume), salt.Name)
                        : Words.Of("bench.mixing.step.acid.tank", FeedWords.Millilitres(volume), salt.Name, tank),
                    AcidCaution
                );
            }
        }
    }

    private static Table Weights(
        IEnumerable<(Salt Salt, double Weighed, double? Measured)> lines,
        NutrientRecipe recipe,
        PlanWords told
    )
    {
        var table = new Table(
            new(Words.Of("bench.mixing.column.salt")),
            new(Words.Of("bench.mixing.column.weigh"), Align.Decimal),
            new(Words.Of("bench.mixing.column.beware")),
            new(Words.Of("bench.mixing.column.done"), Align.Tick)
        );
        foreach (
            var (salt, weighed, measured) in lines
                .OrderBy(line => MixingOrder.Of(line.Salt))
                .ThenByDescending(line => line.Weighed)
        )
        {
            // A weight that the scale cannot show is not printed as if it could.
            var coarse = recipe.Coarse.Any(cure => cure.Salt.Key == salt.Key);
            table.Row(
                salt.Name,
                coarse ? "" : FeedWords.Weigh(weighed, measured, recipe.Job.Scale.Step),
                coarse ? $"{Words.Of("bench.mixing.coarse")} {told.Cautions(salt)}" : told.Cautions(salt)
            );
        }

        return table;
    }

    // What the scale cannot weigh comes out of a bottle that is made once.
    private static void Traces(Flow flow, NutrientRecipe recipe, PlanWords told)
    {
        if (recipe.Coarse.Count == 0)
        {
            return;
        }

        flow.Heading(Words.Of("bench.mixing.coarse.title"));
        var doses = new SaltDose(recipe, 1).Weigh(recipe.Job.Volume).Where(salt => salt.Bottle is not null);
        foreach (var dose in doses)
        {
            flow.Bullet($"{told.Of(dose.Bottle!.Text)} {Words.Of("bench.mixing.coarse.take", told.Of(dose.Text))}");
        }
    }

    private static string Names(NutrientRecipe recipe, StockPart part, bool chelates) =>
        string.Join(
            ", ",
            recipe
                .Lines.Where(line => line.Salt.Part == part && (line.Salt.Kind == SaltKind.Chelate) == chelates)
                .Select(line => line.Salt.Name)
        );

    private static string Signed(double miss) => $"{FeedWords.Number(100 * (1 + miss), 0)} %";
}
