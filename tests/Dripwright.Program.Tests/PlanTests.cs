using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using Dripwright.Terminal;

namespace Dripwright.Program.Tests;

public sealed partial class PlanTests
{
    [Fact]
    public async Task The_plan_as_json_parses_and_is_the_same_in_every_culture()
    {
        var plain = await Call.Of("plan", Repository.School, "--json");
        var before = CultureInfo.CurrentCulture;
        var comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        comma.NumberFormat.NumberDecimalSeparator = ",";
        comma.NumberFormat.NumberGroupSeparator = ".";
        comma.NumberFormat.NegativeSign = "−";
        CultureInfo.CurrentCulture = comma;
        try
        {
            var german = await Call.Of("plan", Repository.School, "--json");

            Assert.Equal(Exit.Good, plain.Exit);
            Assert.Equal(plain.Out, german.Out);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }

        using var document = JsonDocument.Parse(plain.Out);
        Assert.Equal(1, document.RootElement.GetProperty("format").GetInt32());
    }

    [Fact]
    public async Task The_summary_is_the_same_in_every_culture()
    {
        var plain = await Call.Of("plan", Repository.FoodBank);
        var before = CultureInfo.CurrentCulture;
        var comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        comma.NumberFormat.NumberDecimalSeparator = ",";
        CultureInfo.CurrentCulture = comma;
        try
        {
            Assert.Equal(plain.Out, (await Call.Of("plan", Repository.FoodBank)).Out);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public async Task Every_number_of_the_json_says_its_unit_in_its_name_or_counts_things()
    {
        using var document = JsonDocument.Parse((await Call.Of("plan", Repository.School, "--json")).Out);
        string[] units =
        [
            "Metres",
            "Millimetres",
            "Litres",
            "LitresPerHour",
            "LitresPerDay",
            "Kilopascals",
            "Newtons",
            "MetresPerSecond",
            "Watts",
            "KilowattHours",
            "Kelvins",
            "Kilograms",
            "Grams",
            "Millilitres",
            "MilligramsPerLitre",
            "DecisiemensPerMetre",
            "Seconds",
            "Hours",
            "Days",
            "Share",
            "Ratio",
        ];
        string[] counts =
        [
            "format",
            "row",
            "pot",
            "emitter",
            "hole",
            "leg",
            "modules",
            "plants",
            "emitters",
            "emptyPots",
            "draws",
            "counts",
            "lowRows",
            "steps",
            "pondingPots",
            "firstToSpill",
            "needed",
            "spares",
            "onHand",
            "buy",
            "packs",
            "packSize",
            "linesPriced",
            "linesUnpriced",
            "count",
            "setUps",
            "cuts",
            "day",
            "days",
            "changes",
            "withoutKerf",
            "withKerf",
            // Stands beside its "unit".
            "value",
        ];

        foreach (var (name, value) in Properties(document.RootElement))
        {
            var number =
                value.ValueKind == JsonValueKind.Number
                || (
                    value.ValueKind == JsonValueKind.Array
                    && value.EnumerateArray().Any(item => item.ValueKind == JsonValueKind.Number)
                );
            if (number)
            {
                Assert.True(
                    counts.Contains(name) || units.Any(unit => name.EndsWith(unit, StringComparison.Ordinal)),
                    $"'{name}' says no unit."
                );
            }
        }
    }

    [Theory]
    [InlineData("school/greenhouse.rig.json")]
    [InlineData("food-bank/back-room.rig.json")]
    [InlineData("awkward/gravity.rig.json")]
    [InlineData("awkward/closed-loop.rig.json")]
    public async Task Every_name_in_the_json_is_explained_in_the_handbook(string demo)
    {
        var path = Path.Combine(Repository.Root, "demo", demo);
        using var document = JsonDocument.Parse((await Call.Of("plan", path, "--json")).Out);
        var page = await File.ReadAllTextAsync(
            Path.Combine(Repository.Root, "docs", "handbook", "plan-json.md"),
            TestContext.Current.CancellationToken
        );
        var known = Code().Matches(page).Select(match => match.Groups["name"].Value).ToHashSet(StringComparer.Ordinal);

        var unknown = Properties(document.RootElement).Select(one => one.Name).Distinct().Except(known).ToList();

        Assert.Empty(unknown);
    }

    [Fact]
    public async Task Draws_can_be_left_out()
    {
        using var document = JsonDocument.Parse(
            (await Call.Of("plan", Repository.School, "--json", "--no-simulation")).Out
        );

        Assert.Equal(JsonValueKind.Null, document.RootElement.GetProperty("feed").GetProperty("scatter").ValueKind);
    }

    [Fact]
    public async Task The_summary_keeps_to_eighty_columns_and_leaves_no_spaces_at_line_ends()
    {
        foreach (var path in new[] { Repository.School, Repository.FoodBank })
        {
            var call = await Call.Of("plan", path);

            Assert.Equal(Exit.Good, call.Exit);
            Assert.Empty(call.Error);
            Assert.All(call.Out.Split('\n'), line => Assert.InRange(line.Length, 0, 80));
            Assert.DoesNotContain(" \n", call.Out, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("Pots and their water")]
    [InlineData("Operating point")]
    [InlineData("Runs back at stop")]
    [InlineData("Lasts")]
    [InlineData("To buy")]
    [InlineData("To drill")]
    [InlineData("Assumed")]
    public async Task The_summary_tells_what_a_grower_asks_first(string words) =>
        Assert.Contains(words, (await Call.Of("plan", Repository.School)).Out, StringComparison.Ordinal);

    [Fact]
    public async Task Each_rig_is_told_in_its_own_units()
    {
        var school = (await Call.Of("plan", Repository.School)).Out;
        var foodBank = (await Call.Of("plan", Repository.FoodBank)).Out;

        Assert.Contains(" gph", school, StringComparison.Ordinal);
        Assert.DoesNotContain(" L/h", Figures(school), StringComparison.Ordinal);
        Assert.Contains(" L/h", foodBank, StringComparison.Ordinal);
        Assert.DoesNotContain(" gph", Figures(foodBank), StringComparison.Ordinal);
    }

    // Key figures only: names of parts and rules may carry the other system's units.
    private static string Figures(string summary) =>
        string.Join(
            '\n',
            summary.Split('\n').Where(line => line.StartsWith("  Least water", StringComparison.Ordinal))
        );

    private static IEnumerable<(string Name, JsonElement Value)> Properties(JsonElement element)
    {
        if (element.ValueKind == JsonValueKind.Object)
        {
            foreach (var property in element.EnumerateObject())
            {
                yield return (property.Name, property.Value);
                foreach (var inner in Properties(property.Value))
                {
                    yield return inner;
                }
            }
        }
        else if (element.ValueKind == JsonValueKind.Array)
        {
            foreach (var inner in element.EnumerateArray().SelectMany(Properties))
            {
                yield return inner;
            }
        }
    }

    [GeneratedRegex("`(?<name>[A-Za-z0-9]+)`", RegexOptions.NonBacktracking | RegexOptions.ExplicitCapture)]
    private static partial Regex Code();
}
