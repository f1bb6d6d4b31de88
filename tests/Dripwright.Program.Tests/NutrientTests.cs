using System.Text.Json;
using Dripwright.Terminal;

namespace Dripwright.Program.Tests;

public sealed class NutrientTests
{
    [Fact]
    public async Task Mix_says_what_to_weigh_into_each_can()
    {
        var call = await Call.Of("mix", Repository.FoodBank);

        Assert.Equal(Exit.Good, call.Exit);
        Assert.Contains("Stock tank A, filled up to 20 L, 1:100:", call.Out, StringComparison.Ordinal);
        Assert.Contains("Calcium nitrate", call.Out, StringComparison.Ordinal);
        Assert.Contains("mL  Nitric acid 60 %", call.Out, StringComparison.Ordinal);
        Assert.Contains("never water into acid", call.Out, StringComparison.Ordinal);
        Assert.All(call.Out.Split('\n'), line => Assert.InRange(line.Length, 0, 80));
    }

    [Fact]
    public async Task Mix_as_json_is_what_the_whole_plan_says()
    {
        using var alone = JsonDocument.Parse((await Call.Of("mix", Repository.FoodBank, "--json")).Out);
        using var whole = JsonDocument.Parse(
            (await Call.Of("plan", Repository.FoodBank, "--json", "--no-simulation")).Out
        );

        var part = whole.RootElement.GetProperty("nutrients");
        Assert.True(JsonElement.DeepEquals(alone.RootElement, part));
        var wanted = part.GetProperty("wantedDecisiemensPerMetre").GetDouble();
        Assert.Equal(wanted, part.GetProperty("reachedDecisiemensPerMetre").GetDouble(), 0.03 * wanted);
    }

