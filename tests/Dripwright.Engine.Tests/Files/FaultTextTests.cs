using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Catalogue.Targets;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Chemistry.Waters;
using Dripwright.Engine.Files;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Proposing;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;
using Dripwright.Language;

namespace Dripwright.Engine.Tests.Files;

/// <summary>The words of faults: all from the texts, and each text told by some bad file.</summary>
public sealed partial class FaultTextTests
{
    private static readonly PartsCatalogue s_ours = PartsCatalogue.Default;

    // Texts of the line as a whole, and one for a place in a file that no file is known to lead to.
    private static readonly string[] s_elsewhere =
    [
        "fault.line",
        "fault.line-of-file",
        "fault.nearest",
        "fault.nearest-bare",
        "fault.broken-letter",
    ];

    [Fact]
    public void Each_text_of_a_fault_is_told_by_some_bad_file()
    {
        var own = JsonSerializer.Deserialize<Dictionary<string, string>>(
            CommittedText.Of("src/Dripwright.Language/en/faults.json")
        )!;
        HashSet<string> told = [.. Phrases().SelectMany(Keys), .. s_elsewhere];
        Assert.True(!own.Keys.Except(told).Any(), string.Join(' ', own.Keys.Except(told)));
        Assert.All(told.Where(key => key.Length > 0), key => Assert.NotEmpty(Words.Of(key)));
        Assert.Equal(own.Keys.Order(StringComparer.Ordinal), own.Keys);
    }

    [Fact]
    public void In_the_pseudo_language_no_word_of_a_fault_comes_from_elsewhere_than_the_texts()
    {
        using var speaking = new Speaking(CultureInfo.GetCultureInfo(Pseudo.Culture));
        var leaks = Phrases().Select(Leak).Where(leak => leak.Length > 0).Distinct().ToList();
        Assert.True(leaks.Count == 0, string.Join('\n', leaks));
    }

    [Theory]
    [InlineData("⟦fóúnd⟧ \"one\" with rows", "with")]
    [InlineData("⟦fóúnd⟧ \"one\" rows 3 mm", "")]
    public void A_word_that_leaks_would_be_seen(string told, string leak) => Assert.Equal(leak, LeakOf(told));

    [Fact]
    public void A_key_of_the_catalogue_is_told_as_the_handbook_tells_it() =>
        Assert.All(
            Enum.GetValues<PartGroup>(),
            group =>
            {
                var key = new PartKeyAttribute(group) { Or = "none" };
                Assert.Equal(key.Allowed, key.Expected.Told());
            }
        );

    [Fact]
    public void Every_flaw_of_a_quantity_has_its_words() =>
        Assert.All(
            from dimension in Enum.GetValues<Dimension>()
            from flaw in Enum.GetValues<QuantityFlaw>()
            select new QuantityReading(dimension, null, flaw, Number: flaw is QuantityFlaw.EitherComma ? "1,000" : ""),
            reading => Assert.Contains("such as \"", reading.Expected().Told(), StringComparison.Ordinal)
        );

    private static IEnumerable<Phrase> Phrases() =>
        [
            .. Faults().SelectMany(fault => new[] { fault.Found, fault.Expected }),
            // What can be said to a program that uses the engine alone, but of no file.
            .. Enum.GetValues<Dimension>().Select(QuantityPhrases.Example),
            .. Enum.GetValues<QuantityFlaw>()
                .Select(flaw => new QuantityReading(Dimension.Length, null, flaw, Number: "1,000").Expected()),
            .. Formula.Read(new string('C', 200)).Fault is { } fault ? [fault.Found, fault.Expected] : (Phrase[])[],
            .. WaterCheck
                .Read(WaterAnalysis.Of(ReportedValue.Hardness(double.NaN), ReportedValue.PH(double.NaN)))
                .Faults.SelectMany(fault => new[] { fault.Found, fault.Why, fault.Remedy }),
        ];

