using System.Globalization;
using Dripwright.Store.Ground;
using Dripwright.Store.Tables;
using Microsoft.Data.Sqlite;

namespace Dripwright.Store.Backups;

/// <summary>Brings what was written into the one file soon after, and notes the number of the last edit beside it.</summary>
/// <remarks>SQLite writes to a log beside the file first. Half a minute after the first change that still lies there it is brought over.</remarks>
internal sealed class Settling : IAsyncDisposable
{
    private static readonly TimeSpan s_rest = TimeSpan.FromSeconds(30);
    private static readonly TimeSpan s_again = TimeSpan.FromSeconds(10);

    private readonly Connection _at;
    private readonly TimeProvider _time;
    private readonly ITimer _timer;
    private readonly SemaphoreSlim _one = new(1, 1);
    private int _isWaiting;
    private volatile bool _isOver;

    public Settling(Connection at, TimeProvider time)
    {
        _at = at;
        _time = time;
        _timer = time.CreateTimer(_ => _ = Turn(), null, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
    }

    /// <summary>Something was written.</summary>
    public void Changed()
    {
        if (!_isOver && Interlocked.Exchange(ref _isWaiting, 1) == 0)
        {
            _timer.Change(s_rest, Timeout.InfiniteTimeSpan);
        }
    }

    /// <summary>Brings over what still waits.</summary>
    public async ValueTask DisposeAsync()
    {
        _isOver = true;
        await _timer.DisposeAsync().ConfigureAwait(false);
        if (Volatile.Read(ref _isWaiting) == 1)
        {
            await Turn().ConfigureAwait(false);
        }
    }

    // Nobody waits for it, and nothing is lost where it fails: the next change asks for it again.
    private async Task Turn()
    {
        await _one.WaitAsync().ConfigureAwait(false);
        try
        {
            Volatile.Write(ref _isWaiting, 0);
            if (!await _at.Alone(Settle, CancellationToken.None).ConfigureAwait(false))
            {
                Again();
            }
        }
        catch (Exception wrong)
            when (wrong
                    is SqliteException
                        or GardenException
                        or InvalidOperationException
                        or IOException
                        or UnauthorizedAccessException
            )
        {
            // A full disk, a folder that is gone: whoever writes next is told.
        }
        finally
        {
            _one.Release();
        }
    }

    private void Again()
    {
        if (!_isOver && Interlocked.Exchange(ref _isWaiting, 1) == 0)
        {
            _timer.Change(s_again, Timeout.InfiniteTimeSpan);
        }
    }

    // False where another reader or writer was in the way.
    private Task<bool> Settle() =>
        Task.Run(() =>
        {
            var path = _at.Place.Path!;
            if (!File.Exists(path))
            {
                return true;
            }

            using var file = SqliteCopy.Open(path);
            var edit = LastEdit.In(file);
            using var command = file.CreateCommand();
            command.CommandText = "PRAGMA wal_checkpoint(TRUNCATE)";
            // The first column says whether anybody was in the way.
            var isDone = Convert.ToInt64(command.ExecuteScalar(), CultureInfo.InvariantCulture) == 0;
            new LastEdit(edit, Opening.Now(_time)).Write(path);
            return isDone;
        });
}
