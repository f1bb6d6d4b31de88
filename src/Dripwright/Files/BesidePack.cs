using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace Dripwright.Files;

/// <summary>The names of what lies beside a pack while it is written.</summary>
/// <remarks>
/// <c>.pack.lock</c> is the lock, <c>.pack.ID.draft</c> the pack that is being written (after an exchange: the one that was replaced),
/// <c>.pack.ID.old</c> the one moved aside where the system cannot exchange, <c>.pack.ID.gone</c> what is being removed.
/// ID is the random id of the writer.
/// </remarks>
/// <param name="place">Full path of the pack's folder.</param>
internal sealed class BesidePack(string place)
{
    // Most disks allow 255 bytes for a name, and ours are longer than the pack's.
    private const int LongestStem = 180;

    private readonly string _stem = StemOf(Path.GetFileName(place));

    public string Place { get; } = place;

    public string Parent { get; } = Path.GetDirectoryName(place)!;

    public string Lock => Path.Combine(Parent, $".{_stem}.lock");

    public string Draft(string id) => Of(id, "draft");

    public string Old(string id) => Of(id, "old");

    public string Gone(string id) => Of(id, "gone");

    /// <summary>What writers left here that were broken off, with the id of each.</summary>
    /// <param name="kind">draft, old or gone.</param>
    public IReadOnlyList<(string Folder, string Id)> Left(string kind)
    {
        var start = $".{_stem}.";
        var end = $".{kind}";
        return
        [
            .. new DirectoryInfo(Parent)
                .EnumerateDirectories()
                .Where(folder => folder.LinkTarget is null)
                .Select(folder => folder.FullName)
                .Where(folder =>
                    Path.GetFileName(folder) is var name
                    && name.Length == start.Length + WriterLock.IdLength + end.Length
                    && name.StartsWith(start, StringComparison.Ordinal)
                    && name.EndsWith(end, StringComparison.Ordinal)
                    && WriterLock.IsId(name.AsSpan(start.Length, WriterLock.IdLength))
                )
                .Select(folder => (folder, Path.GetFileName(folder).Substring(start.Length, WriterLock.IdLength))),
        ];
    }

    /// <summary>Gives a folder a plain name that is free, so that its owner finds it: "pack-kept", "pack-kept-2" ….</summary>
    /// <returns>The new path.</returns>
    public string Keep(string folder)
    {
        for (var number = 1; ; number++)
        {
            var kept =
                number == 1 ? $"{Place}-kept" : string.Create(CultureInfo.InvariantCulture, $"{Place}-kept-{number}");
            if (Path.Exists(kept))
            {
                continue;
            }

            Directory.Move(folder, kept);
            return kept;
        }
    }

    private string Of(string id, string kind) => Path.Combine(Parent, $".{_stem}.{id}.{kind}");

    private static string StemOf(string name) =>
        Encoding.UTF8.GetByteCount(name) <= LongestStem
            ? name
            : Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(name)));
}
