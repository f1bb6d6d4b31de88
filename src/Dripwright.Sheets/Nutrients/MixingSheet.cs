using Dripwright.Engine;
using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Nutrients.Planning;
using Dripwright.Engine.Nutrients.Recipe;
using Dripwright.Engine.Units;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Nutrients;

/// <summary>What to weigh, in which order it goes in, and what is kept apart: for the wall beside the tank.</summary>
public static class MixingSheet
{
    private const string AcidCaution =
        "Goggles and gloves. Pour the acid slowly into much water, never water into the acid. Keep it from bleach, metal and the "
        + "nitrate bags.";

    private const string ApartCaution =
        "Calcium nitrate never meets sulfates or phosphates undiluted: gypsum falls out as white sludge and blocks emitters. Rinse the "
        + "bucket and the spoon between them.";

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
        var flow = new Flow(paper.Portrait, "Mixing the feed");
        flow.Heading($"{Large(plan)} for {words.Volume(feed.Volume)} of reservoir")
            .Paragraph(
                $"Strength {feed.Ec} (counted by its cations alone {feed.CationRule}), wanted {feed.Wanted}. "
                    + (
                        feed.PH is { } ph
                            ? $"pH {FeedWords.Number(ph, 1)} once the tank has come to rest with the air, wanted {FeedWords.Number(feed.WantedPH, 1)}. "
                            : ""
                    )
                    + $"The water you fill with reads {feed.FilledEc}. Proportions: {feed.Recipe.Job.Target.Source}."
            )
            .Caution(
                "Tanks, cans and buckets of food-grade plastic, each labelled. Salts and acids locked away from children and animals. "
                    + "Nitrates away from fuel, sawdust and heat. Weigh in grams: spoons lie."
            );
        if (feed.Stock is { } stock)
        {
            Cans(flow, feed, stock, words);
        }
        else
        {
            Tank(flow, feed, words);
        }

        Traces(flow, feed.Recipe);
        ElementBars.Add(flow, feed.Recipe);
        foreach (var cure in feed.Cures)
        {
            flow.Bullet(
                $"{Dripwright.Engine.Chemistry.Formulas.Forms.ShortName(cure.Constituent)} would come to {Signed(cure.MissAfter)} of its target, from {Signed(cure.MissBefore)}, with {cure.Salt.Name}."
            );
        }

