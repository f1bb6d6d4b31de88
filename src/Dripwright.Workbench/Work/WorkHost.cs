using System.Diagnostics;
using System.Threading.RateLimiting;
using Dripwright.Workbench.Failing;
using Dripwright.Workbench.Hosting;

namespace Dripwright.Workbench.Work;

/// <summary>Everything that takes long is done here: so much at once, so many waiting, so long.</summary>
/// <remarks>
/// Each garden has a line of its own in each lane, and only the heads of these lines stand in the common one, first come,
/// first served: a garden with a long line does not push the others back.
/// </remarks>
internal sealed class WorkHost : IDisposable
{
    private readonly Dictionary<WorkLane, Line> _lines;

    /// <param name="limits">How much there may be.</param>
    public WorkHost(WorkLimits? limits = null)
    {
        Limits = limits ?? new();
        _lines = Limits.Lanes.ToDictionary(lane => lane, lane => new Line(lane));
    }

    /// <summary>How much there may be.</summary>
    public WorkLimits Limits { get; }

    /// <summary>Works when the turn comes.</summary>
    /// <param name="lane">Which kind of work it is; one of <see cref="Limits"/>.</param>
    /// <param name="garden">For which garden.</param>
    /// <param name="work">The work. It is asked to stop when nobody waits for it any more.</param>
    /// <param name="stop">Asks to stop.</param>
    /// <exception cref="LineFull">Too many are waiting.</exception>
    /// <exception cref="OperationCanceledException">A stop was asked for, or it took too long.</exception>
    public async Task<T> Run<T>(WorkLane lane, string garden, Func<CancellationToken, T> work, CancellationToken stop)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(stop);
        limit.CancelAfter(lane.Longest);
        var token = limit.Token;
        var asked = Stopwatch.GetTimestamp();
        var turn = await _lines[lane].Enter(garden, token).ConfigureAwait(false);
        if (!turn.IsAcquired)
        {
            turn.Dispose();
            throw new LineFull(Limits.RetryAfter);
        }

        Metrics.Wait.Record(Stopwatch.GetElapsedTime(asked).TotalSeconds);
        var working = Task.Run(() => Timed(work, token), CancellationToken.None);
        // The turn is given back when the work has really ended, also where nobody waits for it any more.
        _ = working.ContinueWith(_ => turn.Dispose(), TaskScheduler.Default);
        return await working.WaitAsync(token).ConfigureAwait(false);
    }

    private static T Timed<T>(Func<CancellationToken, T> work, CancellationToken stop)
    {
        var begun = Stopwatch.GetTimestamp();
        try
        {
            return work(stop);
        }
        finally
        {
            Metrics.Work.Record(Stopwatch.GetElapsedTime(begun).TotalSeconds);
        }
    }

    public void Dispose()
    {
        foreach (var line in _lines.Values)
        {
            line.Dispose();
        }
    }

    /// <summary>Who waits in one lane.</summary>
    private sealed class Line(WorkLane lane) : IDisposable
    {
        private readonly PartitionedRateLimiter<string> _gardens = PartitionedRateLimiter.Create<string, string>(
            garden => RateLimitPartition.GetConcurrencyLimiter(garden, _ => Options(lane, lane.Waiting))
        );

        // It needs no bound: of each garden no more stand in it than are done at once.
        private readonly ConcurrencyLimiter _common = new(Options(lane, int.MaxValue));

        public async Task<RateLimitLease> Enter(string garden, CancellationToken stop)
        {
            var own = await _gardens.AcquireAsync(garden, 1, stop).ConfigureAwait(false);
            if (!own.IsAcquired)
            {
                return own;
            }

            try
            {
                return new Turn(own, await _common.AcquireAsync(1, stop).ConfigureAwait(false));
            }
            catch
            {
                own.Dispose();
                throw;
            }
        }

        public void Dispose()
        {
            _gardens.Dispose();
            _common.Dispose();
        }

        private static ConcurrencyLimiterOptions Options(WorkLane lane, int waiting) =>
            new()
            {
                PermitLimit = lane.AtOnce,
                QueueLimit = waiting,
                QueueProcessingOrder = QueueProcessingOrder.OldestFirst,
            };
    }

    /// <summary>A place in the garden's own line and one in the common line.</summary>
    private sealed class Turn(RateLimitLease own, RateLimitLease common) : RateLimitLease
    {
        public override bool IsAcquired => common.IsAcquired;

        public override IEnumerable<string> MetadataNames => [];

        public override bool TryGetMetadata(string metadataName, out object? metadata)
        {
            metadata = null;
            return false;
        }

        protected override void Dispose(bool disposing)
        {
            common.Dispose();
            own.Dispose();
            base.Dispose(disposing);
        }
    }
}
