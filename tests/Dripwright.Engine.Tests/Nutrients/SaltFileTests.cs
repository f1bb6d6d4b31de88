using System.Text;
using CsCheck;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Files;
using Dripwright.Engine.Tests.Files;
using Dripwright.Language;

namespace Dripwright.Engine.Tests.Nutrients;

public sealed class SaltFileTests
{
    private static readonly byte[] s_ours = CatalogueData.Bytes("salts");
    private static readonly byte[] s_ourTargets = CatalogueData.Bytes("targets");

    private static (SaltCatalogue? Catalogue, IReadOnlyList<Fault> Faults) Read(string text)
    {
        var reading = CatalogueReader.Read(Encoding.UTF8.GetBytes(text), "mine.json", PartsCatalogue.Default);
        return (reading.Catalogue?.Salts, reading.Faults);
    }

    private static bool IsClean(byte[] bytes)
    {
        var reading = CatalogueReader.Read(bytes, "fuzz", PartsCatalogue.Default);
        return reading.Catalogue is null == reading.Faults.Count > 0
            && reading
                .Faults.Told()
                .All(fault =>
                    fault is { Line: > 0, Column: > 0, Found.Length: > 0, Expected.Length: > 0 }
                    && fault.ToString().Length < 2000
                );
    }

    [Fact]
    public void Any_bytes_give_a_catalogue_or_faults() => Gen.Byte.Array[0, 200].Holds(IsClean, iter: 10_000);

    [Fact]
    public void Any_text_of_our_own_words_gives_a_catalogue_or_faults() =>
        JsonMarks.With("salts", "targets", "key", "formula", "label", "Ca(NO3)2", "x").Holds(IsClean, iter: 10_000);

    [Fact]
    public void Our_files_with_bytes_changed_give_a_catalogue_or_faults() =>
        Gen.Select(Gen.Bool, Gen.Select(Gen.Int[0, 1_000_000], Gen.Byte).Array[1, 8])
            .Holds(
                (salts, changes) =>
                {
                    var bytes = (byte[])(salts ? s_ours : s_ourTargets).Clone();
                    foreach (var (at, value) in changes)
                    {
                        bytes[at % bytes.Length] = value;
                    }
                    return IsClean(bytes);
                },
                iter: 500
            );

    [Fact]
    public void Every_row_of_ours_has_a_source_and_no_price()
    {
        foreach (var salt in SaltCatalogue.Default.Salts.Values)
        {
            Assert.False(string.IsNullOrWhiteSpace(salt.Source));
            Assert.Null(salt.Price);
            Assert.True(salt.Kind != SaltKind.Acid || salt is { AcidEquivalents: > 0, Density: not null });
            Assert.True(salt.Kind != SaltKind.Base || salt.AcidEquivalents < 0);
            Assert.True(salt.Kind != SaltKind.Chelate || salt.PHRange is not null);
            Assert.All(salt.Hazards, hazard => Assert.NotNull(Caution.For(hazard)));
        }
    }

    [Fact]
    public void A_price_is_laid_over_a_row_and_the_rest_stays()
    {
        var mine = Read("""{"salts":[{"key":"potassium-nitrate","pack":"25 kg","price":45.5}]}""").Catalogue!;
        var ours = SaltCatalogue.Default["potassium-nitrate"];
        Assert.Equal(1.82m, mine["potassium-nitrate"].PricePerKilogram);
        Assert.Equal(ours.Brings, mine["potassium-nitrate"].Brings);
        Assert.Equal(ours.Part, mine["potassium-nitrate"].Part);
    }

    [Fact]
    public void A_new_formula_or_strength_does_away_with_the_label_that_a_row_starts_from()
    {
        var mine = Read(
            """
            {"salts":[
              {"key":"label","basedOn":"calcium-nitrate-15.5","label":{"ca":18}},
              {"key":"formula","basedOn":"calcium-nitrate-15.5","formula":"KNO3"},
              {"key":"strong","basedOn":"nitric-acid-38","purity":"60 %","massOfLitre":"1.37 kg"}]}
            """
        ).Catalogue!;
        Assert.Equal(0.18, mine["label"].MassFraction(Constituent.Calcium), 1e-12);
        Assert.Equal(0, mine["label"].Brings[Constituent.NitrateNitrogen]);
        Assert.Equal(0, mine["formula"].Brings[Constituent.Calcium]);
        Assert.Equal(1 / 0.101103, mine["formula"].Brings[Constituent.Potassium], 1e-3);
        Assert.Equal(StockPart.Either, mine["formula"].Part);
        // What dissolves was stated for the plain nitrate, and still is.
        Assert.Equal(
            SaltCatalogue.Default["calcium-nitrate-15.5"].Solubility!.Points,
            mine["formula"].Solubility!.Points
        );
        Assert.Equal(0.60 / 0.063013, mine["strong"].AcidEquivalents, 1e-3);
        Assert.Equal(1370, mine["strong"].Density!.Value, 1e-9);
    }

