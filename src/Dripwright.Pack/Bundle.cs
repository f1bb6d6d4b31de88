using System.Globalization;
using System.IO.Compression;
using Dripwright.Sheets;

namespace Dripwright.Pack;

/// <summary>Many files as one.</summary>
public static class Bundle
{
    /// <summary>A zip of the files, in the order of their names.</summary>
    /// <param name="files">Bytes by path, with forward slashes.</param>
    public static byte[] Zip(IReadOnlyDictionary<string, byte[]> files)
    {
        ArgumentNullException.ThrowIfNull(files);
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

    /// <summary>Name of a rig's build pack, without its ending.</summary>
    /// <param name="rig">The rig's name.</param>
    public static string Name(string rig) => BuildPack.FileNameOf(rig) + "-build-pack";

    /// <summary>"340 kB", "1.2 MB".</summary>
    /// <param name="bytes">[bytes] How many.</param>
    public static string Size(long bytes) =>
        bytes < 1_000_000
            ? string.Create(CultureInfo.InvariantCulture, $"{Math.Max(1, bytes / 1000)} kB")
            : string.Create(CultureInfo.InvariantCulture, $"{bytes / 1e6:0.0} MB");
}