        return flow.Build();
    }

    private static void Tank(Flow flow, NutrientPlan feed, QuantityWords words)
    {
        var recipe = feed.Recipe;
        flow.Heading("What to weigh")
            .Table(Weights(recipe.Lines.Select(line => (line.Salt, line.Weighed, line.Measured)), recipe));
        var calcium = Names(recipe, StockPart.A, chelates: false);
        var chelates = Names(recipe, StockPart.A, chelates: true);
        var others = string.Join(
            ", ",
            recipe
                .Lines.Where(line => line.Salt.Part != StockPart.A && line.Salt.Kind != SaltKind.Acid)
                .Select(line => line.Salt.Name)
        );
        flow.Heading("In this order").RestartSteps();
        flow.Step($"Fill the reservoir to about four fifths of {words.Volume(feed.Volume)} and let the pump stir it.");
        Acid(flow, recipe.Lines.Select(line => (line.Salt, line.Measured)), "the reservoir");
        if (others.Length > 0)
        {
            flow.Step($"Dissolve in a bucket of warm water, pour in and let it mix for ten minutes: {others}.");
        }

        if (calcium.Length > 0)
        {
            flow.Step($"In a rinsed bucket dissolve by itself, and pour in slowly: {calcium}.", ApartCaution);
        }

        if (chelates.Length > 0)
        {
            flow.Step($"Last, away from sun and acid: {chelates}.");
        }

        flow.Step("Fill up to the mark, mix for half an hour, read EC and pH, and write both into the log.");
    }

    private static void Cans(Flow flow, NutrientPlan feed, StockPlan stock, QuantityWords words)
    {
        var parts = FeedWords.Number(stock.Job.PartsOfFeed, 0);
        foreach (var can in stock.Cans)
        {
            bool hasAcid = can.Lines.Any(line => line.Salt.Kind == SaltKind.Acid);
            if (can.Name == "B")
            {
                // Each can has its own sheet, to lie beside it.
                flow.NewSheet();
            }

            flow.Heading($"Can {can.Name}: {words.Volume(can.Volume)} of concentrate, 1:{parts}")
                .Table(Weights(can.Lines.Select(line => (line.Salt, line.Weighed, line.Measured)), feed.Recipe))
                .RestartSteps()
                .Step(
                    $"Fill can {can.Name} half with {(hasAcid ? "cold" : "warm")} water{(can.Name == "B" ? ", from a bucket that never held can A" : "")}."
                );
            Acid(flow, can.Lines.Select(line => (line.Salt, line.Measured)), $"can {can.Name}");
            if (hasAcid)
            {
                flow.Step("Pour in warm water, until the can is two thirds full: salts dissolve better in it.");
            }

            flow.Step(
                can.Name == "A"
                    ? "Dissolve one salt after the other, each until the water is clear; the iron chelate last, when it has cooled."
                    : "Dissolve one salt after the other, each until the water is clear: phosphate, then the sulfates, traces last.",
                can.Name == "A" ? ApartCaution : null
            );
            flow.Step(
                $"Fill up to {words.Volume(can.Volume)}, stir, close, label and store in the dark, not colder than planned."
            );
        }

        var dose = feed.Volume * stock.DosePerLitre;
        flow.NewSheet()
            .Heading("From the cans into the tank")
            .RestartSteps()
            .Step($"Fill the reservoir to about nine tenths of {words.Volume(feed.Volume)} and let the pump stir it.")
            .Step(
                $"Pour in {FeedWords.Millilitres(dose)} of A, let it mix for ten minutes, then {FeedWords.Millilitres(dose)} of B with "
                    + $"another cup. An injector is set to {FeedWords.Number(stock.InjectorPercent, 2)} % for each can.",
                "Never pour A and B together undiluted, and never out of the same cup."
            )
            .Step("Fill up to the mark, mix for half an hour, read EC and pH, and write both into the log.");
        flow.Paragraph(
            stock.MostParts is { } most
                ? $"These cans would keep up to 1:{FeedWords.Number(most, 0)} at the coldest you store them."
                : "Even at 1:2 these cans do not keep: see the findings."
        );
    }

    private static void Acid(Flow flow, IEnumerable<(Salt Salt, double? Measured)> lines, string into)
    {
        foreach (var (salt, measured) in lines)
        {
            if (salt.Kind == SaltKind.Acid && measured is { } volume)
            {
                flow.Step(
                    $"Pour {FeedWords.Millilitres(volume)} of {salt.Name} into {into}, in a thin stream while it is stirred.",
                    AcidCaution
                );
            }
        }
    }

    private static Table Weights(
        IEnumerable<(Salt Salt, double Weighed, double? Measured)> lines,
        NutrientRecipe recipe
    )
    {
        var table = new Table(new("Salt"), new("Weigh", Align.Decimal), new("Beware"), new("Done", Align.Tick));
        foreach (
            var (salt, weighed, measured) in lines
                .OrderBy(line => Place(line.Salt))
                .ThenByDescending(line => line.Weighed)
        )
        {
            // A weight that the scale cannot show is not printed as if it could.
            bool coarse = recipe.Coarse.Any(cure => cure.Salt.Key == salt.Key);
            table.Row(
                salt.Name,
                coarse ? "" : FeedWords.Weigh(weighed, measured, recipe.Job.Scale.Step),
                coarse ? $"Too little for your scale: see below. {FeedWords.Cautions(salt)}" : FeedWords.Cautions(salt)
            );
        }

        return table;
    }

    private static void Traces(Flow flow, NutrientRecipe recipe)
    {
        if (recipe.Coarse.Count == 0)
        {
            return;
        }

        flow.Heading("Too little for your scale");
        foreach (var cure in recipe.Coarse)
        {
            flow.Bullet(
                cure.Take is { } take
                    ? $"{cure.Salt.Name}: dissolve {FeedWords.Weigh(cure.Weigh, null, recipe.Job.Scale.Step)} in water to {FeedWords.Litres(cure.Into)} and take {FeedWords.Millilitres(take)} of it."
                    : $"{cure.Salt.Name}: mix at least {FeedWords.Litres(cure.SmallestBatch)} of feed at a time, or find a finer scale."
            );
        }
    }

    // Acid first, then what stands in B, calcium, and chelates at the end: the order in which they go in.
    private static int Place(Salt salt) =>
        salt.Kind == SaltKind.Acid ? 0
        : salt.Kind == SaltKind.Chelate ? 3
        : salt.Part == StockPart.A ? 2
        : 1;

    private static string Names(NutrientRecipe recipe, StockPart part, bool chelates) =>
        string.Join(
            ", ",
            recipe
                .Lines.Where(line => line.Salt.Part == part && (line.Salt.Kind == SaltKind.Chelate) == chelates)
                .Select(line => line.Salt.Name)
        );

    private static string Signed(double miss) => $"{FeedWords.Number(100 * (1 + miss), 0)} %";

    private static string Large(Plan plan) =>
        plan.Rig.Nutrients.Crop switch
        {
            Dripwright.Engine.Rigs.NutrientCrop.SweetPepper => "Sweet pepper",
            var crop => crop.ToString(),
        };
}
