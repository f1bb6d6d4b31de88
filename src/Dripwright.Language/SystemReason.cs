namespace Dripwright.Language;

/// <summary>Why the operating system would not read or write a file, in our words and with a way out.</summary>
/// <remarks>The system's own text, which is always in the system's language, stands behind for whoever looks it up.</remarks>
public static class SystemReason
{
    /// <summary>The reason behind an exception of a file or folder.</summary>
    /// <param name="wrong">What was thrown.</param>
    /// <returns>A sentence; the system's own text alone where it is none of the common reasons.</returns>
    public static string Of(Exception wrong)
    {
        ArgumentNullException.ThrowIfNull(wrong);
        var said = wrong.Message.ReplaceLineEndings(" ").Trim();
        return Key(wrong) is { } key ? Words.Of("system.said", Words.Of(key), said) : said;
    }

    private static string? Key(Exception wrong) =>
        wrong switch
        {
            FileNotFoundException => "system.no-file",
            DirectoryNotFoundException or DriveNotFoundException => "system.no-folder",
            PathTooLongException => "system.long-path",
            UnauthorizedAccessException => "system.no-access",
            IOException => OfCode(wrong.HResult),
            _ => null,
        };

    // On Unix the platform puts the system's own number there, on Windows that number with 0x8007 before it. The numbers:
    // https://man7.org/linux/man-pages/man3/errno.3.html and
    // https://learn.microsoft.com/en-us/windows/win32/debug/system-error-codes--0-499- ; those of macOS from memory.
    private static string? OfCode(int code) =>
        unchecked((uint)code) switch
        {
            // Full, or over the share that a person has of it (Linux 122, macOS 69).
            28 or 122 or 69 or 0x80070070 or 0x80070027 => "system.full",
            30 or 0x80070013 => "system.read-only",
            // Held by another (Linux 11, macOS 35), or a program that runs (26).
            11 or 35 or 16 or 26 or 0x80070020 or 0x80070021 => "system.in-use",
            5 or 0x8007045D => "system.device",
            _ => null,
        };
}