    private static IEnumerable<Fault> Faults() =>
        [
            .. BadFiles.Of(BadFileKind.Rig).SelectMany(text => RigReader.Read(text, "a", s_ours).Faults),
            .. BadFiles.Of(BadFileKind.Brief).SelectMany(text => BriefReader.Read(text, "a", s_ours).Faults),
            .. BadFiles.Of(BadFileKind.Catalogue).SelectMany(text => Catalogue(text, s_ours).Faults),
            .. s_bytes.SelectMany(bytes => RigReader.Read(bytes, "a", s_ours).Faults),
            .. s_lacking.SelectMany(lacking => RigReader.Read(Tomato, "a", lacking).Faults),
            .. s_lacking.SelectMany(lacking => BriefReader.Read(Basil, "a", lacking).Faults),
            .. Catalogue("""{ "currency": "USD" }""", Priced()).Faults,
        ];

    private const string Tomato =
        """{ "rows": [{ "planting": [{ "crop": "x" }] }], "nutrients": { "crop": "tomato" } }""";

    private const string Basil = """{ "crops": [{ "crop": "x", "plants": 3 }] }""";

    private static readonly byte[][] s_bytes =
    [
        new byte[FileTree.MaxBytes + 1],
        [.. "{\n \"näme"u8, 0xC3, .. "\": 1 }"u8],
    ];

    // Catalogues that lack what a good file needs.
    private static readonly PartsCatalogue[] s_lacking =
    [
        s_ours with
        {
            Fittings = new Dictionary<string, FittingType>(),
        },
        s_ours with
        {
            Pumps = new Dictionary<string, PumpModel>(),
        },
        s_ours with
        {
            Salts = SaltCatalogue.Empty,
        },
        s_ours with
        {
            Crops = new Dictionary<string, CropType> { ["tomato"] = s_ours.Crops["tomato"] },
        },
        s_ours with
        {
            Crops = new Dictionary<string, CropType>
            {
                ["tomato"] = s_ours.Crops["tomato"] with { SodiumMillimolesPerLitre = null },
            },
        },
        s_ours with
        {
            Targets = s_ours.Targets with { Targets = new Dictionary<string, NutrientTarget>() },
        },
    ];

    private static PartsCatalogue Priced() =>
        Catalogue("""{ "currency": "EUR", "sundries": [{ "key": "clamp-1/2", "price": 4.99 }] }""", s_ours).Catalogue!;

    private static CatalogueReading Catalogue(string text, PartsCatalogue basis) =>
        CatalogueReader.Read(Encoding.UTF8.GetBytes(text), "a", basis);

    private static IEnumerable<string> Keys(Phrase phrase) =>
        phrase
            .Values.SelectMany(value =>
                value switch
                {
                    Phrase inner => Keys(inner),
                    Several several => several.Each.SelectMany(Keys),
                    _ => [],
                }
            )
            .Prepend(phrase.Key);

    private static string Leak(Phrase phrase)
    {
        var told = phrase.Told();
        return phrase.Key.Length > 0 && (told[0] != Pseudo.Start || told[^1] != Pseudo.End) ? told : LeakOf(told);
    }

    // A text of ours has no plain vowel left. What is in quotes, names of fields, keys and units are data.
    private static string LeakOf(string told)
    {
        var text = Quoted().Replace(told, " ");
        return string.Join(
            ' ',
            Word()
                .Matches(text)
                .Select(match => match.Value)
                .Where(word => Vowel().IsMatch(word) && !s_data.Contains(word))
        );
    }

    private static readonly HashSet<string> s_data =
    [
        "true",
        "false",
        "null",
        "in",
        "um",
        "meq",
        "mmol",
        .. new[] { typeof(Rig), typeof(Brief), typeof(CatalogueFile) }.SelectMany(Names),
        .. s_ours.Crops.Keys,
    ];

    private static IEnumerable<string> Names(Type record) =>
        FieldDescription
            .Of(record)
            .SelectMany(field =>
                (field.Amounts?.Names ?? [])
                    .Concat(field.Choices)
                    .Concat((field.Element ?? field).Kind is FieldKind.Section ? Names(field.ValueType) : [])
                    .Append(field.Name)
            );

    [GeneratedRegex("\"[^\"]*\"")]
    private static partial Regex Quoted();

    [GeneratedRegex(@"\p{L}[\p{L}\p{N}'-]+")]
    private static partial Regex Word();

    [GeneratedRegex("[aeiouAEIOU]")]
    private static partial Regex Vowel();
}
