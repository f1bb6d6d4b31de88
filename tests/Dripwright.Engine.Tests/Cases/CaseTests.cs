using Dripwright.Engine.Findings;
using Dripwright.Language;

namespace Dripwright.Engine.Tests.Cases;

/// <summary>What an experienced grower would say, held against what the plan says.</summary>
/// <remarks>
/// A case that is "wrong" is a rule to be mended; who mends it turns the case to "right" and lowers <see cref="MostWrong"/>.
/// </remarks>
public sealed class CaseTests
{
    /// <summary>Cases that may still come out wrong. It rises only with cases that are new, and falls with each that is mended.</summary>
    private const int MostWrong = 7;

    public static TheoryData<string> Names => [.. CaseBook.All.Select(c => c.Case.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Each_case_comes_out_as_it_was_last_measured(string name)
    {
        var asked = CaseBook.All.Single(c => c.Case.Name == name).Case;
        var verdict = CaseJudge.Of(asked);
        Assert.True(
            verdict.Right == (asked.Now == Now.Right),
            verdict.Right
                ? $"'{name}' comes out right now ({verdict.Why}): turn it to \"right\" and lower the number of wrong ones."
                : $"'{name}' does not come out: {verdict.Why}."
        );
    }

    [Fact]
    public void There_are_a_hundred_cases_thirty_of_them_sound_and_no_more_wrong_than_before()
    {
        Assert.True(CaseBook.All.Count >= 100);
        Assert.True(CaseBook.All.Count(c => c.Case.Expect == Expected.Silent) >= 30);
        var wrong = CaseBook.All.Count(c => c.Case.Now == Now.Wrong);
        Assert.True(wrong == MostWrong, $"{wrong} cases are wrong: the number here is theirs, and only falls.");
    }

    [Fact]
    public void Every_case_says_what_is_needed_to_try_it()
    {
        foreach (var (_, asked) in CaseBook.All)
        {
            Assert.True(
                asked.Rig is null != asked.Start is null,
                $"'{asked.Name}' has a rig or answers, and not both."
            );
            var speaks = asked.Expect is not (Expected.Silent or Expected.Figure);
            Assert.True(!speaks || asked.Rule is null != asked.Missing is null, $"'{asked.Name}' needs one rule.");
            Assert.True(asked.Expect != Expected.Figure || asked.Figure is not null, $"'{asked.Name}' needs a figure.");
            Assert.True(
                asked.Missing is null || asked.Fields.Count > 0 || asked.Unsaid is not null,
                $"'{asked.Name}' needs the fields that a rule to come would point at."
            );
            Assert.True(asked.Missing is null || asked.Now == Now.Wrong, $"'{asked.Name}' needs the key of its rule.");
            Assert.All([.. asked.Rules, .. asked.Rule is { } key ? [key] : Array.Empty<string>()], IsRule);
        }

        static void IsRule(string key) => Assert.True(RuleBook.Rules.ContainsKey(key), $"No rule is called '{key}'.");
    }

    [Fact]
    public void Every_rig_and_every_cure_reads_unless_the_file_cannot_say_it_yet()
    {
        foreach (var (_, asked) in CaseBook.All)
        {
            var reading = CaseJudge.Read(asked);
            if (asked.Unsaid is { } unsaid)
            {
                Assert.True(
                    reading.Faults.Count == 1 && reading.Faults[0].Path == unsaid,
                    $"'{asked.Name}': the file can say '{unsaid}' now, or cannot say something else."
                );
                continue;
            }

            Assert.True(reading.Rig is not null, $"'{asked.Name}': {string.Join("; ", reading.Faults.Told())}");
            if (asked.Cure is { } cure)
            {
                var cured = CaseJudge.Cured(reading.Rig, cure);
                Assert.True(cured.Rig is not null, $"'{asked.Name}', cured: {string.Join("; ", cured.Faults.Told())}");
            }
        }
    }

    [Fact]
    public void The_page_of_cases_is_made_from_them() =>
        CommittedText.Is("docs/cases.md", CasesPage.Text(CaseBook.All));
}
