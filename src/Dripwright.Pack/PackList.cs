using System.Security.Cryptography;
using System.Text;
using Dripwright.Language;

namespace Dripwright.Pack;

/// <summary>The list of a build pack's own files: by it the program knows what it may remove when the pack is replaced.</summary>
/// <remarks>
/// The file names every other file of the pack with its length and its SHA-256, in the order of their names, and ends with a
/// checksum over them. The same pack gives the same bytes. It is no signature: whoever writes a false list with a right
/// checksum can still name nothing outside the pack, and a file is removed only where it is, byte for byte, what the list says.
/// Handbook page: docs/handbook/build-pack.md
/// </remarks>
public sealed class PackList
{
    /// <summary>The list's own name within the pack.</summary>
    public const string FileName = "pack-list.json";

    /// <summary>Version of the list's form.</summary>
    public const int Format = 1;

    /// <summary>[bytes] Most that a list can have: about twenty thousand files.</summary>
    public const int MostBytes = 4 << 20;

    private PackList(IReadOnlyList<PackedFile> files)
    {
        Files = files;
        Folders = files.SelectMany(file => PackNames.FoldersOf(file.Name)).ToHashSet(StringComparer.Ordinal);
    }

    /// <summary>The pack's files but for the list itself, in the order of their names.</summary>
    public IReadOnlyList<PackedFile> Files { get; }

    /// <summary>The folders that the files lie in, with "/" between the parts of a name.</summary>
    public IReadOnlySet<string> Folders { get; }

    /// <summary>The list of these files.</summary>
    /// <param name="files">Bytes by path within the pack; a list among them is passed over.</param>
    /// <exception cref="ArgumentException">A name cannot stand in a pack, or two differ in capitals only.</exception>
    public static PackList Of(IEnumerable<KeyValuePair<string, byte[]>> files)
    {
        ArgumentNullException.ThrowIfNull(files);
        List<PackedFile> all =
        [
            .. files
                .Where(file => file.Key != FileName)
                .Select(file => new PackedFile(
                    file.Key,
                    file.Value.Length,
                    Convert.ToHexStringLower(SHA256.HashData(file.Value))
                ))
                .OrderBy(file => file.Name, StringComparer.Ordinal),
        ];
        return FaultOf(all) is { } fault ? throw new ArgumentException(fault, nameof(files)) : new PackList(all);
    }

    /// <summary>Reads a list strictly: it must be, byte for byte, what <see cref="ToBytes"/> gives.</summary>
    /// <param name="bytes">The file.</param>
    /// <returns>The list, or null and what is wrong with it.</returns>
    public static (PackList? List, string? Fault) Read(ReadOnlyMemory<byte> bytes)
    {
        var (files, fault) = PackListText.Read(bytes);
        if (files is null)
        {
            return (null, fault);
        }

        if (FaultOf(files) is { } wrong)
        {
            return (null, wrong);
        }

        var list = new PackList(files);
        return bytes.Span.SequenceEqual(list.ToBytes()) ? (list, null) : (null, Words.Of("pack-list.edited"));
    }

    /// <summary>The list as a file: JSON in UTF-8, one line for each file.</summary>
    public byte[] ToBytes() => Encoding.UTF8.GetBytes(PackListText.Write(Files));

    // Two names that differ in capitals only are one file on some systems; a file cannot be another one's folder.
    private static string? FaultOf(List<PackedFile> files)
    {
        var names = new HashSet<string>(StringComparer.OrdinalIgnoreCase) { FileName };
        for (var i = 0; i < files.Count; i++)
        {
            var name = files[i].Name;
            if (!PackNames.CanHold(name))
            {
                return Words.Of("pack-list.name", name);
            }

            if (!names.Add(name))
            {
                return Words.Of("pack-list.twice", name);
            }

            if (i > 0 && string.CompareOrdinal(files[i - 1].Name, name) > 0)
            {
                return Words.Of("pack-list.order", name, files[i - 1].Name);
            }

            if (files[i].Bytes < 0 || !IsSha256(files[i].Sha256))
            {
                return Words.Of("pack-list.sum", name, files[i].Bytes, files[i].Sha256);
            }
        }

        var folder = files.SelectMany(file => PackNames.FoldersOf(file.Name)).FirstOrDefault(names.Contains);
        return folder is null ? null : Words.Of("pack-list.folder", folder);
    }

    private static bool IsSha256(string? text) =>
        text is { Length: 64 } && text.All(digit => char.IsAsciiDigit(digit) || digit is >= 'a' and <= 'f');
}
