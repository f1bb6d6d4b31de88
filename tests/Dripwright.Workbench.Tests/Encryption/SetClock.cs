namespace Dripwright.Workbench.Tests.Encryption;

/// <summary>A clock that the test sets. What waits for it waits for the real one.</summary>
internal sealed class SetClock(DateTimeOffset now) : TimeProvider
{
    public DateTimeOffset Now { get; set; } = now;

    public override DateTimeOffset GetUtcNow() => Now;
}
