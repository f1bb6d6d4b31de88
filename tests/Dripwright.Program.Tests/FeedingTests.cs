using System.Text.Json;

namespace Dripwright.Program.Tests;

public sealed class FeedingTests
{
    [Fact]
    public async Task Mix_says_what_to_weigh_into_each_can()
    {
        var call = await Call.Of("mix", Repository.FoodBank);

        Assert.Equal(Exit.Good, call.Exit);
        Assert.Contains("Can A, filled up to 20 L, 1:100:", call.Out, StringComparison.Ordinal);
        Assert.Contains("Calcium nitrate", call.Out, StringComparison.Ordinal);
        Assert.Contains("mL  Nitric acid 60 %", call.Out, StringComparison.Ordinal);
        Assert.Contains("never water into acid", call.Out, StringComparison.Ordinal);
        Assert.All(call.Out.Split('\n'), line => Assert.InRange(line.Length, 0, 80));
    }

    [Fact]
    public async Task Mix_as_json_is_what_the_whole_plan_says()
    {
        using var alone = JsonDocument.Parse((await Call.Of("mix", Repository.FoodBank, "--json")).Out);
        using var whole = JsonDocument.Parse((await Call.Of("plan", Repository.FoodBank, "--json", "--no-draws")).Out);

        var part = whole.RootElement.GetProperty("nutrition");
        Assert.True(JsonElement.DeepEquals(alone.RootElement, part));
        var wanted = part.GetProperty("wantedDecisiemensPerMetre").GetDouble();
        Assert.Equal(wanted, part.GetProperty("reachedDecisiemensPerMetre").GetDouble(), 0.03 * wanted);
    }

    [Fact]
    public async Task A_rig_without_a_feed_says_how_to_ask_for_one()
    {
        var call = await Call.Of("mix", Repository.School);

        Assert.Equal(Exit.FaultyFile, call.Exit);
        Assert.Contains("\"crop\"", call.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_weak_tank_is_given_A_before_B_with_readings_between()
    {
        var call = await Call.Of(
            "mend-tank",
            Repository.FoodBank,
            "--ec",
            "1.8 dS/m",
            "--ph",
            "6.4",
            "--volume",
            "200 L"
        );

        Assert.Equal(Exit.Good, call.Exit);
        var a = call.Out.IndexOf("stock A", StringComparison.Ordinal);
        Assert.InRange(a, 0, call.Out.IndexOf("stock B", StringComparison.Ordinal));
        Assert.Contains("about 2.40", call.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_pen_that_shows_ppm_is_asked_its_scale()
    {
        string[] reading = ["mend-tank", Repository.FoodBank, "--ph", "6.4", "--volume", "200 L", "--ec", "900 ppm"];
        var without = await Call.Of(reading);
        var with = await Call.Of([.. reading, "--pen-scale", "500"]);
        var plain = await Call.Of(
            "mend-tank",
            Repository.FoodBank,
            "--ph",
            "6.4",
            "--volume",
            "200 L",
            "--ec",
            "1.8 dS/m"
        );

        Assert.Equal(Exit.WrongCall, without.Exit);
        Assert.Contains("scale of the pen", without.Error, StringComparison.Ordinal);
        Assert.Equal(Exit.Good, plain.Exit);
        Assert.Equal(plain.Out, with.Out);
    }

    [Theory]
    [InlineData("--ec", "40 dS/m")]
    [InlineData("--ph", "6,4")]
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
            "mend-tank",
            Repository.FoodBank,
            .. given.SelectMany(pair => new[] { pair.Key, pair.Value }),
        ]);

        Assert.Equal(Exit.WrongCall, call.Exit);
        Assert.NotEmpty(call.Error);
        Assert.Empty(call.Out);
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
}
