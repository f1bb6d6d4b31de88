using System.Globalization;
using Microsoft.Extensions.Logging;

namespace Dripwright.Workbench.Hosting;

/// <summary>Warnings and errors in one file of the data folder. At 5 MB it is put aside and begun anew.</summary>
internal sealed class LogFile(string path) : ILoggerProvider
{
    public const string Name = "workbench.log";

    private const long Most = 5 << 20;

    private readonly Lock _turn = new();

    public ILogger CreateLogger(string categoryName) => new Pen(this, categoryName);

    public void Dispose() { }

    private void Write(string line)
    {
        lock (_turn)
        {
            try
            {
                if (new FileInfo(path) is { Exists: true, Length: > Most })
                {
                    File.Move(path, path + ".old", overwrite: true);
                }

                File.AppendAllText(path, line);
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
                var now = DateTime.UtcNow.ToString("yyyy-MM-dd HH:mm:ss'Z'", CultureInfo.InvariantCulture);
                var said = formatter(state, exception).ReplaceLineEndings(" ");
                file.Write($"{now} {logLevel} {about}: {said}\n{(exception is null ? "" : exception + "\n")}");
            }
        }
    }
}
