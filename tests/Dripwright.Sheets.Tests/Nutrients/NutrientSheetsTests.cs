using Dripwright.Sheets.Model;
using Dripwright.Sheets.Nutrients;
using Dripwright.Sheets.Tests.Bench;

namespace Dripwright.Sheets.Tests.Nutrients;

public sealed class NutrientSheetsTests
{
    private static string Words(string rig, string title) =>
        string.Join(
            ' ',
            BuildPack
                .Sheets(BenchPlans.Of(rig), new())
                .Where(sheet => sheet.Title == title)
                .SelectMany(SheetText.Of)
                .Select(text => text.Text.Content)
        );

    [Fact]
    public void A_rig_without_a_feed_has_none_of_these_sheets()
    {
        var plan = BenchPlans.Demo(BenchPlans.Large);
        Assert.Empty(MixingSheet.Draw(plan, Paper.A4));
        Assert.Empty(StockLabels.Draw(plan, Paper.A4));
        Assert.Empty(TankLog.Draw(plan, Paper.A4));
    }

    [Fact]
    public void Cans_are_mixed_with_the_acid_first_and_its_caution_beside_it()
    {
        var text = Words(BenchPlans.TextOf(BenchPlans.FoodBank), "Mixing the nutrients");
        var caution = text.IndexOf("Pour the acid slowly", StringComparison.Ordinal);
        var acid = text.IndexOf("of Nitric acid", StringComparison.Ordinal);
        Assert.InRange(caution, 0, acid);
        Assert.Contains("Never pour A and B together", text, StringComparison.Ordinal);
        Assert.Contains("food-grade", text, StringComparison.Ordinal);
        Assert.Contains("away from children", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Straight_into_the_tank_calcium_goes_in_by_itself_after_the_sulfates()
    {
        var text = Words("""{ "nutrients": { "crop": "cucumber" } }""", "Mixing the nutrients");
        var sulfates = text.IndexOf("Dissolve in a bucket", StringComparison.Ordinal);
        var calcium = text.IndexOf("In a rinsed bucket", StringComparison.Ordinal);
        Assert.InRange(sulfates, 0, calcium);
    }

    [Fact]
    public void Each_can_and_the_acid_get_a_label()
    {
        var text = Words(BenchPlans.TextOf(BenchPlans.FoodBank), "Labels");
        Assert.Contains("Never mix undiluted with stock tank B", text, StringComparison.Ordinal);
        Assert.Contains("Never mix undiluted with stock tank A", text, StringComparison.Ordinal);
        Assert.Contains("ACID", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Raw_coir_is_treated_only_where_it_is_raw()
    {
        Assert.Contains(
            "Unbuffered coir",
            Words("""{ "nutrients": { "crop": "tomato", "rawCoir": true } }""", "Nutrient log"),
            StringComparison.Ordinal
        );
        Assert.DoesNotContain(
            "Unbuffered coir",
            Words("""{ "nutrients": { "crop": "tomato" } }""", "Nutrient log"),
            StringComparison.Ordinal
        );
    }
}
