using System.Text;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Parts;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;
using Dripwright.Language;
using Dripwright.Language.Report;

namespace Dripwright.Engine.Tests.Parts;

/// <summary>What the grower has instead of the catalogue's thing is what the list, the words and the sums speak of.</summary>
public sealed class OwnPartsTests
{
    private static Plan Plan(string json, string? own = null)
    {
        var catalogue = own is null
            ? PartsCatalogue.Default
            : CatalogueReader.Read(Encoding.UTF8.GetBytes(own), "own", PartsCatalogue.Default).Catalogue!;
        var reading = RigReader.Read(json, "a", catalogue);
        Assert.True(reading.Resolved is not null, string.Join("\n", reading.Faults.Told()));
        return Planner.Of(reading.Resolved, reading.Assumed, new PlanOptions { Draws = 0, Strength = false });
    }

    [Fact]
    public void A_pump_with_a_curve_of_its_own_is_not_called_by_the_catalogues_name()
    {
        var plan = Plan(
            """{ "pump": { "model": "pump-400gph", "shutOffHead": "12 ft", "openFlow": "500 gph", "power": "60 W" } }"""
        );
        Assert.DoesNotContain(plan.Parts.Lines, line => line.Part == "pump-400gph");
        PartLine line = Assert.Single(
            plan.Parts.Lines,
            line => line.Name.Told().StartsWith("Pump:", StringComparison.Ordinal)
        );
        Assert.Equal("Pump: 12.0 ft shut-off, 500 gph open (yours)", line.Name.Told());
        Assert.Equal(("electrical", 1, 1), (line.Section, line.Needed, line.Spares));
        Assert.Null(line.Price);
        Assert.Equal(60, plan.Feed.OperatingPoint!.Power);
        var summary = PlanSummary.Of(plan).Sentence;
        Assert.Contains("12.0 ft shut-off, 500 gph open", summary, StringComparison.Ordinal);
        Assert.DoesNotContain(
            PartsCatalogue.Default.Pumps["pump-400gph"].Name,
            summary,
            StringComparison.OrdinalIgnoreCase
        );
    }

    [Theory]
    [InlineData("""{ "model": "pump-400gph" }""")]
    [InlineData("""{ "model": "pump-400gph", "cord": "20 ft", "inletHeight": "2 in" }""")]
    public void A_pump_of_the_catalogue_with_another_cord_is_still_that_pump(string pump)
    {
        var plan = Plan($$"""{ "pump": {{pump}} }""");
        Assert.Single(plan.Parts.Lines, line => line.Part == "pump-400gph");
        Assert.False(plan.Layout.Parts.Pump!.IsOwn);
    }

    [Fact]
    public void A_tank_with_measures_of_its_own_is_not_called_by_the_catalogues_name()
    {
        var plan = Plan(
            """{ "reservoir": { "tank": "tank-box-35-gal", "shape": "lying", "width": "24 in", "length": "38 in" }, "drain": { "into": "catch-tank" } }"""
        );
        Assert.DoesNotContain(plan.Parts.Lines, line => line.Part.StartsWith("tank-box", StringComparison.Ordinal));
        PartLine line = Assert.Single(
            plan.Parts.Lines,
            line => line.Name.Told().StartsWith("Tank:", StringComparison.Ordinal)
        );
        Assert.Contains("lying, 24 in across, 3 ft 2 in long", line.Name.Told(), StringComparison.Ordinal);
        Assert.Equal(2, line.Needed);
    }

    [Fact]
    public void A_tank_of_the_catalogue_with_a_measured_volume_is_still_that_tank() =>
        Assert.Single(
            Plan("""{ "reservoir": { "tank": "tank-box-35-gal", "volume": "33 gal" } }""").Parts.Lines,
            line => line.Part == "tank-box-35-gal"
        );

    [Fact]
    public void Names_of_own_things_follow_the_units_of_whoever_reads_them()
    {
        var pump = Plan("""{ "pump": { "shutOffHead": "3 m", "openFlow": "2000 L/h" } }""").Layout.Parts.Pump!;
        Assert.Equal("Pump: 3.00 m shut-off, 2000 L/h open (yours)", pump.Name.Told(UnitSystem.Metric));
        Assert.Contains(" ft shut-off", pump.Name.Told(), StringComparison.Ordinal);
    }

    [Fact]
    public void Own_pots_pumps_and_tanks_of_the_catalogue_bring_their_names_and_prices()
    {
        var plan = Plan(
            """{ "rows": [ { "pots": 3, "pot": "my-pot" } ], "pump": { "model": "my-pump" }, "reservoir": { "tank": "my-tank" }, "spares": { "pumps": 0 } }""",
            """
            { "pots": [ { "key": "my-pot", "basedOn": "pot-square-3-gal", "name": "Blue pot", "price": 2.5, "source": "mine" } ],
              "pumps": [ { "key": "my-pump", "basedOn": "pump-400gph", "name": "Shed pump", "power": "33 W", "price": 20, "source": "mine" } ],
              "tanks": [ { "key": "my-tank", "basedOn": "tank-box-35-gal", "name": "Blue tub", "price": 15, "source": "mine" } ] }
            """
        );
        (string, decimal?)[] own =
        [
            .. plan
                .Parts.Lines.Where(line => line.Part.StartsWith("my-", StringComparison.Ordinal))
                .Select(line => (line.Name.Told(), line.Price))
                .Order(),
        ];
        Assert.Equal([("Blue pot", 7.5m), ("Blue tub", 15m), ("Shed pump", 20m)], own);
        Assert.Equal(33, plan.Feed.OperatingPoint!.Power);
        Assert.Contains("shed pump", PlanSummary.Of(plan).Sentence, StringComparison.Ordinal);
    }
}
