using System.Text;
using CsCheck;
using Dripwright.Engine.Catalogue;
using Dripwright.Language;

namespace Dripwright.Engine.Tests.Catalogue;

public sealed class CatalogueReaderTests
{
    private static readonly PartsCatalogue s_basis = PartsCatalogue.Default;

    [Fact]
    public void An_empty_file_leaves_the_catalogue_as_it_is()
    {
        var reading = Read("{}");
        Assert.Empty(reading.Faults);
        Assert.Equal(s_basis.All, reading.Catalogue!.All);
    }

    [Fact]
    public void A_row_based_on_another_changes_only_what_it_says()
    {
        var parts = Good(
            """
            { "format": 1, "pumps": [{ "key": "my-pump", "basedOn": "pump-400gph", "power": "30 W" }] }
            """
        );
        var (ours, mine) = (parts.Pumps["pump-400gph"], parts.Pumps["my-pump"]);
        Assert.Equal(
            ours with
            {
                Key = "my-pump",
                Power = 30,
                Source = $"mine.json, based on pump-400gph: {ours.Source}",
            },
            mine
        );
        Assert.Equal(s_basis.Pumps["pump-400gph"], ours);
    }

    [Fact]
    public void A_row_with_a_key_of_ours_overrides_ours_in_its_place()
    {
        var parts = Good(
            """
            { "pipes": [{ "key": "hose-1/2", "insideDiameter": "0.62 in", "outsideDiameter": "0.71 in", "source": "caliper" }] }
            """
        );
        Assert.Equal(0.62 * 0.0254, parts.Pipes["hose-1/2"].InsideDiameter, 1e-12);
        Assert.Equal("caliper", parts.Pipes["hose-1/2"].Source);
        Assert.Equal(s_basis.Pipes.Keys, parts.Pipes.Keys);
    }

    [Fact]
    public void A_row_may_be_based_on_an_earlier_one_of_the_same_file()
    {
        var parts = Good(
            """
            {
              "pots": [
                { "key": "tub", "basedOn": "pot-square-3-gal", "height": "10 in" },
                { "key": "tub-low-drain", "basedOn": "tub", "drainHeight": "1 in" }
              ]
            }
            """
        );
        Assert.Equal(0.254, parts.Pots["tub-low-drain"].Height, 1e-12);
        Assert.Equal(0.0254, parts.Pots["tub-low-drain"].DrainHeight, 1e-12);
    }

    [Fact]
    public void Prices_and_packs_are_taken_as_they_are_written()
    {
        var parts = Good("""{ "sundries": [{ "key": "clamp-1/2", "price": 4.99, "pack": 12 }] }""");
        Assert.Equal(4.99m, parts.Sundries["clamp-1/2"].Price);
        Assert.Equal(12, parts.Sundries["clamp-1/2"].Pack);
    }

    [Fact]
    public void All_prices_are_in_the_one_currency_that_the_file_names()
    {
        Assert.Equal(PartsCatalogue.Dollar, s_basis.Currency);
        Assert.Equal("EUR", Good("""{ "currency": "EUR" }""").Currency);
        var again = CatalogueReader.Read("{}"u8, "more.json", Good("""{ "currency": "EUR" }""")).Catalogue!;
        Assert.Equal("EUR", again.Currency);
    }

    [Fact]
    public void A_second_currency_is_one_fault_with_its_line()
    {
        var priced = Good("""{ "currency": "EUR", "sundries": [{ "key": "clamp-1/2", "price": 4.99 }] }""");
        var other = CatalogueReader.Read("{\n  \"currency\": \"USD\" }"u8, "more.json", priced);
        var fault = Assert.Single(other.Faults.Told());
        Assert.Equal(("currency", 2, "\"USD\""), (fault.Path, fault.Line, fault.Found));
        Assert.Contains("\"EUR\"", fault.Expected, StringComparison.Ordinal);
        // The same one, or one over a catalogue whose only prices are ours, is none.
        Assert.Empty(CatalogueReader.Read("""{ "currency": "EUR" }"""u8, "more.json", priced).Faults);
        Assert.Equal("currency", Assert.Single(Read("""{ "currency": "EUR", "currency": "USD" }""").Faults).Path);
    }

