using System.Text.Encodings.Web;
using System.Text.Json;

namespace Dripwright.Tests;

/// <summary>Seeds of cases that once failed, in a file: from a test, "Class.Method", to its seeds. Each is tried on every run.</summary>
/// <param name="file">The file; none is as good as an empty one.</param>
internal sealed class PinnedSeeds(string file)
{
    /// <summary>Where ours are, in the repository.</summary>
    public const string Path = "tests/seeds.json";

    private static readonly JsonSerializerOptions s_layout = new()
    {
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    private readonly Lazy<SortedDictionary<string, List<string>>> _read = new(() => Read(file));

    /// <summary>Those of the repository, read once.</summary>
    public static PinnedSeeds Ours { get; } = new(System.IO.Path.Combine(CommittedText.Root, Path));

    /// <summary>All, by test.</summary>
    public IReadOnlyDictionary<string, List<string>> All => _read.Value;

    /// <summary>The seeds of a test.</summary>
    public IReadOnlyList<string> Of(string test) => _read.Value.GetValueOrDefault(test) ?? [];

    /// <summary>Pins one more in the file. Test projects run side by side: one writes at a time.</summary>
    public void Add(string test, string seed)
    {
        using var turn = Turn();
        var all = Read(file);
        var seeds = all.GetValueOrDefault(test) ?? [];
        if (!seeds.Contains(seed))
        {
            all[test] = [.. seeds, seed];
            var passing = file + ".new";
            using (var stream = File.Create(passing))
            {
                stream.Write(JsonSerializer.SerializeToUtf8Bytes(all, s_layout));
                stream.Write("\n"u8);
                stream.Flush(flushToDisk: true);
            }
            File.Move(passing, file, overwrite: true);
        }
    }

    private static SortedDictionary<string, List<string>> Read(string file) =>
        new(
            File.Exists(file)
                ? JsonSerializer.Deserialize<Dictionary<string, List<string>>>(File.ReadAllBytes(file))!
                : [],
            StringComparer.Ordinal
        );

    private FileStream Turn()
    {
        for (var tries = 0; ; tries++)
        {
            try
            {
                return new FileStream(
                    file + ".lock",
                    FileMode.OpenOrCreate,
                    FileAccess.ReadWrite,
                    FileShare.None,
                    bufferSize: 1,
                    FileOptions.DeleteOnClose
                );
            }
            catch (IOException) when (tries < 200)
            {
                Thread.Sleep(50);
            }
        }
    }
}
