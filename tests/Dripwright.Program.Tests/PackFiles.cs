using System.Text;
using Dripwright.Files;
using Dripwright.Pack;
using Dripwright.Terminal;

namespace Dripwright.Program.Tests;

/// <summary>Small build packs for tests, and folders told by all that is in them.</summary>
internal static class PackFiles
{
    public static readonly KeyValuePair<string, byte[]>[] First = Of("first");

    public static readonly KeyValuePair<string, byte[]>[] Second = Of("second");

    /// <summary>Locks that are judged in moments instead of seconds.</summary>
    public static readonly LockRules Quick = new()
    {
        Beat = TimeSpan.FromMilliseconds(50),
        Patience = TimeSpan.FromMilliseconds(500),
    };

    public static KeyValuePair<string, byte[]>[] Of(string mark) =>
        [
            new("build-pack.pdf", Encoding.UTF8.GetBytes(mark + " pdf")),
            new("plan.json", Encoding.UTF8.GetBytes(mark + " plan")),
            new("sheets/01-cover.svg", Encoding.UTF8.GetBytes(mark + " cover")),
            new("fittings/J1.stl", Encoding.UTF8.GetBytes(mark + " joint")),
        ];

    public static IReadOnlyList<string> Write(
        string target,
        KeyValuePair<string, byte[]>[] files,
        bool replace = false,
        PackRules? rules = null
    ) => PackFolder.Write(target, PackList.Of(files), files, replace, CancellationToken.None, rules);

    public static Refusal Refused(string target, PackRules? rules = null) =>
        Assert.Throws<Refusal>(() => Write(target, Second, replace: true, rules));

    /// <summary>Everything in a folder: files with their bytes, folders, and links with where they lead.</summary>
    public static IReadOnlyDictionary<string, string> Snapshot(string folder)
    {
        var all = new SortedDictionary<string, string>(StringComparer.Ordinal);
        Walk(new DirectoryInfo(folder));
        return all;

        void Walk(DirectoryInfo at)
        {
            foreach (var entry in at.EnumerateFileSystemInfos())
            {
                var name = Path.GetRelativePath(folder, entry.FullName).Replace('\\', '/');
                if (entry.LinkTarget is { } target)
                {
                    all[name] = "link to " + target;
                }
                else if (entry is DirectoryInfo inner)
                {
                    all[name + "/"] = "";
                    Walk(inner);
                }
                else
                {
                    all[name] = Convert.ToHexStringLower(File.ReadAllBytes(entry.FullName));
                }
            }
        }
    }

    /// <summary>The pack in a folder is whole and is this one.</summary>
    public static void AssertIs(KeyValuePair<string, byte[]>[] files, string folder)
    {
        Assert.True(StandingPack.Look(folder).IsWhole);
        Assert.Equal(PackList.Of(files).ToBytes(), File.ReadAllBytes(Path.Combine(folder, PackList.FileName)));
    }
}
