using System.Globalization;
using CsCheck;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Files;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;
using Dripwright.Language;

namespace Dripwright.Engine.Tests.Rigs;

public sealed class RigWriterTests
{
    private static Rig Read(string text)
    {
        var reading = RigReader.Read(text, "test", PartsCatalogue.Default);
        Assert.True(reading.Rig is not null, string.Join('\n', reading.Faults.Told()) + '\n' + text);
        return reading.Rig;
    }

    [Fact]
    public void A_rig_written_and_read_is_the_same_rig() =>
        RigGen.Rigs.Holds(rig => SameRig.As(rig, Read(RigWriter.Write(rig))), iter: 300);

    [Fact]
    public void A_rig_written_short_and_read_is_the_same_rig() =>
        RigGen.Rigs.Holds(rig => SameRig.As(rig, Read(RigWriter.WriteShort(rig))), iter: 300);

    [Fact]
    public void Writing_again_what_was_read_gives_the_same_text() =>
        RigGen.Rigs.Holds(
            rig =>
            {
                var text = RigWriter.Write(rig);
                return RigWriter.Write(Read(text)) == text;
            },
            iter: 200
        );

    [Theory]
    [InlineData(UnitSystem.Us)]
    [InlineData(UnitSystem.Metric)]
    public void A_rig_of_assumed_values_is_short(UnitSystem units)
    {
        var short1 = RigWriter.WriteShort(RigReader.Starter(units, PartsCatalogue.Default));
        Assert.True(short1.Split('\n').Length < 12, short1);
    }

    [Fact]
    public void A_starter_file_reads_without_a_fault_and_gives_the_answers() =>
        Gen.Select(Gen.Enum<UnitSystem>(), Gen.Int[1, 5], Gen.Int[1, 30], Gen.Enum<Arrangement>(), Gen.Bool)
            .Holds(
                (units, rows, pots, arrangement, gravity) =>
                {
                    var answers = new StarterAnswers("Test", units, rows, pots, 0.4, arrangement, "pepper", gravity);
                    var rig = Read(RigStarter.Text(answers, PartsCatalogue.Default));
                    return SameRig.As(rig, RigStarter.Rig(answers, PartsCatalogue.Default))
                        && rig.Rows[0] is { Spacing: 0.4 } row
                        && rig.Rows.Sum(r => r.Count * r.Pots) == rows * pots
                        && (rows == 1 || (row.Count == rows && row.Pots == pots))
                        && row.Arrangement == arrangement
                        && row.Planting![0].Crop == "pepper"
                        && rig.Pump.Model == "none" == gravity;
                }
            );

    [Fact]
    public void A_starter_with_too_many_pots_is_refused() =>
        Assert.Throws<StarterException>(() =>
            RigStarter.Text(new StarterAnswers(Rows: 100, Pots: 100), PartsCatalogue.Default)
        );

    [Fact]
    public void A_starter_file_explains_every_field()
    {
        var text = RigStarter.Text(new StarterAnswers(), PartsCatalogue.Default);
        Assert.Contains("// From pot centre to pot centre, measured along the row.", text, StringComparison.Ordinal);
        Assert.Contains("// \"lineHeight\" is left out (on the pots' rims): ", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Reading_and_writing_do_not_depend_on_the_culture()
    {
        var before = CultureInfo.CurrentCulture;
        var rig = RigReader.Starter(UnitSystem.Us, PartsCatalogue.Default);
        var expected = (
            RigWriter.Write(rig),
            FieldTables.Write(typeof(Rig), "The rig"),
            RigSchema.Write(PartsCatalogue.Default)
        );
        var odd = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        odd.NumberFormat.NumberDecimalSeparator = ",";
        odd.NumberFormat.NegativeSign = "~";
        try
        {
            CultureInfo.CurrentCulture = odd;
            Assert.Equal(
                expected,
                (
                    RigWriter.Write(rig),
                    FieldTables.Write(typeof(Rig), "The rig"),
                    RigSchema.Write(PartsCatalogue.Default)
                )
            );
            Assert.True(SameRig.As(rig, Read(expected.Item1)));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void A_short_file_reads_as_a_person_would_write_it()
    {
        var start = RigReader.Starter(UnitSystem.Us, PartsCatalogue.Default);
        var rig = start with
        {
            Name = "Ten \"pots\"",
            Rows =
            [
                start.Rows[0] with
                {
                    Spacing = 0.3,
                    ModuleLength = 1.905,
                    Planting = [new Planting { Crop = "basil", Plants = 3 }],
                },
            ],
            Pump = start.Pump with
            {
                Curve = [new LeafletPoint { Head = 2.1336 }, new LeafletPoint { Flow = 0.003785411784 / 9 }],
            },
        };
        Assert.Equal(
            """
            {
              "format": 1,
              "name": "Ten \"pots\"",
              "units": "us",
              "rows": [
                {
                  "spacing": "30 cm",
                  "moduleLength": "75 in",
                  "planting": [
                    { "crop": "basil", "plants": 3 }
                  ]
                }
              ],
              "pump": {
                "curve": [
                  { "head": "7 ft" },
                  { "flow": "400 gph" }
                ]
              }
            }

            """.ReplaceLineEndings("\n"),
            RigWriter.WriteShort(rig)
        );
    }
}