    [Fact]
    public async Task A_rig_without_nutrients_says_how_to_ask_for_one()
    {
        var call = await Call.Of("mix", Path.Combine(Repository.Root, "demo", "awkward", "one-pot.rig.json"));

        Assert.Equal(Exit.FaultyFile, call.Exit);
        Assert.Contains("\"crop\"", call.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_weak_tank_is_given_A_before_B_with_readings_between()
    {
        var call = await Call.Of(
            "adjust-tank",
            Repository.FoodBank,
            "--ec",
            "1.8 dS/m",
            "--ph",
            "6.4",
            "--volume",
            "200 L"
        );

        Assert.Equal(Exit.Good, call.Exit);
        var a = call.Out.IndexOf("of stock A", StringComparison.Ordinal);
        Assert.InRange(a, 0, call.Out.IndexOf("of stock B", StringComparison.Ordinal));
        Assert.Contains("about 2.40", call.Out, StringComparison.Ordinal);
        Assert.Contains("What adding salts or water cannot fix", call.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_meter_that_shows_ppm_is_asked_its_scale()
    {
        string[] reading = ["adjust-tank", Repository.FoodBank, "--ph", "6.4", "--volume", "200 L", "--ec", "900 ppm"];
        var without = await Call.Of(reading);
        var with = await Call.Of([.. reading, "--meter-scale", "500"]);
        var plain = await Call.Of(
            "adjust-tank",
            Repository.FoodBank,
            "--ph",
            "6.4",
            "--volume",
            "200 L",
            "--ec",
            "1.8 dS/m"
        );

        Assert.Equal(Exit.WrongCall, without.Exit);
        Assert.Contains("scale of the meter", without.Error, StringComparison.Ordinal);
        Assert.Equal(Exit.Good, plain.Exit);
        Assert.Equal(plain.Out, with.Out);
    }

    [Theory]
    [InlineData("--ec", "40 dS/m")]
    [InlineData("--ph", "6,4,0")]
    [InlineData("--ph", "NaN")]
    [InlineData("--ph", "15")]
    [InlineData("--volume", "20 furlongs")]
    [InlineData("--volume", "9000 L")]
    public async Task An_impossible_reading_is_explained(string option, string value)
    {
        var given = new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["--ec"] = "1.8 dS/m",
            ["--ph"] = "6.4",
            ["--volume"] = "200 L",
            [option] = value,
        };
        var call = await Call.Of([
            "adjust-tank",
            Repository.FoodBank,
            .. given.SelectMany(pair => new[] { pair.Key, pair.Value }),
        ]);

        Assert.Equal(Exit.WrongCall, call.Exit);
        Assert.NotEmpty(call.Error);
        Assert.Empty(call.Out);
    }

    [Fact]
    public async Task Two_readings_say_what_was_taken_and_the_top_up()
    {
        string[] readings =
        [
            "--first-ec",
            "2.4 dS/m",
            "--first-volume",
            "220 L",
            "--second-ec",
            "2.6 dS/m",
            "--second-volume",
            "150 L",
        ];
        var call = await Call.Of(["uptake", Repository.FoodBank, .. readings, "--days", "4"]);
        Assert.Equal(Exit.Good, call.Exit);
        // By hand: (220 · 2.4 - 150 · 2.6) / 70.
        Assert.Contains("1.97 dS/m", call.Out, StringComparison.Ordinal);
        Assert.Contains("of stock A", call.Out, StringComparison.Ordinal);

        using var json = JsonDocument.Parse(
            (await Call.Of(["uptake", Repository.FoodBank, .. readings, "--json"])).Out
        );
        Assert.Equal(138.0 / 70, json.RootElement.GetProperty("takenDecisiemensPerMetre").GetDouble(), 1e-6);
        var wrong = await Call.Of(["uptake", Repository.FoodBank, .. readings, "--days", "x", "--water", "a cup"]);
        Assert.Equal(Exit.WrongCall, wrong.Exit);
        Assert.Contains("--days", wrong.Error, StringComparison.Ordinal);
        Assert.Contains("--water", wrong.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_salt_of_the_own_catalogue_file_is_weighed()
    {
        using var folder = new Scratch();
        var catalogue = folder.Write(
            "mine.json",
            """{ "salts": [ { "key": "my-potash", "name": "Potash from the shed", "kind": "salt", "formula": "KNO3", "source": "bag" } ] }"""
        );
        var rig = folder.Write(
            "a.rig.json",
            """{ "rows": [ { "pots": 4 } ], "nutrients": { "crop": "tomato", "pureShare": "100 %", "salts": [ { "salt": "my-potash" }, { "salt": "calcium-nitrate-15.5" } ] } }"""
        );
        var call = await Call.Of("mix", rig, "--catalogue", catalogue);
        Assert.Equal(Exit.Good, call.Exit);
        Assert.Contains("Potash from the shed", call.Out, StringComparison.Ordinal);
        Assert.Contains(
            "my-potash",
            (await Call.Of("catalogue", "salts", "--catalogue", catalogue)).Out,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Weeks_ahead_lays_the_ways_of_topping_up_side_by_side()
    {
        var call = await Call.Of("weeks-ahead", Repository.FoodBank);

        Assert.Equal(Exit.Good, call.Exit);
        foreach (var way in new[] { "water only", "half strength", "full strength", "EC held at" })
        {
            Assert.Contains(way, call.Out, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Water_poured_in_cannot_be_less_than_none()
    {
        var call = await Call.Of(
            "uptake",
            Repository.FoodBank,
            "--first-ec",
            "2.4 dS/m",
            "--first-volume",
            "220 L",
            "--second-ec",
            "2.6 dS/m",
            "--second-volume",
            "150 L",
            "--water=-20 L"
        );
        Assert.Equal(Exit.WrongCall, call.Exit);
        Assert.Equal(
            "dripwright: --water: found \"-20 L\"; expected a volume such as \"35 gal\" or \"130 L\", not below 0.",
            call.Error.Trim()
        );
    }

    [Fact]
    public async Task A_rig_in_gallons_is_told_in_gallons()
    {
        using var folder = new Scratch();
        var rig = folder.Write(
            "a.rig.json",
            """{ "units": "us", "rows": [ { "pots": 4 } ], "nutrients": { "crop": "tomato", "target": "tomato-florida-1", "pureShare": "100 %" } }"""
        );
        var call = await Call.Of("mix", rig);
        Assert.Equal(Exit.Good, call.Exit);
        Assert.Contains(" gal of reservoir", call.Out, StringComparison.Ordinal);
        Assert.DoesNotMatch("[0-9] L ", call.Out);
        Assert.Contains("total N ", call.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("NO3", call.Out, StringComparison.Ordinal);
    }
}
