using Dripwright.Store.Tests;
using Dripwright.Workbench.Hosting;
using Microsoft.Extensions.Logging;

namespace Dripwright.Workbench.Tests;

public sealed class LogFileTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("dripwright-log-").FullName;
    private readonly SteppedClock _clock = new(new DateTime(2026, 4, 1, 23, 50, 0));

    private string Now => File.ReadAllText(Path.Combine(_folder, LogFile.Name));

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void A_cause_tells_its_stack_once_and_then_how_often_it_came()
    {
        using var file = new LogFile(Path.Combine(_folder, LogFile.Name), _clock);
        var log = file.CreateLogger("Test");
        for (var n = 0; n < 50; n++)
        {
            Say(log, "one", Thrown("first place"));
        }

        Say(log, "two", Elsewhere());
        Assert.Equal(1, Count(Now, "at Dripwright.Workbench.Tests.LogFileTests.Thrown"));
        Assert.Equal(1, Count(Now, "at Dripwright.Workbench.Tests.LogFileTests.Elsewhere"));
        Assert.Equal(50, Count(Now, " Error Test: one"));
        Assert.Contains("came 50 times", Now, StringComparison.Ordinal);
    }

    [Fact]
    public void Each_day_begins_a_file_of_its_own_in_which_each_cause_is_told_anew()
    {
        using var file = new LogFile(Path.Combine(_folder, LogFile.Name), _clock);
        var log = file.CreateLogger("Test");
        Say(log, "late", Thrown("x"));
        _clock.Step(TimeSpan.FromMinutes(20));
        Say(log, "early", Thrown("x"));
        Assert.DoesNotContain("late", Now, StringComparison.Ordinal);
        Assert.Equal(1, Count(Now, "at Dripwright.Workbench.Tests.LogFileTests.Thrown"));
        Assert.Contains(
            "late",
            File.ReadAllText(Path.Combine(_folder, "workbench-20260401.log")),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_week_is_kept_and_nothing_that_only_looks_like_a_log()
    {
        File.WriteAllText(Path.Combine(_folder, "workbench-notes.log"), "mine");
        File.WriteAllText(Path.Combine(_folder, "workbench-20250101-mine.log"), "mine");
        using var file = new LogFile(Path.Combine(_folder, LogFile.Name), _clock);
        var log = file.CreateLogger("Test");
        for (var day = 0; day < 30; day++)
        {
            Say(log, "once a day", null);
            _clock.Step(TimeSpan.FromDays(1));
        }

        Assert.True(File.Exists(Path.Combine(_folder, "workbench-notes.log")));
        Assert.True(File.Exists(Path.Combine(_folder, "workbench-20250101-mine.log")));
        var names = Directory.GetFiles(_folder, "workbench-20260*.log").Select(Path.GetFileName);
        Assert.Equal(
            Enumerable.Range(23, 7).Select(day => $"workbench-202604{day}.log"),
            names.Order(StringComparer.Ordinal)
        );
    }

    [Fact]
    public void However_much_is_written_the_log_takes_no_more_than_its_share()
    {
        using var file = new LogFile(Path.Combine(_folder, LogFile.Name), _clock);
        var log = file.CreateLogger("Test");
        var large = new string('x', 1 << 20);
        for (var n = 0; n < 120; n++)
        {
            Say(log, large, null);
        }

        Assert.InRange(LogFile.Bytes(_folder), 60L << 20, 95L << 20);
        Assert.All(
            Directory.GetFiles(_folder),
            one => Assert.InRange(new FileInfo(one).Length, 1, (6 << 20) + (1 << 19))
        );
    }

    private static void Say(ILogger log, string what, Exception? why) =>
        log.Log(LogLevel.Error, default, what, why, (said, _) => said);

    private static InvalidOperationException Thrown(string what)
    {
        try
        {
            throw new InvalidOperationException(what);
        }
        catch (InvalidOperationException why)
        {
            return why;
        }
    }

    private static InvalidOperationException Elsewhere()
    {
        try
        {
            throw new InvalidOperationException("elsewhere");
        }
        catch (InvalidOperationException why)
        {
            return why;
        }
    }

    private static int Count(string text, string what) => text.Split(what).Length - 1;
}
