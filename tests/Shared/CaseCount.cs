namespace Dripwright.Tests;

/// <summary>Tells the script that runs the tests how many cases the laws drew.</summary>
internal static class CaseCount
{
    private static readonly Lock s_turn = new();

    private static readonly string? s_folder = Environment.GetEnvironmentVariable("DRIPWRIGHT_CASES");

    /// <summary>Adds a law that held for so many cases, one line, to this process's file in the folder that the script names.</summary>
    public static void Add(string test, int cases)
    {
        if (s_folder is null)
        {
            return;
        }
        lock (s_turn)
        {
            File.AppendAllText(
                Path.Combine(s_folder, FormattableString.Invariant($"{Environment.ProcessId}.txt")),
                FormattableString.Invariant($"{cases} {test}\n")
            );
        }
    }
}
