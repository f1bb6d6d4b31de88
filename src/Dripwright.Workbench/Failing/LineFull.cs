namespace Dripwright.Workbench.Failing;

/// <summary>So many are waiting that one more would wait in vain.</summary>
/// <param name="retryAfter">When to come again.</param>
internal sealed class LineFull(TimeSpan retryAfter)
    : Exception("Many rigs are being computed just now. Ask again in a moment.")
{
    /// <summary>When to come again.</summary>
    public TimeSpan RetryAfter => retryAfter;
}