    [Fact]
    public void A_price_with_a_currency_of_its_own_is_told_that_there_is_one_for_all()
    {
        var fault = Assert.Single(
            Read("""{ "sundries": [{ "key": "clamp-1/2", "price": "4.99 EUR" }] }""").Faults.Told()
        );
        Assert.Contains("all prices are in the catalogue's one currency", fault.Expected, StringComparison.Ordinal);
        Assert.Null(fault.Nearest);
    }

    [Theory]
    [InlineData("""{ "salts": [{ "key": "calcium-nitrate-15.5", "purityPercent": 98 }] }""", "purity", "a share")]
    [InlineData("""{ "salts": [{ "key": "calcium-nitrate-15.5", "packKilograms": 25 }] }""", "pack", "a mass")]
    [InlineData("""{ "pots": [{ "key": "pot-square-3-gal", "massKg": 0.4 }] }""", "mass", "a mass")]
    [InlineData("""{ "targets": [{ "key": "steiner", "decisiemensPerMetre": 2 }] }""", "conductivity", "dS/m")]
    public void A_field_under_its_old_name_is_told_the_new_one_and_what_stands_in_it(
        string text,
        string name,
        string value
    )
    {
        var fault = Assert.Single(Read(text).Faults.Told());
        Assert.Equal(name, fault.Nearest);
        Assert.StartsWith($"\"{name}\", the field's new name, with ", fault.Expected, StringComparison.Ordinal);
        Assert.Contains(value, fault.Expected, StringComparison.Ordinal);
    }

