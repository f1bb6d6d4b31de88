using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Numerics;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Stands.Frame;
using Dripwright.Engine.Stands.Loads;
using Dripwright.Engine.Tests.Planning;
using Dripwright.Engine.Units;
using Dripwright.Engine.Water;
using Dripwright.Language;

namespace Dripwright.Engine.Tests.Findings;

/// <summary>A finding is values; its words come from one file per language, in the units of whoever reads it.</summary>
public sealed partial class FindingTextTests
{
    [Fact]
    public void Every_sentence_of_every_rule_has_its_text_and_every_place_in_it_is_filled()
    {
        foreach (var (rule, rig) in BrokenRigs.All)
        {
            foreach (var finding in BrokenRigs.Plan(rule, rig).Findings)
            {
                foreach (var units in Enum.GetValues<UnitSystem>())
                {
                    var told = finding.Told(units).ToString();
                    Assert.DoesNotContain("{", told[(told.IndexOf('{') + 1)..], StringComparison.Ordinal);
                    Assert.DoesNotContain("NaN", told, StringComparison.Ordinal);
                }
            }
        }
    }

    [Fact]
    public void The_same_plan_is_told_in_either_system_of_units_without_planning_anew()
    {
        var plan = BrokenRigs.Plan("aisle-narrow", BrokenRigs.All.First(b => b.Rule == "aisle-narrow").Rig);
        var aisle = plan.Findings.First(f => f.Rule == "aisle-narrow");

        Assert.Equal(("12 in", "at least 24 in"), (aisle.Told().Value, aisle.Told().Limit));
        var metric = aisle.Told(UnitSystem.Metric);
        Assert.Equal(("30.5 cm", "at least 61 cm"), (metric.Value, metric.Limit));
        Assert.Equal(aisle.Told().What, metric.What);
    }

    // Salts are weighed in grams and acids measured in millilitres in either system.
    [Fact]
    public void No_metric_unit_is_told_to_who_reads_inches_and_no_inch_to_who_reads_millimetres()
    {
        foreach (var (rule, rig) in BrokenRigs.OfTheRig)
        {
            foreach (var finding in BrokenRigs.Plan(rule, rig).Findings)
            {
                var us = finding.Told(UnitSystem.Us);
                var metric = finding.Told(UnitSystem.Metric);
                // Names of parts are the catalogue's: "1 in square tube".
                Assert.DoesNotMatch(MetricUnit(), $"{us.What} {us.Value} {us.Limit} {us.Remedy}");
                Assert.DoesNotMatch(UsUnit(), $"{metric.What} {metric.Value} {metric.Limit} {metric.Remedy}");
            }
        }
    }

    [Fact]
    public void In_the_pseudo_language_no_word_of_a_finding_comes_from_elsewhere_than_the_texts()
    {
        var before = CultureInfo.CurrentUICulture;
        CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo(Pseudo.Culture);
        HashSet<object> salts = [.. PartsCatalogue.Default.Salts.Salts.Values.Select(salt => salt.Name)];
        try
        {
            foreach (var (rule, rig) in BrokenRigs.All)
            {
                foreach (var finding in BrokenRigs.Plan(rule, rig).Findings)
                {
                    Phrase[] phrases =
                    [
                        finding.What,
                        finding.Value,
                        finding.Limit,
                        finding.Remedy,
                        .. finding.Places.Select(place => place.Name),
                    ];
                    Assert.All(
                        phrases.Where(p => p.Key.Length > 0),
                        phrase =>
                        {
                            var told = phrase.Told();
                            Assert.True(told[0] == Pseudo.Start && told[^1] == Pseudo.End, told);
                        }
                    );
                    // What has no key is a measured value, the name of a salt, or that of a part where it stands for a place.
                    Assert.All(
                        (Phrase[])[finding.What, finding.Value, finding.Limit, finding.Remedy],
                        phrase =>
                            Assert.True(
                                phrase.Key.Length > 0
                                    || phrase.IsNone
                                    || phrase.Values[0] is Measured
                                    || salts.Contains(phrase.Values[0])
                            )
                    );
                }
            }
        }
        finally
        {
            CultureInfo.CurrentUICulture = before;
        }
    }

