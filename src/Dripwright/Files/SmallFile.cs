using Dripwright.Language;
using Dripwright.Terminal;

namespace Dripwright.Files;

/// <summary>Reads files that people write: small ones.</summary>
internal static class SmallFile
{
    /// <summary>Most bytes of a file: a rig of a hundred rows with notes takes a fiftieth of it.</summary>
    public const int MostBytes = 1 << 20;

    /// <summary>The bytes of a file, or of standard input where the path is "-".</summary>
    /// <exception cref="Refusal">It is not there, cannot be read, or is too large.</exception>
    /// <exception cref="OperationCanceledException">A stop was asked for.</exception>
    public static byte[] Read(string path, Surroundings around, CancellationToken stop) =>
        Interruptible.Wait(() => Read(path, around), stop);

    private static byte[] Read(string path, Surroundings around)
    {
        if (path == "-")
        {
            return ReadSome(around.InBytes, Words.Of("program.stdin"));
        }

        try
        {
            var file = new FileInfo(path);
            if (file.Exists && file.Length > MostBytes)
            {
                throw TooLarge(path);
            }

            using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read);
            return ReadSome(stream, path);
        }
        catch (Exception wrong)
            when (wrong is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new Refusal(Exit.FaultyFile, Words.Of("program.file.unread", path, Why(wrong)));
        }
    }

    // A device or a pipe says a length of 0 and may go on for ever, so the count is kept while reading as well.
    private static byte[] ReadSome(Stream stream, string name)
    {
        using var kept = new MemoryStream();
        var part = new byte[16 * 1024];
        int got;
        while ((got = stream.Read(part)) > 0)
        {
            if (kept.Length + got > MostBytes)
            {
                throw TooLarge(name);
            }

            kept.Write(part, 0, got);
        }

        return kept.ToArray();
    }

    private static Refusal TooLarge(string name) => new(Exit.FaultyFile, Words.Of("program.file.large", name));

    private static string Why(Exception wrong) =>
        wrong switch
        {
            FileNotFoundException => Words.Of("program.file.none"),
            DirectoryNotFoundException => Words.Of("program.folder.none"),
            UnauthorizedAccessException => Words.Of("program.file.may-not"),
            _ => SystemReason.Of(wrong),
        };
}
