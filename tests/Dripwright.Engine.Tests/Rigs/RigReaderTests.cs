using System.Text;
using CsCheck;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Files;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;
using Dripwright.Language;

namespace Dripwright.Engine.Tests.Rigs;

public sealed class RigReaderTests
{
    private static RigReading Read(string text) => RigReader.Read(text, "school.rig.json", PartsCatalogue.Default);

    private static string Faults(string text) => string.Join('\n', Read(text).Faults.Told());

    [Fact]
    public void A_fault_names_file_line_column_path_and_what_was_meant() =>
        Assert.Equal(
            "school.rig.json:3:17 rows[0].spacing: found \"1 foots\"; expected a length such as \"1 ft\" or \"30 cm\"; did you mean \"1 ft\"?",
            Faults("{ \"rows\": [\n  {\n    \"spacing\":  \"1 foots\"\n  }\n] }")
        );

    [Fact]
    public void All_faults_are_told_at_once_in_the_order_of_the_file()
    {
        var faults = Read(
            """
            {
              // every line below is wrong
              "nam": "x",
              "units": "Metric",
              "name": 7,
              "site": { "roomLength": 6, "voltage": "230 V", "voltage": "120 V" },
              "rows": [
                { "pots": 0, "pot": "pot-squar-3-gal", "spacing": "1,000 cm", "planting": null },
                { "spacing": "1 mi", "pots": 2.5, "arrangement": "zigzag" },
                7,
              ],
              "feed": { "entry": "both ends", "header": { "elbows": "2" } },
              "drain": { "slope": "30 %", "vent": "true" },
              "onHand": [{ "count": 2 }],
              "pump": [],
              "timer": { "on": "15" },
            }
            """
        ).Faults;
        Assert.Equal(
            [
                "3 nam",
                "4 units",
                "5 name",
                "6 site.roomLength",
                "6 site.voltage",
                "8 rows[0].pots",
                "8 rows[0].pot",
                "8 rows[0].spacing",
                "8 rows[0].planting",
                "9 rows[1].spacing",
                "9 rows[1].pots",
                "9 rows[1].arrangement",
                "10 rows[2]",
                "12 feed.entry",
                "12 feed.header.elbows",
                "13 drain.slope",
                "13 drain.vent",
                "14 onHand[0].part",
                "15 pump",
                "16 timer.on",
            ],
            faults.Select(fault => FormattableString.Invariant($"{fault.Line} {fault.Path}"))
        );
        var nearest = faults.ToDictionary(fault => fault.Path, fault => fault.Nearest);
        Assert.Equal("name", nearest["nam"]);
        Assert.Equal("metric", nearest["units"]);
        Assert.Equal("6 ft", nearest["site.roomLength"]);
        Assert.Equal("pot-square-3-gal", nearest["rows[0].pot"]);
        Assert.Equal("both-ends", nearest["feed.entry"]);
    }

    [Theory]
    [InlineData("""{ "rows": [{ "spacing": "1 in" }] }""", "expected 2 in to 10 ft (50.8 mm to 3.05 m)")]
    [InlineData("""{ "feed": { "microtubeLength": "1e-90 m" } }""", "expected 0, or 0 in to 10 ft")]
    [InlineData("""{ "format": 2 }""", "a newer Dripwright wrote this file")]
    [InlineData("""{ "format": 0 }""", "expected a whole number from 1 to 1")]
    [InlineData("""{ "rows": [] }""", "expected a list [ … ] of 1 to 100 entries")]
    [InlineData(
        """{ "rows": [{ "pots": 3000, "count": 2 }] }""",
        "found 6000 pots in all rows together; expected at most 5000"
    )]
    [InlineData(
        """{ "rows": [{ "pots": 5000, "spacing": "10 ft", "moduleLength": "1 ft" }] }""",
        "expected at most 10000"
    )]
    [InlineData("""{ "rows": [{ "planting": [{ "pots": "9-12" }] }] }""", "expected pots from 1 to 10")]
    [InlineData(
        """{ "rows": [{ "planting": [{ "pots": "1-4" }, { "pots": "4-6" }] }] }""",
        "pot 4 is in planting[0] already"
    )]
    [InlineData("""{ "reservoir": { "lowestLevel": "15 ft" } }""", "expected less than the tank's height of 12 5/8 in")]
    [InlineData(
        """{ "reservoir": { "shape": "upright", "length": "2 ft", "width": "3 ft" } }""",
        "an upright cylinder is round"
    )]
    [InlineData("""{ "pump": { "shutOffHead": "9 ft" } }""", "expected openFlow beside it")]
    [InlineData("""{ "pump": { "curve": [{ "flow": "0 gph", "head": "9 ft" }] } }""", "expected two points at least")]
    [InlineData(
        """{ "pump": { "curve": [{ "head": "9 ft" }, { "flow": "1 gph", "head": "9 ft" }] } }""",
        "school.rig.json:1:43 pump.curve[1]: found a point with no more flow or no less head"
    )]
    [InlineData(
        """{ "pump": { "shutOffHead": "9 ft", "openFlow": "99 gph", "curve": [{}] } }""",
        "expected either the curve, or shutOffHead and openFlow"
    )]
    [InlineData(
        """{ "pump": { "model": "none", "shutOffHead": "9 ft", "openFlow": "99 gph" } }""",
        "\"none\" is gravity feed"
    )]
    [InlineData(
        """{ "onHand": [{ "part": "pvc40-1-1/2" }] }""",
        "expected the length of each piece of \"pvc40-1-1/2\""
    )]
    [InlineData(
        """{ "pump": { "curve": [{ "flow": "1 gph", "head": "9 ft" }, { "flow": "9 gph" }] } }""",
        "pump.curve[0]: found a first point with flow"
    )]
    [InlineData("""{ "name": "a\u0007b" }""", "expected text on one line")]
    [InlineData("""{ "name": "a\nb" }""", "expected text on one line")]
    [InlineData("""{ "notes": "a\u0000\nb" }""", "expected text without control characters")]
    [InlineData("""{ "name": "\ud800" }""", "found text with half a character")]
    [InlineData("[1]", "school.rig.json:1:1 found a list [ … ]; expected a rig: { … }")]
    [InlineData("", "school.rig.json:1:1 found the end of the file; expected JSON that starts with {")]
    [InlineData(
        "{ \"name\": \"x\"\n  \"notes\": \"y\" }",
        "school.rig.json:2:3 found a double quote; expected a comma"
    )]
    [InlineData("{ } x", "school.rig.json:1:5 found \"x\"")]
    [InlineData("{ \"näme\": \"ä\", \"nämf\": 1 }", "school.rig.json:1:16 nämf: found the unknown field")]
    public void A_fault_says_what_was_expected(string text, string part) =>
        Assert.Contains(part, Faults(text), StringComparison.Ordinal);

