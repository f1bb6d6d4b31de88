using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Dripwright.Language;

namespace Dripwright.Pack;

/// <summary>The pack's list as JSON, written in one form only.</summary>
internal static class PackListText
{
    /// <summary>Writes the list. Names hold nothing that JSON would escape.</summary>
    public static string Write(IReadOnlyList<PackedFile> files)
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"{{\n  \"format\": {PackList.Format},\n  \"files\": [");
        for (var i = 0; i < files.Count; i++)
        {
            text.Append(
                CultureInfo.InvariantCulture,
                $"{(i == 0 ? "\n" : ",\n")}    {{ \"name\": \"{files[i].Name}\", \"bytes\": {files[i].Bytes}, \"sha256\": \"{files[i].Sha256}\" }}"
            );
        }

        text.Append(CultureInfo.InvariantCulture, $"\n  ],\n  \"checksum\": \"{Checksum(files)}\"\n}}\n");
        return text.ToString();
    }

    /// <summary>The files that a list names, not yet judged; or null and why it cannot be read.</summary>
    public static (List<PackedFile>? Files, string? Fault) Read(ReadOnlyMemory<byte> bytes)
    {
        try
        {
            using var json = JsonDocument.Parse(bytes);
            var format = json.RootElement.GetProperty("format").GetInt32();
            if (format != PackList.Format)
            {
                return (null, Words.Of("pack-list.format", format, PackList.Format));
            }

            return (
                [
                    .. json
                        .RootElement.GetProperty("files")
                        .EnumerateArray()
                        .Select(file => new PackedFile(
                            file.GetProperty("name").GetString() ?? "",
                            file.GetProperty("bytes").GetInt64(),
                            file.GetProperty("sha256").GetString() ?? ""
                        )),
                ],
                null
            );
        }
        catch (Exception wrong)
            when (wrong is JsonException or KeyNotFoundException or InvalidOperationException or FormatException)
        {
            return (null, Words.Of("pack-list.none"));
        }
    }

    // SHA-256 over one line "name bytes sha256" for each file.
    private static string Checksum(IReadOnlyList<PackedFile> files)
    {
        using var sum = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var file in files)
        {
            sum.AppendData(
                Encoding.UTF8.GetBytes(
                    string.Create(CultureInfo.InvariantCulture, $"{file.Name} {file.Bytes} {file.Sha256}\n")
                )
            );
        }

        return Convert.ToHexStringLower(sum.GetHashAndReset());
    }
}
