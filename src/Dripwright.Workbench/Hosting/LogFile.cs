using System.Globalization;
using Microsoft.Extensions.Logging;

namespace Dripwright.Workbench.Hosting;

/// <summary>Warnings and errors in one file of the data folder. Each day, and at 5 MB, it is put aside and begun anew; a week is kept.</summary>
/// <remarks>A cause tells its whole story once in each file; when it comes again one line says so, and how often it came.</remarks>
/// <param name="path">The file.</param>
/// <param name="time">The clock; the system's where null.</param>
internal sealed class LogFile(string path, TimeProvider? time = null) : ILoggerProvider
{
    public const string Name = "workbench.log";

    private const long Most = 5 << 20;
    private const int DaysKept = 7;
    private const int FilesKept = 14;
    private const int CausesKept = 500;
    private const string Stamp = "yyyyMMdd";

    private readonly Lock _turn = new();
    private readonly TimeProvider _time = time ?? TimeProvider.System;
    private readonly Dictionary<string, int> _causes = new(StringComparer.Ordinal);

    public ILogger CreateLogger(string categoryName) => new Pen(this, categoryName);

    public void Dispose() { }

    /// <summary>[bytes] What the log takes in a data folder.</summary>
    public static long Bytes(string folder) =>
        Directory.Exists(folder)
            ? new DirectoryInfo(folder)
                .EnumerateFiles(Path.GetFileNameWithoutExtension(Name) + "*" + Path.GetExtension(Name))
                .Sum(file => file.Length)
            : 0;

    private void Write(LogLevel level, string about, string said, Exception? why)
    {
        lock (_turn)
        {
            try
            {
                var now = _time.GetUtcNow().UtcDateTime;
                TurnOver(now);
                var at = now.ToString("yyyy-MM-dd HH:mm:ss'Z'", CultureInfo.InvariantCulture);
                File.AppendAllText(path, $"{at} {level} {about}: {said}\n{Story(why)}");
                // The day of a file is that of the last line in it, also for the next start and on a clock that is set.
                File.SetLastWriteTimeUtc(path, now);
            }
            catch (IOException)
            {
                // A full disk must not bring the pages down as well.
            }
            catch (UnauthorizedAccessException)
            {
                // As above.
            }
        }
    }

    private string Story(Exception? why)
    {
        if (why is null)
        {
            return "";
        }

        var cause = Cause(why);
        if (!_causes.TryGetValue(cause, out var count))
        {
            if (_causes.Count >= CausesKept)
            {
                _causes.Clear();
            }

            _causes[cause] = 1;
            return why + "\n";
        }

        _causes[cause] = ++count;
        var said = why.Message.ReplaceLineEndings(" ");
        return string.Create(
            CultureInfo.InvariantCulture,
            $"    {why.GetType().Name}: {said} (came {count} times since its stack above)\n"
        );
    }

    // What was thrown and where, down to the first of them.
    private static string Cause(Exception why)
    {
        var cause = "";
        for (var at = why; at is not null; at = at.InnerException)
        {
            cause += at.GetType().FullName + (at.StackTrace?.Split('\n', 2)[0] ?? "") + "\n";
        }

        return cause;
    }

    private void TurnOver(DateTime now)
    {
        var file = new FileInfo(path);
        if (!file.Exists || (file.Length <= Most && file.LastWriteTimeUtc.Date == now.Date))
        {
            return;
        }

        var day = file.LastWriteTimeUtc.ToString(Stamp, CultureInfo.InvariantCulture);
        var to = Aside(day, 1);
        for (var n = 2; File.Exists(to); n++)
        {
            to = Aside(day, n);
        }

        File.Move(path, to);
        _causes.Clear();
        Forget(now);
    }

    private void Forget(DateTime now)
    {
        var oldest = now.Date.AddDays(-DaysKept);
        var asides = Directory
            .EnumerateFiles(Path.GetDirectoryName(path)!, Aside("*", null))
            .Select(file => (File: file, Day: DayOf(file)))
            .Where(one => one.Day is not null)
            .OrderByDescending(one => one.Day)
            .ThenByDescending(one => File.GetLastWriteTimeUtc(one.File))
            .ToList();
        foreach (var (gone, _) in asides.Where((one, at) => at >= FilesKept || one.Day < oldest))
        {
            File.Delete(gone);
        }
    }

    // Null for a file that only looks like one of ours.
    private DateTime? DayOf(string file)
    {
        var start = Path.GetFileNameWithoutExtension(path).Length + 1;
        var rest = Path.GetFileNameWithoutExtension(file)[start..].Split('-');
        return
            DateTime.TryParseExact(rest[0], Stamp, CultureInfo.InvariantCulture, DateTimeStyles.None, out var day)
            && (rest.Length == 1 || (rest.Length == 2 && int.TryParse(rest[1], CultureInfo.InvariantCulture, out _)))
            ? day
            : null;
    }

    private string Aside(string day, int? number)
    {
        var name = $"{Path.GetFileNameWithoutExtension(path)}-{day}";
        name += number > 1 ? string.Create(CultureInfo.InvariantCulture, $"-{number}") : "";
        return number is null
            ? name + Path.GetExtension(path)
            : Path.Combine(Path.GetDirectoryName(path)!, name + Path.GetExtension(path));
    }

    private sealed class Pen(LogFile file, string about) : ILogger
    {
        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => logLevel >= LogLevel.Warning;

        public void Log<TState>(
            LogLevel logLevel,
            EventId eventId,
            TState state,
            Exception? exception,
            Func<TState, Exception?, string> formatter
        )
        {
            if (IsEnabled(logLevel))
            {
                file.Write(logLevel, about, formatter(state, exception).ReplaceLineEndings(" "), exception);
            }
        }
    }
}
