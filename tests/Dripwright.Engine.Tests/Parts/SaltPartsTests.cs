using System.Text;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Parts;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Tests.Planning;
using Dripwright.Language;

namespace Dripwright.Engine.Tests.Parts;

/// <summary>The salts of the first fill on the shopping list, in one currency.</summary>
public sealed class SaltPartsTests
{
    private static Plan Plan(string nutrients, string own = "{}")
    {
        var catalogue = CatalogueReader.Read(Encoding.UTF8.GetBytes(own), "own", PartsCatalogue.Default);
        Assert.Empty(catalogue.Faults);
        var reading = RigReader.Read($$"""{ "nutrients": { {{nutrients}} } }""", "a", catalogue.Catalogue!);
        Assert.True(reading.Resolved is not null, string.Join("\n", reading.Faults.Told()));
        return Planner.Of(reading.Resolved, reading.Assumed, new PlanOptions { Draws = 0, Strength = false });
    }

    private static List<PartLine> Salts(Plan plan) => [.. plan.Parts.Lines.Where(line => line.Section == "nutrients")];

    [Fact]
    public void Every_salt_of_the_recipe_is_listed_in_whole_grams_never_short()
    {
        var plan = Plan(""" "crop": "tomato", "pureShare": "100 %" """);
        var lines = Salts(plan);
        Assert.Equal(plan.Nutrients!.Recipe.Lines.Select(line => line.Salt.Key), lines.Select(line => line.Part));
        foreach ((var weighed, var line) in plan.Nutrients.Recipe.Lines.Zip(lines))
        {
            Assert.Equal("g", line.Unit);
            Assert.InRange(line.Needed, 1000 * weighed.Mass, (1000 * weighed.Mass) + 1.2);
            Assert.Equal((0, line.Needed), (line.OnHand, line.Buy));
            Assert.Null(line.Price);
        }
    }

    [Fact]
    public void A_price_of_a_kilogram_reaches_the_list_and_the_sum_in_a_group_of_its_own()
    {
        const string Priced =
            """ "crop": "tomato", "pureShare": "100 %", "salts": [ { "salt": "potassium-nitrate", "pricePerKg": 2.40 }, { "salt": "calcium-nitrate-15.5", "pricePerKg": 1 }, { "salt": "monopotassium-phosphate" } ] """;
        var plan = Plan(Priced);
        var weighed = plan.Nutrients!.Recipe.Lines.Single(line => line.Salt.Key == "potassium-nitrate");
        PartLine line = Salts(plan).Single(line => line.Part == "potassium-nitrate");
        Assert.Equal(2.4 * weighed.Mass, (double)line.Price!.Value, 0.006);
        var salts = plan.Parts.NutrientsCost;
        Assert.Equal((2, 1), (salts.LinesPriced, salts.LinesUnpriced));
        Assert.Equal(Salts(plan).Sum(salt => salt.Price ?? 0), salts.Known);
        var without = Plan(""" "crop": "none" """).Parts.Cost;
        Assert.Equal(without.Known + salts.Known, plan.Parts.Cost.Known);
        Assert.Equal("USD", plan.Parts.Currency);
    }

    [Fact]
    public void A_pack_in_the_own_catalogue_prices_its_share_of_a_fill()
    {
        var plan = Plan(
            """ "crop": "tomato", "pureShare": "100 %" """,
            """{ "salts": [ { "key": "potassium-nitrate", "pack": "25 kg", "price": 50 } ] }"""
        );
        PartLine line = Salts(plan).Single(line => line.Part == "potassium-nitrate");
        Assert.Equal(2.0 * line.Needed / 1000, (double)line.Price!.Value, 0.01);
    }

    [Fact]
    public void What_is_at_hand_is_not_bought_and_acid_is_poured()
    {
        var plan = Plan(
            $""" "crop": "tomato", "acid": "nitric-acid-60", "salts": [ {"{ \"salt\": \"potassium-nitrate\", \"have\": \"5 kg\" }"}, {"{ \"salt\": \"calcium-nitrate-15.5\" }"} ], {NutrientPlanTests.Hard} """
        );
        var mine = Salts(plan).Single(line => line.Part == "potassium-nitrate");
        Assert.Equal((mine.Needed, 0, 0), (mine.OnHand, mine.Buy, mine.Packs));
        var acid = Salts(plan).Single(line => line.Part == "nitric-acid-60");
        Assert.Equal("mL", acid.Unit);
        Assert.InRange(acid.Needed, plan.Nutrients!.AcidVolume * 1e6, (plan.Nutrients.AcidVolume * 1e6) + 2);
    }

    [Fact]
    public void In_another_currency_no_dollar_price_of_ours_is_added_to_the_growers()
    {
        var plan = Plan(
            """ "crop": "none" """,
            """{ "currency": "EUR", "pots": [ { "key": "pot-square-3-gal", "price": 3, "source": "the shop" } ] }"""
        );
        Assert.Equal("EUR", plan.Parts.Currency);
        Assert.False(plan.Parts.Cost.AnyInvented);
        Assert.Equal(30m, plan.Parts.Cost.Known);
    }

    [Theory]
    [InlineData("\"Euro\"")]
    [InlineData("\"eur\"")]
    [InlineData("7")]
    public void A_currency_is_three_capital_letters(string currency)
    {
        var file = Encoding.UTF8.GetBytes($$"""{ "currency": {{currency}} }""");
        Assert.Equal("currency", Assert.Single(CatalogueReader.Read(file, "own", PartsCatalogue.Default).Faults).Path);
    }
}
