using System.Buffers.Binary;
using System.Reflection.PortableExecutable;

namespace Dripwright.Packaging;

/// <summary>A file of machine code in a published folder, by what its own head says.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Format">ELF, PE or Mach-O.</param>
/// <param name="Processor">x64, arm64 or both; another as its number.</param>
internal sealed record NativeLibrary(string Name, string Format, string Processor)
{
    /// <summary>The machine code of a folder; assemblies of .NET are not among it.</summary>
    public static IReadOnlyList<NativeLibrary> Of(string folder) =>
        [
            .. Directory
                .EnumerateFiles(folder, "*", SearchOption.AllDirectories)
                .Order(StringComparer.Ordinal)
                .Select(Look)
                .OfType<NativeLibrary>(),
        ];

    /// <summary>Whether a platform runs it.</summary>
    /// <param name="platform">Such as linux-x64.</param>
    public bool IsFor(string platform)
    {
        var parts = platform.Split('-');
        var format = parts[0] switch
        {
            "win" => "PE",
            "osx" => "Mach-O",
            _ => "ELF",
        };
        return Format == format && (Processor == parts[1] || Processor == "both");
    }

    private static NativeLibrary? Look(string file)
    {
        var head = new byte[64];
        using var stream = File.OpenRead(file);
        if (stream.ReadAtLeast(head, head.Length, throwOnEndOfStream: false) < head.Length)
        {
            return null;
        }

        var name = Path.GetFileName(file);
        return BinaryPrimitives.ReadUInt32BigEndian(head) switch
        {
            0x7F454C46 => new(name, "ELF", Elf(BinaryPrimitives.ReadUInt16LittleEndian(head.AsSpan(18)))),
            0xCFFAEDFE => new(name, "Mach-O", MachO(BinaryPrimitives.ReadUInt32LittleEndian(head.AsSpan(4)))),
            // Two programs in one file, the table big-endian.
            0xCAFEBABE when BinaryPrimitives.ReadUInt32BigEndian(head.AsSpan(4)) == 2 => new(name, "Mach-O", "both"),
            var magic when magic >> 16 == 0x4D5A => Windows(name, stream),
            _ => null,
        };
    }

    private static NativeLibrary? Windows(string name, FileStream stream)
    {
        stream.Position = 0;
        try
        {
            using var read = new PEReader(stream);
            return read.HasMetadata
                ? null
                : new(
                    name,
                    "PE",
                    read.PEHeaders.CoffHeader.Machine switch
                    {
                        Machine.Amd64 => "x64",
                        Machine.Arm64 => "arm64",
                        var other => other.ToString(),
                    }
                );
        }
        catch (BadImageFormatException)
        {
            return null;
        }
    }

    private static string Elf(ushort machine) =>
        machine switch
        {
            62 => "x64",
            183 => "arm64",
            _ => $"{machine}",
        };

    private static string MachO(uint processor) =>
        processor switch
        {
            0x01000007 => "x64",
            0x0100000C => "arm64",
            _ => $"{processor}",
        };
}
