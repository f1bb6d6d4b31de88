using System.Globalization;
using System.IO.Compression;
using System.Text;

namespace Dripwright.Workbench.Pack;

/// <summary>Many files as one.</summary>
internal static class Bundle
{
    /// <summary>A zip of the files, in the order of their names.</summary>
    public static byte[] Zip(IReadOnlyDictionary<string, byte[]> files)
    {
        using var memory = new MemoryStream();
        using (var zip = new ZipArchive(memory, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (path, bytes) in files.OrderBy(file => file.Key, StringComparer.Ordinal))
            {
                var entry = zip.CreateEntry(path, CompressionLevel.Fastest);
                // No clock: the same pack gives the same zip.
                entry.LastWriteTime = new DateTimeOffset(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);
                using var stream = entry.Open();
                stream.Write(bytes);
            }
        }

        return memory.ToArray();
    }

    /// <summary>A file name made of a rig's: letters, figures and dashes.</summary>
    public static string Name(string rig)
    {
        var made = new StringBuilder();
        foreach (var letter in rig.ToLowerInvariant())
        {
            if (char.IsAsciiLetterOrDigit(letter))
            {
                made.Append(letter);
            }
            else if (made.Length > 0 && made[^1] != '-')
            {
                made.Append('-');
            }
        }

        var name = made.ToString().Trim('-');
        return (
                name.Length == 0 ? "rig"
                : name.Length > 60 ? name[..60].Trim('-')
                : name
            ) + "-build-pack";
    }

    /// <summary>"340 kB", "1.2 MB".</summary>
    public static string Size(long bytes) =>
        bytes < 1_000_000
            ? string.Create(CultureInfo.InvariantCulture, $"{Math.Max(1, bytes / 1000)} kB")
            : string.Create(CultureInfo.InvariantCulture, $"{bytes / 1e6:0.0} MB");
}
