namespace Dripwright.Store.Tests;

/// <summary>A clock that stands still until it is put forward; what waits for it then comes due.</summary>
internal sealed class SteppedClock(DateTime at) : TimeProvider
{
    private readonly Lock _turn = new();
    private readonly List<Waiting> _waiting = [];
    private DateTimeOffset _now = new(DateTime.SpecifyKind(at, DateTimeKind.Utc));

    public override DateTimeOffset GetUtcNow()
    {
        lock (_turn)
        {
            return _now;
        }
    }

    public override long TimestampFrequency => TimeSpan.TicksPerSecond;

    public override long GetTimestamp() => GetUtcNow().Ticks;

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
    {
        var timer = new Waiting(this, () => callback(state));
        timer.Change(dueTime, period);
        lock (_turn)
        {
            _waiting.Add(timer);
        }

        return timer;
    }

    /// <summary>Puts the clock forward.</summary>
    public void Step(TimeSpan by)
    {
        List<Waiting> due;
        lock (_turn)
        {
            _now += by;
            due = [.. _waiting.Where(timer => timer.IsDue(_now))];
        }

        due.ForEach(timer => timer.Call());
    }

    private sealed class Waiting(SteppedClock clock, Action callback) : ITimer
    {
        private DateTimeOffset? _due;
        private TimeSpan _period;

        public bool IsDue(DateTimeOffset now) => _due <= now;

        public void Call()
        {
            _due = _period > TimeSpan.Zero ? clock.GetUtcNow() + _period : null;
            callback();
        }

        public bool Change(TimeSpan dueTime, TimeSpan period)
        {
            _period = period;
            _due = dueTime < TimeSpan.Zero ? null : clock.GetUtcNow() + dueTime;
            return true;
        }

        public void Dispose()
        {
            lock (clock._turn)
            {
                clock._waiting.Remove(this);
            }
        }

        public ValueTask DisposeAsync()
        {
            Dispose();
            return ValueTask.CompletedTask;
        }
    }
}