    [Fact]
    public void A_number_that_was_meant_is_shown_without_quotes()
    {
        var number = Assert.Single(Read("""{ "sundries": [{ "key": "clamp-1/2", "price": "4,99" }] }""").Faults);
        Assert.EndsWith("did you mean 4.99, without quotes?", number.Told().ToString(), StringComparison.Ordinal);
        var word = Assert.Single(Read("""{ "sundries": [{ "key": "clamp-1/2", "prise": 4.99 }] }""").Faults);
        Assert.EndsWith("did you mean \"price\"?", word.Told().ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("""{ "sundries": [{ "key": "clamp-1/2", "price": "4.99" }] }""", "sundries[0].price", "4.99")]
    [InlineData("""{ "sundries": [{ "key": "clamp-1/2", "price": "4,99" }] }""", "sundries[0].price", "4.99")]
    [InlineData("""{ "sundries": [{ "key": "clamp-1/2", "price": "1,000" }] }""", "sundries[0].price", null)]
    [InlineData("""{ "sundries": [{ "key": "clamp-1/2", "pack": "12" }] }""", "sundries[0].pack", "12")]
    [InlineData("""{ "pots": [{ "key": "pot-square-3-gal", "mass": 0.4 }] }""", "pots[0].mass", "0.4 kg")]
    [InlineData("""{ "salts": [{ "key": "fe-dtpa-11", "phTo": "7.5" }] }""", "salts[0].phTo", "7.5")]
    public void A_number_in_quotes_and_a_bare_quantity_are_told_what_was_meant(string text, string path, string? meant)
    {
        var fault = Assert.Single(Read(text).Faults);
        Assert.Equal((path, meant), (fault.Path, fault.Nearest));
    }

    [Fact]
    public void A_part_may_be_made_of_pieces_that_stand_behind_it_in_the_file()
    {
        var parts = Good(
            """
            {
              "emitters": [{ "key": "drip-pc-1gph", "pieces": ["my-barb"] }],
              "sundries": [{ "key": "my-barb", "name": "Barb", "source": "the shop", "section": "irrigation" }]
            }
            """
        );
        Assert.Equal(["my-barb"], parts.Emitters["drip-pc-1gph"].Pieces);
    }

    [Fact]
    public void A_piece_whose_own_row_is_at_fault_is_no_second_fault() =>
        Assert.Equal(
            "sundries[0].pack",
            Assert
                .Single(
                    Read(
                        """
                        {
                          "emitters": [{ "key": "drip-pc-1gph", "pieces": ["my-barb"] }],
                          "sundries": [
                            { "key": "my-barb", "name": "Barb", "source": "the shop", "section": "irrigation", "pack": 0 }
                          ]
                        }
                        """
                    ).Faults
                )
                .Path
        );

    [Fact]
    public void The_users_own_fitting_is_taken_before_ours()
    {
        var parts = Good(
            """
            { "fittings": [{ "key": "my-elbow", "basedOn": "pvc40-1-elbow-90", "layingLength": "0.75 in" }] }
            """
        );
        Assert.Equal("my-elbow", parts.FittingFor(parts.Pipes["pvc40-1"], FittingKind.Elbow90)!.Key);
        Assert.Equal("pvc40-1-tee", parts.FittingFor(parts.Pipes["pvc40-1"], FittingKind.Tee)!.Key);
    }

    [Fact]
    public void All_faults_are_told_at_once_with_place_and_nearest_name()
    {
        var reading = Read(
            """
            {
              "pumpz": [],
              "pumps": [
                { "key": "a", "basedOn": "pump-400gpm" },
                { "key": "b", "basedOn": "pump-400gph", "powr": "3 W", "cord": "2 foots" }
              ],
              "pots": [{ "key": "c", "basedOn": "pot-square-3-gal", "drainHeight": "12 in" }]
            }
            """
        );
        Assert.Null(reading.Catalogue);
        Assert.Equal(
            ["pumpz", "pumps[0].basedOn", "pumps[1].powr", "pumps[1].cord", "pots[0].drainHeight"],
            reading.Faults.Select(fault => fault.Path)
        );
        Assert.Equal([2, 4, 5, 5, 7], reading.Faults.Select(fault => fault.Line));
        Assert.Equal(["pumps", "pump-400gph", "power", "2 ft", null], reading.Faults.Select(fault => fault.Nearest));
        Assert.All(reading.Faults, fault => Assert.Equal("mine.json", fault.File));
    }

    [Theory]
    [InlineData("""[]""", "")]
    [InlineData("""{ "format": 2 }""", "format")]
    [InlineData("""{ "currency": "euro" }""", "currency")]
    [InlineData("""{ "currency": "eur" }""", "currency")]
    [InlineData("""{ "pumps": [{ "key": "pump-400gph" }, { "key": "pump-400gph" }] }""", "pumps[1].key")]
    [InlineData("""{ "pipes": {} }""", "pipes")]
    [InlineData("""{ "pipes": [3] }""", "pipes[0]")]
    [InlineData("""{ "pipes": [{ "name": "x" }] }""", "pipes[0]")]
    [InlineData("""{ "pipes": [{ "key": "Big Pipe", "basedOn": "pvc40-1" }] }""", "pipes[0].key")]
    [InlineData("""{ "pumps": [{ "key": "none", "basedOn": "pump-400gph" }] }""", "pumps[0].key")]
    [InlineData("""{ "pumps": [{ "key": "pvc40-1", "basedOn": "pump-400gph" }] }""", "pumps[0].key")]
    [InlineData("""{ "pumps": [{ "key": "new" }] }""", "pumps[0]")]
    [InlineData("""{ "pots": [{ "key": "pot-square-3-gal", "volume": "9 gal" }] }""", "pots[0].volume")]
    [InlineData("""{ "tubes": [{ "key": "emt-1", "shape": "roundd" }] }""", "tubes[0].shape")]
    [InlineData("""{ "tubes": [{ "key": "emt-1", "wall": "1 in" }] }""", "tubes[0].wall")]
    [InlineData("""{ "tubes": [{ "key": "emt-1", "wall": 0.057 }] }""", "tubes[0].wall")]
    [InlineData("""{ "tubes": [{ "key": "emt-1", "stockLengths": ["20 ft", "10 ft"] }] }""", "tubes[0].stockLengths")]
    [InlineData("""{ "tubes": [{ "key": "emt-1", "stockLengths": [] }] }""", "tubes[0].stockLengths")]
    [InlineData("""{ "pots": [{ "key": "pot-square-3-gal", "mass": "-1 kg" }] }""", "pots[0].mass")]
    [InlineData("""{ "tanks": [{ "key": "tank-drum-55-gal", "width": "20 in" }] }""", "tanks[0].width")]
    [InlineData("""{ "tanks": [{ "key": "tank-drum-55-gal", "lid": "yes" }] }""", "tanks[0].lid")]
    [InlineData("""{ "emitters": [{ "key": "drip-pc-1gph", "pieces": ["barb-1"] }] }""", "emitters[0].pieces[0]")]
    [InlineData("""{ "emitters": [{ "key": "drip-pc-1gph", "minPressure": "60 psi" }] }""", "emitters[0].minPressure")]
    [InlineData("""{ "sundries": [{ "key": "clamp-1/2", "pack": 1.5 }] }""", "sundries[0].pack")]
    [InlineData("""{ "sundries": [{ "key": "clamp-1/2", "section": "attic" }] }""", "sundries[0].section")]
    [InlineData(
        """{ "pumps": [{ "key": "pump-400gph", "curve": [{ "flow": "0 gph", "head": "3 ft" }, { "flow": "9 gph" }] }] }""",
        "pumps[0].curve[1].head"
    )]
    [InlineData(
        """{ "pumps": [{ "key": "pump-400gph", "curve": [{ "flow": "0 gph", "head": "3 ft" }, { "flow": "9 gph", "head": "4 ft" }] }] }""",
        "pumps[0].curve"
    )]
    public void A_wrong_file_is_told_where_it_is_wrong(string text, string path)
    {
        var reading = Read(text);
        Assert.Null(reading.Catalogue);
        Assert.Contains(path, reading.Faults.Select(fault => fault.Path));
    }

    [Fact]
    public void Any_bytes_give_a_catalogue_or_faults_and_never_an_exception()
    {
        Gen.Byte.Array[0, 400].Holds(bytes => IsClean(CatalogueReader.Read(bytes, "x", s_basis)));
    }

    [Fact]
    public void A_damaged_file_gives_a_catalogue_or_faults_and_never_an_exception()
    {
        var whole = CatalogueData.Bytes("emitters");
        Gen.Select(Gen.Int[0, whole.Length - 1], Gen.Int[0, 40], Gen.Byte.Array[0, 12])
            .Holds(
                (at, gone, put) =>
                {
                    var end = Math.Min(whole.Length, at + gone);
                    byte[] damaged = [.. whole[..at], .. put, .. whole[end..]];
                    return IsClean(CatalogueReader.Read(damaged, "x", s_basis));
                },
                iter: 300
            );
    }

    [Fact]
    public void Thousands_of_faults_are_cut_short_and_do_not_crash()
    {
        var row = """{ "key": 1, "pieces": [1, 2], "kind": 3, "ratedFlow": 4 }""";
        var text = $$"""{ "emitters": [{{string.Join(",", Enumerable.Repeat(row, 1900))}}] }""";
        Assert.InRange(Read(text).Faults.Count, 1000, 1001);
    }

    private static bool IsClean(CatalogueReading reading) => reading.Catalogue is null == reading.Faults.Count > 0;

    private static CatalogueReading Read(string text) =>
        CatalogueReader.Read(Encoding.UTF8.GetBytes(text), "mine.json", s_basis);

    private static PartsCatalogue Good(string text)
    {
        var reading = Read(text);
        Assert.Empty(reading.Faults);
        return reading.Catalogue!;
    }
}
