namespace Dripwright.Workbench.Http;

/// <summary>Work that takes long: so many at once, so many waiting, so long; who comes then is told to come again.</summary>
internal sealed class Turns(int atOnce, int waiting, TimeSpan longest) : IDisposable
{
    private readonly SemaphoreSlim _turns = new(atOnce, atOnce);
    private int _inside;

    /// <summary>Works when the turn comes.</summary>
    /// <exception cref="Refused">Too many are waiting.</exception>
    /// <exception cref="OperationCanceledException">A stop was asked for, or it took too long.</exception>
    public async Task<T> Run<T>(Func<CancellationToken, T> work, CancellationToken stop)
    {
        if (Interlocked.Increment(ref _inside) > atOnce + waiting)
        {
            Interlocked.Decrement(ref _inside);
            throw new Refused(503, "Many rigs are being computed just now. Ask again in a moment.") { RetryAfter = 2 };
        }

        using var limit = CancellationTokenSource.CreateLinkedTokenSource(stop);
        limit.CancelAfter(longest);
        try
        {
            await _turns.WaitAsync(limit.Token);
        }
        catch
        {
            Interlocked.Decrement(ref _inside);
            throw;
        }

        var token = limit.Token;
        var working = Task.Run(() => work(token), CancellationToken.None);
        // The turn is given back when the work has really ended, also where nobody waits for it any more.
        _ = working.ContinueWith(
            _ =>
            {
                _turns.Release();
                Interlocked.Decrement(ref _inside);
            },
            TaskScheduler.Default
        );
        return await working.WaitAsync(token);
    }

    public void Dispose() => _turns.Dispose();
}
