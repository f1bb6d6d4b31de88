using System.Globalization;
using System.Text.RegularExpressions;
using CsCheck;
using Xunit.Sdk;

namespace Dripwright.Engine.Tests;

/// <summary>The drawing that all laws of the tests rest on.</summary>
public sealed class LawTests : IDisposable
{
    private static readonly Gen<(int, string, double)> s_mixed = Gen.Select(Gen.Int, Gen.String, Gen.Double);

    private readonly string _file = Path.Combine(Path.GetTempPath(), $"seeds-{Guid.NewGuid():N}.json");

    private PinnedSeeds Seeds => new(_file);

    public void Dispose() => File.Delete(_file);

    [Fact]
    public void A_law_draws_the_same_cases_on_every_run_and_in_every_culture()
    {
        var first = Drawn(Of("A.law"), s_mixed);
        CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
        Assert.Equal(first, Drawn(Of("A.law"), s_mixed));
        Assert.Equal(Law.Usual, first.Count);
        Assert.True(first.Distinct().Count() > 95);
    }

    // Written down: another machine, framework or library that draws others is told here.
    [Fact]
    public void The_first_cases_of_a_name_are_these() =>
        Assert.Equal([678, 949, 769, 900, 680], Drawn(Of("A.law"), Gen.Int[0, 999]).Take(5));

    [Fact]
    public void Laws_of_other_names_draw_other_cases() =>
        Assert.NotEqual(Drawn(Of("A.law"), Gen.ULong), Drawn(Of("A.law2"), Gen.ULong));

    [Fact]
    public void Fresh_runs_draw_other_cases_each_time() =>
        Assert.NotEqual(Drawn(Of("A.law", isFresh: true), Gen.ULong), Drawn(Of("A.law", isFresh: true), Gen.ULong));

    [Fact]
    public void A_long_run_draws_the_ordinary_cases_and_on()
    {
        var ordinary = Drawn(Of("A.law"), s_mixed);
        var all = Drawn(Of("A.law", factor: 10), s_mixed);
        Assert.Equal(10 * ordinary.Count, all.Count);
        Assert.Equal(ordinary, all.Take(ordinary.Count));
    }

    [Fact]
    public void A_fresh_case_that_fails_is_pinned_and_tried_first_on_every_run()
    {
        var tried = new List<int>();
        void NotHigh(int drawn)
        {
            tried.Add(drawn);
            Assert.True(drawn < 900);
        }

        Assert.Throws<XunitException>(() => Of("A.law", isFresh: true).Run(Gen.Int[0, 999], NotHigh, 1000));
        var seed = Assert.Single(Seeds.Of("A.law"));
        var found = tried.Where(drawn => drawn >= 900).Min();

        tried.Clear();
        var told = Assert.Throws<XunitException>(() => Of("A.law").Run(Gen.Int[0, 999], NotHigh, 1));
        Assert.Equal(found, tried[0]);
        Assert.Contains(seed, told.Message, StringComparison.Ordinal);
        Assert.Empty(Seeds.Of("Another.law"));
    }

    [Fact]
    public void A_case_that_fails_in_an_ordinary_run_is_told_and_not_pinned()
    {
        var told = Assert.Throws<XunitException>(() =>
            Of("A.law").Run(Gen.Int[0, 999], n => Assert.True(n < 500), 100)
        );
        Assert.Contains("A.law fails at case", told.Message, StringComparison.Ordinal);
        Assert.IsType<TrueException>(told.InnerException);
        Assert.False(File.Exists(_file));
    }

    [Fact]
    public void The_case_told_is_among_the_smallest_that_fail()
    {
        var told = Assert.Throws<XunitException>(() =>
            Of("A.law").Run(Gen.Int[0, 100_000], n => Assert.True(n < 100, "too great"), 1000)
        );
        var number = int.Parse(told.Message.Split("Case: ")[1], CultureInfo.InvariantCulture);
        Assert.InRange(number, 100, 2_000);
    }

    // Not through Holds: in a run that draws anew, what fails here would be pinned for good.
    [Fact]
    public void A_law_that_answers_no_fails() =>
        Assert.Throws<XunitException>(() => Of("A.law").Run(Gen.Int[0, 9], Law.Said<int>(drawn => drawn < 9), 100));

    // Assert.Throws would let the skipping through and skip this test.
    [Fact]
    public void A_law_that_skips_skips_its_test()
    {
        Exception? told = null;
        try
        {
            Gen.Int.Holds((int _) => Assert.Skip("No checker."));
        }
        catch (Exception thrown)
        {
            told = thrown;
        }
        Assert.IsType<SkipException>(told);
    }

    [Fact]
    public async Task A_law_that_is_awaited_fails_like_any_other() =>
        await Assert.ThrowsAsync<XunitException>(() =>
            Of("A.law")
                .RunAsync(
                    Gen.Int[0, 9],
                    async drawn =>
                    {
                        await Task.Yield();
                        Assert.NotEqual(9, drawn);
                    },
                    100
                )
        );

    [Fact]
    public void Seeds_pinned_at_the_same_time_are_all_kept()
    {
        Parallel.For(0, 20, n => new PinnedSeeds(_file).Add("A.law", FormattableString.Invariant($"{n:D4}")));
        Assert.Equal(20, Seeds.Of("A.law").Count);
        Assert.False(File.Exists(_file + ".lock"));
    }

    // A test that was renamed leaves its seeds behind.
    [Fact]
    public void Every_pinned_seed_belongs_to_a_test_that_is_there()
    {
        var texts = Directory
            .EnumerateFiles(Path.Combine(CommittedText.Root, "tests"), "*.cs", SearchOption.AllDirectories)
            .Select(File.ReadAllText)
            .ToList();
        Assert.All(
            PinnedSeeds.Ours.All.Keys,
            test =>
            {
                var (type, method) = (test.Split('.')[0], test.Split('.')[1]);
                Assert.Contains(
                    texts,
                    text =>
                        Regex.IsMatch(text, $@"\bclass {type}\b", RegexOptions.None, TimeSpan.FromSeconds(1))
                        && Regex.IsMatch(text, $@"\b{method}\(", RegexOptions.None, TimeSpan.FromSeconds(1))
                );
            }
        );
    }

    private LawRun Of(string test, bool isFresh = false, int factor = 1) =>
        new()
        {
            Test = test,
            Pinned = Seeds,
            IsFresh = isFresh,
            Factor = factor,
        };

    private static List<T> Drawn<T>(LawRun run, Gen<T> gen)
    {
        List<T> drawn = [];
        run.Run(gen, drawn.Add, Law.Usual);
        return drawn;
    }
}
