using System.Security.Cryptography;
using Dripwright.Language;
using Dripwright.Terminal;

namespace Dripwright.Files;

/// <summary>Writes single files whole or not at all.</summary>
internal static class Writing
{
    /// <summary>What tells a folder or file that cannot be written from a mistake in the program.</summary>
    public static bool IsOfTheDisk(Exception wrong) =>
        wrong is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException;

    /// <summary>Writes bytes and waits until they are on the disk.</summary>
    public static void Flushed(string path, ReadOnlySpan<byte> bytes)
    {
        using var stream = new FileStream(path, FileMode.CreateNew, FileAccess.Write, FileShare.None);
        stream.Write(bytes);
        stream.Flush(flushToDisk: true);
    }

    /// <summary>Writes a file beside its place and moves it there once it is whole.</summary>
    /// <exception cref="Refusal">It exists and may not be replaced, or it cannot be written.</exception>
    public static void File(string path, ReadOnlySpan<byte> bytes, bool replace)
    {
        if (!replace && (System.IO.File.Exists(path) || Directory.Exists(path)))
        {
            throw new Refusal(Exit.NotWritten, Words.Of("program.file.there", path));
        }

        var full = Path.GetFullPath(path);
        var draft = Path.Combine(
            Path.GetDirectoryName(full) ?? "",
            // No process number: two containers have the same ones.
            $".{Path.GetFileName(full)}.{Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(8))}.draft"
        );
        try
        {
            Flushed(draft, bytes);
            System.IO.File.Move(draft, full, overwrite: replace);
            Disk.FlushFolder(Path.GetDirectoryName(full)!);
        }
        catch (Exception wrong) when (IsOfTheDisk(wrong))
        {
            throw new Refusal(Exit.NotWritten, Words.Of("program.file.unwritten", path, SystemReason.Of(wrong)));
        }
        finally
        {
            if (System.IO.File.Exists(draft))
            {
                System.IO.File.Delete(draft);
            }
        }
    }
}
