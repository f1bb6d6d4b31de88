namespace Dripwright.Store.Tests;

/// <summary>A clock that stands still.</summary>
internal sealed class StoppedClock(DateTime at) : TimeProvider
{
    public override DateTimeOffset GetUtcNow() => new(at);
}
