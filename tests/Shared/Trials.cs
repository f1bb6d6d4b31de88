namespace Dripwright.Tests;

/// <summary>Which kind of run this is: ordinary, with fresh draws (<c>./test --draw</c>), long (<c>./test --long</c>).</summary>
internal static class Trials
{
    /// <summary>A long run draws so many times the cases of an ordinary one.</summary>
    public const int Factor = 10;

    /// <summary>Whether cases are drawn from seeds that nobody has seen.</summary>
    public static bool AreFresh { get; } = Environment.GetEnvironmentVariable("DRIPWRIGHT_DRAW") == "1";

    /// <summary>Whether there is time for the whole of every trial.</summary>
    public static bool AreLong { get; } = Environment.GetEnvironmentVariable("DRIPWRIGHT_LONG") == "1";

    /// <summary>A trial that is no law: all of it in a long run, a sample in an ordinary one.</summary>
    /// <param name="sample">Cases, spread over the whole.</param>
    /// <param name="all">Every case.</param>
    public static IEnumerable<T> Of<T>(int sample, IReadOnlyList<T> all) =>
        AreLong || sample >= all.Count ? all : Enumerable.Range(0, sample).Select(n => all[n * all.Count / sample]);

    /// <summary>How often to do what is done over and over.</summary>
    /// <param name="sample">Times in an ordinary run.</param>
    /// <param name="all">Times in a long run.</param>
    public static int Times(int sample, int all) => AreLong ? all : sample;
}