    [Fact]
    public void Every_text_that_the_engine_asks_for_is_there()
    {
        var texts = Words.All;
        foreach (var key in AskedFor().Where(key => !key.Contains('*')))
        {
            Assert.True(
                texts.ContainsKey(key) || (texts.ContainsKey($"{key}.one") && texts.ContainsKey($"{key}.many")),
                $"There is no text '{key}'."
            );
        }

        Assert.All(StandCase.Of(true, 3), load => Assert.NotEmpty(load.Name.Told()));
        Assert.All(Enum.GetNames<FittingKind>(), kind => Assert.NotEmpty(Words.Of($"fitting.kind.{kind}")));
        Assert.All(Enum.GetNames<ManufactureClass>(), name => Assert.NotEmpty(Words.Of($"emitter.class.{name}")));
        Assert.All(
            Enum.GetValues<FrameFaultKind>(),
            kind =>
                Assert.NotEmpty(
                    new FrameFault(kind, 0, "", new Vector3(1, 1, 1), kind is FrameFaultKind.Tips, [])
                        .Sentence(Phrase.Of("frame.node.foot"))
                        .Told()
                )
        );
    }

    [Theory]
    [InlineData("engine")]
    [InlineData("faults")]
    [InlineData("findings")]
    [InlineData("parts")]
    [InlineData("printed")]
    [InlineData("proposals")]
    [InlineData("summary")]
    public void No_text_that_the_engine_has_to_say_is_left_over(string file)
    {
        var own = JsonSerializer.Deserialize<Dictionary<string, string>>(
            CommittedText.Of($"src/Dripwright.Language/en/{file}.json")
        )!;
        Regex[] asked =
        [
            .. AskedFor()
                .Select(key => new Regex(
                    $"^{Regex.Escape(key).Replace("\\*", "[A-Za-z0-9-]+", StringComparison.Ordinal)}(\\.one|\\.many)?$"
                )),
        ];

        Assert.DoesNotContain(own.Keys, key => !asked.Any(pattern => pattern.IsMatch(key)));
        Assert.Equal(own.Keys.Order(StringComparer.Ordinal), own.Keys);
    }

    /// <summary>Keys that stand in the code between quotes; a star where a value goes into one.</summary>
    private static HashSet<string> AskedFor()
    {
        string[] folders =
        [
            "src/Dripwright",
            "src/Dripwright.Engine",
            "src/Dripwright.Language",
            "src/Dripwright.Sheets",
            "src/Dripwright.Solids",
        ];
        return
        [
            .. folders
                .SelectMany(folder =>
                    Directory.EnumerateFiles(
                        Path.Combine(CommittedText.Root, folder),
                        "*.cs",
                        SearchOption.AllDirectories
                    )
                )
                .SelectMany(file => Quoted().Matches(File.ReadAllText(file)))
                .Select(match => Hole().Replace(match.Groups["key"].Value, "*")),
        ];
    }

    // Of the parts that this file's rules use: those of other files have tests of their own.
    [GeneratedRegex(
        "\"(?<key>(?:fault|formula|quantity|finding|limit|place|list|count|measured|fitting|hole|emitter|cut|frame|half|own|water|part|print|proposal|obstacle|progress|uniformity|figures|sentence|starter|stand\\.(?:case|remedy|trial))\\.[A-Za-z0-9.{}-]+)\""
    )]
    private static partial Regex Quoted();

    [GeneratedRegex("\\{[^}]*\\}")]
    private static partial Regex Hole();

    [GeneratedRegex("[0-9] (mm|cm|m|L|mL|L/h|m³/h|kPa|N|kN|kg|kg/m²|m/s|°C)\\b")]
    private static partial Regex MetricUnit();

    [GeneratedRegex("[0-9] (in|ft|gal|gph|psi|lb|lbf|oz|fl oz|lb/ft²|ft/s|°F)\\b")]
    private static partial Regex UsUnit();
}