    [Fact]
    public void Comments_trailing_commas_a_byte_order_mark_and_a_schema_are_welcome()
    {
        var text =
            "\uFEFF/* a rig */ { \"$schema\": \"../docs/rig.schema.json\", // yes\n \"rows\": [{ \"pots\": 4, },], }";
        Assert.Equal(4, Read(text).Rig!.Rows[0].Pots);
    }

    [Fact]
    public void What_the_file_does_not_give_is_told_as_assumed()
    {
        var reading = Read("""{ "units": "metric", "rows": [{ "pots": 4 }], "feed": { "header": {} } }""");
        Assert.Equal(0.3, reading.Rig!.Rows[0].Spacing);
        var assumed = reading.Assumed.ToDictionary(one => one.Path);
        Assert.Equal("30 cm", assumed["rows[0].spacing"].Value);
        Assert.Equal("hose-20mm", assumed["feed.header.pipe"].Value);
        Assert.Equal("from where the reservoir and the row stand", assumed["feed.header.run"].How);
        Assert.Equal("", assumed["feed.header.run"].Value);
        Assert.DoesNotContain("rows[0].pots", assumed.Keys);
        Assert.DoesNotContain("units", assumed.Keys);
    }

    [Theory]
    [InlineData(UnitSystem.Us)]
    [InlineData(UnitSystem.Metric)]
    public void An_empty_rig_is_a_whole_rig_of_assumed_values(UnitSystem units) =>
        Assert.Equal(units, RigReader.Starter(units, PartsCatalogue.Default).Units);

    [Fact]
    public void An_older_file_is_upgraded_step_by_step_and_says_so()
    {
        // Two invented steps: -1 called the rows "lines", 0 gave the number of pots as text.
        RigUpgrade[] steps =
        [
            new(
                -1,
                Phrase.Plain("Lines are called rows."),
                root =>
                    root.Fields[root.Fields.FindIndex(field => field.Name == "lines")] = root["lines"]! with
                    {
                        Name = "rows",
                    }
            ),
            new(
                0,
                Phrase.Plain("Pots are a number."),
                root =>
                {
                    var row = (FileObject)((FileList)root["rows"]!.Value).Items[0];
                    var text = (FileText)row["pots"]!.Value;
                    var at = row.Fields.FindIndex(field => field.Name == "pots");
                    row.Fields[at] = row.Fields[at] with { Value = new FileNumber(text.Line, text.Column, text.Text) };
                }
            ),
        ];
        RigReading Old(string text) =>
            RigReader.Read(Encoding.UTF8.GetBytes(text), "old", PartsCatalogue.Default, steps);

        var reading = Old("""{ "format": -1, "lines": [{ "pots": "7" }] }""");
        Assert.Empty(reading.Faults);
        Assert.Equal(7, reading.Rig!.Rows[0].Pots);
        Assert.Equal(Rig.CurrentFormat, reading.Rig.Format);
        Assert.Equal(["Lines are called rows.", "Pots are a number."], reading.Upgraded.Told());
        Assert.Equal(["Pots are a number."], Old("""{ "format": 0, "rows": [{ "pots": "7" }] }""").Upgraded.Told());
        Assert.Empty(Old("""{ "format": 1, "rows": [{ "pots": 7 }] }""").Upgraded);
        // What moved keeps its place.
        Assert.Equal(44, Old("""{ "format": 0, "rows": [{          "pots": "0" }] }""").Faults.Single().Column);
        Assert.Contains("newer", Old("""{ "format": 9 }""").Faults.Single().Expected.Told(), StringComparison.Ordinal);
    }

    [Fact]
    public void Every_default_lies_within_its_bounds_and_stands_in_the_catalogue()
    {
        foreach (var units in Enum.GetValues<UnitSystem>())
        {
            var rig = RigReader.Starter(units, PartsCatalogue.Default);
            Assert.Empty(Read(RigWriter.Write(rig)).Faults);
        }
    }
}
