using System.Text.Json;
using Dripwright.Engine.Tests.Planning;
using Dripwright.Language.Report;

namespace Dripwright.Engine.Tests.Findings;

/// <summary>Other programs read findings as values, without reading their words.</summary>
public sealed class FindingJsonTests
{
    [Fact]
    public void A_finding_says_its_places_as_row_pot_run_and_hole()
    {
        var place = Finding("hole-on-joint", """{ "rows": [ { "pots": 10, "moduleLength": "29 1/2 in" } ] }""")
            .GetProperty("places")[0];

        Assert.Equal(1, place.GetProperty("row").GetInt32());
        Assert.True(place.GetProperty("pot").GetInt32() > 0);
        Assert.True(place.GetProperty("hole").GetInt32() > 0);
        Assert.Equal("D1", place.GetProperty("run").GetString());
        Assert.Equal("", place.GetProperty("part").GetString());
    }

    [Fact]
    public void The_reservoir_and_the_pump_are_parts_and_no_rows()
    {
        var place = Finding("lid-missing", """{ "reservoir": { "lid": false } }""").GetProperty("places")[0];

        Assert.Equal((0, "reservoir"), (place.GetProperty("row").GetInt32(), place.GetProperty("part").GetString()));
    }

    [Theory]
    [InlineData("aisle-narrow", """{ "rows": [ { "aisle": "12 in" } ] }""", "length", 0.3048, 0.6096, "m")]
    [InlineData("velocity-high", FastRig, "velocity", null, 1.5, "m/s")]
    [InlineData("drain-level", """{ "drain": { "slope": "0.3 %" } }""", "slope", 0.003, 0.01, "")]
    [InlineData("water-warm", """{ "reservoir": { "waterTemperature": "80 F" } }""", "temperature", null, 295.15, "K")]
    public void Value_and_limit_are_numbers_in_SI(
        string rule,
        string rig,
        string quantity,
        double? value,
        double limit,
        string unit
    )
    {
        var finding = Finding(rule, rig);
        foreach (var (name, number) in ((string, double?)[])[("foundValue", value), ("limitValue", limit)])
        {
            var measured = finding.GetProperty(name);
            Assert.Equal(quantity, measured.GetProperty("quantity").GetString());
            Assert.Equal(unit, measured.GetProperty("unit").GetString());
            var told = measured.GetProperty("value").GetDouble();
            Assert.Equal(number ?? told, told, 1e-9);
        }
    }

    [Fact]
    public void A_state_is_no_number_and_a_field_taken_out_has_no_text()
    {
        var lid = Finding("lid-missing", """{ "reservoir": { "lid": false } }""");
        var rise = Finding("rise-differs", """{ "feed": { "header": { "rise": "9 ft" } } }""");

        Assert.Equal(JsonValueKind.Null, lid.GetProperty("foundValue").ValueKind);
        Assert.Equal("true", Change(lid).GetProperty("text").GetString());
        Assert.Equal("feed.header.rise", Change(rise).GetProperty("field").GetString());
        Assert.Equal(JsonValueKind.Null, Change(rise).GetProperty("text").ValueKind);
    }

    private const string FastRig =
        """{ "rows": [ { "pots": 100, "spacing": "11 in" } ], "feed": { "emitter": "drip-turbulent-2gph" }, "pump": { "model": "pump-booster-15psi" } }""";

    private static JsonElement Change(JsonElement finding) => finding.GetProperty("cures")[0].GetProperty("changes")[0];

    private static JsonElement Finding(string rule, string rig)
    {
        using var document = JsonDocument.Parse(PlanJson.Write(BrokenRigs.Plan(rule, rig)));
        return document
            .RootElement.GetProperty("findings")
            .EnumerateArray()
            .First(f => f.GetProperty("rule").GetString() == rule)
            .Clone();
    }
}
