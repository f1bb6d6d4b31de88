using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Nutrients.Correcting;
using Dripwright.Engine.Nutrients.Planning;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Tending;
using Dripwright.Engine.Tests.Planning;
using Dripwright.Engine.Units;
using Dripwright.Language;
using Dripwright.Language.Report;

namespace Dripwright.Engine.Tests.Nutrients;

/// <summary>What the nutrients have to say comes from the texts, in any language and in either system of units.</summary>
public sealed partial class NutrientTextTests
{
    private const string Texts = "src/Dripwright.Language/en/nutrients.json";

    private static readonly string[] s_rigs =
    [
        $""" "crop": "tomato", {NutrientPlanTests.Hard} """,
        $""" "crop": "tomato", "acid": "nitric-acid-60", "mixing": "cans", "partsOfFeed": 400, {NutrientPlanTests.Hard} """,
        """ "crop": "tomato", "acid": "phosphoric-acid-59", "water": { "sodium": "250 mg/L", "chloride": "92 mg/L", "alkalinity": "9 meq/L", "ammonium": "60 mg/L as N" } """,
        """ "crop": "cucumber", "pureShare": "100 %", "scaleStep": "10 g", "salts": [ { "salt": "potassium-nitrate" }, { "salt": "fe-edta-13" } ], "ph": 6.8 """,
        """ "crop": "tomato", "pureShare": "100 %", "target": "tomato-florida-1", "salts": [] """,
    ];

    private static Plan Of(string nutrients)
    {
        var reading = RigReader.Read(
            $$"""{ "units": "us", "rows": [ { "pots": 10, "planting": [ { "crop": "tomato" } ] } ], "nutrients": { {{nutrients}} } }""",
            "test.rig.json",
            PartsCatalogue.Default
        );
        Assert.Empty(reading.Faults);
        return Plans.Of(reading.Rig!);
    }

    private static IEnumerable<Phrase> SaidOfTheTank(Plan plan)
    {
        var full = plan.Nutrients!.Volume;
        var limit = plan.Nutrients.SodiumLimit.Classic;
        TankReading[] readings =
        [
            new(1.0, 7.8, 0.5 * full),
            new(4, 5, full),
            new(1.9, 7, full),
            new(40, 1, 9 * full, 68),
            new(double.NaN, double.NaN, -1, 200),
        ];
        foreach (var reading in readings)
        {
            var answer = NutrientTank.Correct(plan, reading);
            foreach (var said in answer.Refusals.SelectMany(refusal => new[] { refusal.What, refusal.Remedy }))
            {
                yield return said;
            }

            if (answer.Value is { } tank)
            {
                IEnumerable<Phrase> all =
                [
                    .. tank.Steps.Select(step => step.Text),
                    .. tank.Steps.SelectMany(step => step.Weigh).Select(salt => salt.Text),
                    .. tank.Notes,
                    .. tank.Cautions,
                    .. NutrientRenewal.Of(plan, reading, new TankPast(30)).SelectMany(renewal => renewal.Text),
                    .. NutrientRenewal.Of(plan, reading, new TankPast()).SelectMany(renewal => renewal.Text),
                    .. NutrientRenewal
                        .Of(plan, reading, new TankPast(Sodium: 2 * limit))
                        .SelectMany(renewal => renewal.Text),
                ];
                foreach (var said in all)
                {
                    yield return said;
                }
            }
        }

        foreach (var end in new[] { 1.5, 2.1, 9 })
        {
            var uptake = NutrientUptake.Between(
                plan,
                new TankReading(1.9, 5.8, full),
                new TankReading(end, 5.8, 0.7 * full),
                new PouredBetween(),
                3
            );
            var lines = uptake.Value?.Lines ?? uptake.Refusals.Select(refusal => refusal.What);
            foreach (var said in lines)
            {
                yield return said;
            }
        }
    }

    private static IEnumerable<Phrase> Said(Plan plan)
    {
        var nutrients = plan.Nutrients!;
        return
        [
            .. nutrients.Findings.SelectMany(finding => new[] { finding.What, finding.Remedy }),
            .. nutrients.Findings.SelectMany(finding => finding.Cures).SelectMany(cure => cure.Steps),
            .. nutrients.Outlook?.All.Select(way => NutrientWords.NameOf(nutrients.Outlook, way)) ?? [],
            .. nutrients.Outlook?.All.Select(NutrientWords.RunsShortFirst).Where(said => said.Key.Length > 0) ?? [],
            .. SaidOfTheTank(plan),
            .. Caution.All.SelectMany(caution => new[] { caution.What, caution.Do }),
        ];
    }