    [Theory]
    [InlineData("\"phFrom\":3", "\"phFrom\" and \"phTo\" together", "salts[0].phFrom")]
    [InlineData("\"phFrom\":7,\"phTo\":3", "more than \"phFrom\"", "salts[0].phTo")]
    [InlineData("\"phFrom\":7,\"phTo\":15", "a pH from 0 to 14", "salts[0].phTo")]
    [InlineData("\"solubilityOf\":\"Xy\"", "a formula", "salts[0].solubilityOf")]
    [InlineData(
        "\"solubility\":[{\"temperature\":\"20 C\",\"dissolves\":\"9 g\"},{\"temperature\":\"10 C\",\"dissolves\":\"8 g\"}]",
        "temperatures that rise",
        "salts[0].solubility"
    )]
    public void Fields_of_a_salt_that_do_not_fit_each_other_are_told(string fields, string expected, string path)
    {
        var text = $$"""{"salts":[{"key":"a","name":"a","kind":"salt","source":"s","formula":"KNO3",{{fields}}}]}""";
        var fault = Assert.Single(Read(text).Faults);
        Assert.Equal(path, fault.Path);
        Assert.Contains(expected, fault.Expected.Told(), StringComparison.Ordinal);
    }

    [Fact]
    public void An_acid_with_a_label_of_its_own_stays_as_sour_as_its_formula_says()
    {
        var mine = Read("""{"salts":[{"key":"mine","basedOn":"phosphoric-acid-75","label":{"p2o5":54}}]}""").Catalogue![
            "mine"
        ];
        Assert.Equal(0.54, mine.MassFraction(Constituent.Phosphorus, "P2O5"), 1e-12);
        Assert.Equal(0.75 / 0.097994, mine.AcidEquivalents, 1e-3);
    }

    [Fact]
    public void A_label_brings_what_it_says()
    {
        var mine = Read(
            """
            {"salts":[{"key":"bag","name":"bag","kind":"salt","source":"label",
            "label":{"nitrateN":12,"ammoniumN":3,"p2o5":10,"k2o":20,"mgo":2,"so3":5,"fe":0.1}}]}
            """
        ).Catalogue!["bag"];
        Assert.Equal(0.12, mine.MassFraction(Constituent.NitrateNitrogen), 1e-12);
        Assert.Equal(0.10, mine.MassFraction(Constituent.Phosphorus, "P2O5"), 1e-12);
        Assert.Equal(0.20, mine.MassFraction(Constituent.Potassium, "K2O"), 1e-12);
        Assert.Equal(StockPart.B, mine.Part);
        Assert.Equal(0, mine.AcidEquivalents);
    }

    [Theory]
    [InlineData(
        """{"salts":[{"key":"a","name":"a","kind":"salt","source":"s"}]}""",
        "a \"formula\" or a \"label\" too"
    )]
    [InlineData("""{"salts":[{"key":"a","name":"a","kind":"salt","source":"s","formula":"Xy2"}]}""", "an element")]
    [InlineData(
        """{"salts":[{"key":"a","name":"a","kind":"salt","source":"s","formula":"CO(NH2)2"}]}""",
        "nitrogen as NO3 or NH4 only"
    )]
    [InlineData("""{"salts":[{"key":"a","name":"a","kind":"salt","source":"s","formula":"HgCl2"}]}""", "no Hg")]
    [InlineData(
        """{"salts":[{"key":"a","name":"a","kind":"salt","source":"s","label":{"p":60,"k":60}}]}""",
        "at most 100"
    )]
    [InlineData("""{"salts":[{"key":"a","name":"a","kind":"salt","source":"s","label":{"p":5,"p2o5":9}}]}""", "P once")]
    [InlineData("""{"salts":[{"key":"b","basedOn":"potasium-nitrate"}]}""", "the key of a built-in or earlier row")]
    [InlineData(
        """{"salts":[{"key":"a","name":"a","kind":"acid","source":"s","formula":"KNO3"}]}""",
        "the formula of an acid"
    )]
    [InlineData("""{"salts":[{"key":"A b"}]}""", "a key in lower case")]
    [InlineData("""{"salts":[{"key":"urea","name":"u","kind":"salt","sorce":"s"}]}""", "one of key, name, source")]
    [InlineData("""{"format":2,"salts":[]}""", "a whole number from 1 to 1")]
    [InlineData("[]", "a catalogue")]
    [InlineData("", "JSON")]
    public void A_fault_says_what_is_expected(string text, string expected)
    {
        var reading = Read(text);
        Assert.Null(reading.Catalogue);
        Assert.Contains(reading.Faults, fault => fault.Expected.Told().Contains(expected, StringComparison.Ordinal));
    }

    [Fact]
    public void Acidity_follows_from_the_formula()
    {
        var salts = SaltCatalogue.Default;
        Assert.Equal(0, salts["monopotassium-phosphate"].AcidEquivalents);
        Assert.Equal(0, salts["calcium-nitrate-double-pure"].AcidEquivalents, 1e-9);
        Assert.Equal(-1 / 0.174174, salts["dipotassium-phosphate"].AcidEquivalents, 1e-3);
        Assert.Equal(0.75 / 0.097994, salts["phosphoric-acid-75"].AcidEquivalents, 1e-3);
        Assert.Equal(2 * 0.35 / 0.098072, salts["sulfuric-acid-35"].AcidEquivalents, 1e-3);
    }
}
