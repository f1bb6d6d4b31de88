namespace Dripwright.Terminal;

/// <summary>The program cannot go on, and the reason is not a mistake of its own.</summary>
/// <param name="exitCode">One of <see cref="Exit"/>.</param>
/// <param name="messages">What to tell the person, one line each.</param>
internal sealed class Refusal(int exitCode, IReadOnlyList<string> messages)
    : Exception(string.Join(Environment.NewLine, messages))
{
    public Refusal(int exitCode, string message)
        : this(exitCode, [message]) { }

    public int ExitCode { get; } = exitCode;

    public IReadOnlyList<string> Messages { get; } = messages;
}
