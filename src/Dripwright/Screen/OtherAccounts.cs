using System.Globalization;

namespace Dripwright.Screen;

/// <summary>Whether other people have accounts on this machine: each of them reaches every loopback address.</summary>
internal static class OtherAccounts
{
    private const string File = "/etc/passwd";

    // Where people's own accounts begin and end on the common Linux systems (login.defs, common practice).
    private const int First = 1000;
    private const int Last = 60000;

    /// <summary>Whether there are some, as far as this system says so in a file.</summary>
    public static bool AreHere()
    {
        try
        {
            return OperatingSystem.IsLinux()
                && Names(System.IO.File.ReadAllText(File)).Any(name => name != Environment.UserName);
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    /// <summary>Names of the accounts that people sign in to.</summary>
    /// <param name="passwd">The text of the system's list of accounts.</param>
    public static IEnumerable<string> Names(string passwd) =>
        passwd
            .Split('\n')
            .Select(line => line.Split(':'))
            .Where(parts =>
                parts.Length == 7
                && int.TryParse(parts[2], NumberStyles.None, CultureInfo.InvariantCulture, out var id)
                && id is >= First and < Last
                && !parts[6].EndsWith("nologin", StringComparison.Ordinal)
                && !parts[6].EndsWith("false", StringComparison.Ordinal)
            )
            .Select(parts => parts[0]);
}