    [Fact]
    public void All_that_is_said_of_nutrients_is_told_from_the_texts_of_the_language()
    {
        var before = CultureInfo.CurrentUICulture;
        try
        {
            CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo("qps-ploc");
            List<string> said = [.. s_rigs.Select(Of).SelectMany(Said).Select(phrase => phrase.Told())];
            Assert.True(said.Count > 150);
            Assert.All(said, text => Assert.True(text is ['⟦', .., '⟧'], text));
        }
        finally
        {
            CultureInfo.CurrentUICulture = before;
        }
    }

    [Fact]
    public void One_plan_is_told_in_gallons_and_in_litres()
    {
        var plan = Of(s_rigs[3]);
        var coarse = plan.Nutrients!.Findings.First(finding => finding.Rule == "scale-coarse");
        Assert.Contains(" gal ", coarse.Told(UnitSystem.Us).Remedy, StringComparison.Ordinal);
        Assert.Contains(" L ", coarse.Told(UnitSystem.Metric).Remedy, StringComparison.Ordinal);
        var cold = Of(s_rigs[1]).Nutrients!.Findings.First(finding => finding.Rule == "stock-saturated");
        Assert.Contains("50 °F", cold.Told(UnitSystem.Us).What, StringComparison.Ordinal);
        Assert.Contains("10 °C", cold.Told(UnitSystem.Metric).What, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_finding_names_fields_that_the_rig_file_has()
    {
        var fields = s_rigs
            .Select(Of)
            .SelectMany(plan => plan.Nutrients!.Findings)
            .SelectMany(finding => finding.Fields);
        Assert.All(
            fields.Distinct(),
            field => Assert.Contains($"`{field.Split('.')[^1]}`", Handbook(), StringComparison.Ordinal)
        );
        Assert.All(fields, field => Assert.StartsWith("nutrients.", field, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(622.04, 0.1, "622.0 g")]
    [InlineData(0.25, 0.25, "0.25 g")]
    [InlineData(2.5, 1, "3 g")]
    [InlineData(0.123, 0.001, "0.123 g")]
    public void A_weight_is_told_to_the_step_of_the_scale(double grams, double step, string told) =>
        Assert.Equal(told, Phrase.Of(Measured.Weighed(grams / 1000, step / 1000)).Told());

    [Fact]
    public void Meters_and_bottles_are_told_as_they_are_read()
    {
        Assert.Equal("2.40 dS/m", Phrase.Of(Measured.Ec(0.24)).Told());
        Assert.Equal("5.8", Phrase.Of(Measured.PH(5.8)).Told());
        Assert.Equal("4.2 mL", Phrase.Of(Measured.MeasuredOut(4.2e-6)).Told());
        Assert.Equal("42 mL", Phrase.Of(Measured.MeasuredOut(42.4e-6)).Told());
    }

    [Fact]
    public void Nitrogen_that_is_one_sum_is_called_total()
    {
        var plan = Of(s_rigs[4]);
        Assert.True(plan.Nutrients!.Recipe.Job.Target.NitrogenIsSum);
        using var json = JsonDocument.Parse(PlanJson.WriteNutrients(plan));
        List<string?> elements =
        [
            .. json
                .RootElement.GetProperty("elements")
                .EnumerateArray()
                .Select(e => e.GetProperty("element").GetString()),
        ];
        Assert.Contains("N", elements);
        Assert.DoesNotContain("NO3-N", elements);
        Assert.Contains(
            plan.Nutrients.Findings,
            finding => finding.Told().What == "None of your salts brings nitrogen."
        );
        Assert.Equal("total N", Elements.Short(Constituent.NitrateNitrogen, isTotal: true).Told());
        Assert.Equal("nitrate N", Elements.Short(Constituent.NitrateNitrogen).Told());
        Assert.Equal("ammonium N", Elements.Short(Constituent.AmmoniumNitrogen, isTotal: true).Told());
    }

    [Fact]
    public void A_reservoir_that_is_changed_once_is_not_changed_one_times()
    {
        Assert.Contains(
            "once in 12 weeks",
            Phrase.Counted("finding.loop-sodium.change.remedy", 1, 12).Told(),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "3 times in 12 weeks",
            Phrase.Counted("finding.loop-sodium.change.remedy", 3, 12).Told(),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Every_text_of_the_nutrients_is_used()
    {
        var sources = Sources("src");
        var keys = JsonSerializer.Deserialize<Dictionary<string, string>>(CommittedText.Of(Texts))!.Keys;
        Assert.Equal(keys.Order(StringComparer.Ordinal), keys);
        Assert.All(
            keys,
            key => Assert.Contains(Spelt(key), spelt => sources.Contains($"\"{spelt}\"", StringComparison.Ordinal))
        );
    }

    [Fact]
    public void Every_key_that_is_named_has_a_text()
    {
        var sources = Sources("src/Dripwright.Engine/Chemistry", "src/Dripwright.Engine/Nutrients");
        List<string> named =
        [
            .. LiteralKey().Matches(sources).Select(match => match.Groups[1].Value),
            .. ElseKey().Matches(sources).Select(match => match.Groups[1].Value),
        ];
        Assert.True(named.Count > 100);
        HashSet<string> known = [.. Words.All.Keys];
        Assert.All(named, key => Assert.True(known.Contains(key) || known.Contains($"{key}.one"), key));
        List<string> reasons = [.. Reason().Matches(sources).Select(match => match.Groups[1].Value)];
        Assert.True(reasons.Count > 15);
        Assert.All(
            reasons,
            name =>
            {
                Assert.Contains($"unanswerable.{name}.what", known);
                Assert.Contains(known, key => key.StartsWith($"unanswerable.{name}.remedy", StringComparison.Ordinal));
            }
        );
        Assert.All(
            RuleBook.Rules.Keys.Where(rule =>
                rule
                    is "water-sodium"
                        or "water-chloride"
                        or "water-calcium"
                        or "water-sulfate"
                        or "water-boron"
                        or "water-iron"
                        or "water-manganese"
                        or "water-zinc"
            ),
            rule =>
            {
                Assert.Contains($"finding.{rule}.what", known);
                Assert.Contains($"finding.{rule}.remedy", known);
            }
        );
    }

    private static string Handbook() => CommittedText.Of("docs/handbook/rig-file.md");

    // A text of one and many, a reason and a rule of a water are named by a part of their key.
    private static IEnumerable<string> Spelt(string key)
    {
        var parts = key.Split('.');
        yield return key;
        yield return string.Join('.', parts[..^1]);
        if (parts[0] is "unanswerable" || key.StartsWith("finding.water-", StringComparison.Ordinal))
        {
            yield return parts[1];
        }

        if (key.StartsWith("screen.mix.level.", StringComparison.Ordinal))
        {
            yield return "screen.mix.level.{finding.Level}";
        }
    }

    private static string Sources(params string[] folders) =>
        string.Join(
            '\n',
            folders
                .SelectMany(folder =>
                    Directory.EnumerateFiles(
                        Path.Combine(CommittedText.Root, folder),
                        "*.*",
                        SearchOption.AllDirectories
                    )
                )
                .Where(file => Path.GetExtension(file) is ".cs" or ".razor")
                .Where(file =>
                    !file.Contains(
                        $"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}",
                        StringComparison.Ordinal
                    )
                )
                .Order(StringComparer.Ordinal)
                .Select(File.ReadAllText)
        );

    [GeneratedRegex("""(?:Phrase\.(?:Of|Counted)|Words\.Of|Place\.Of)\(\s*"([a-z0-9-]+(?:\.[a-z0-9-]+)+)"\s*[,)]""")]
    private static partial Regex LiteralKey();

    [GeneratedRegex(
        """[?:>]\s*"((?:finding|tank|uptake|nutrients|element|ion|unanswerable)\.[a-z0-9-]+(?:\.[a-z0-9-]+)*)"\s*(?:[,:;)]|$)""",
        RegexOptions.Multiline
    )]
    private static partial Regex ElseKey();

    [GeneratedRegex("""Unanswerable\.(?:Of|With)\(\s*"([a-z-]+)"\s*[,)]""")]
    private static partial Regex Reason();
}
