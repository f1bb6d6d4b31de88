using System.Globalization;
using Dripwright.Files;
using Dripwright.Terminal;

namespace Dripwright.Program.Tests;

/// <summary>Whatever is planted in and beside a pack, and whenever: none of it is ever lost.</summary>
public sealed class PackForeignLawTests
{
    private static readonly string[] s_names =
    [
        "diary.txt",
        "plan.json",
        "build-pack.pdf",
        "sheets/01-cover.svg",
        "sheets/mine.svg",
        "sheets",
        "fittings/J1.stl",
        "fittings",
        "photos/1/2.jpg",
        ".hidden",
        "Plan.json",
        "pack-list.json",
        ".0123456789abcdef0123456789abcdef.part",
        "pack-kept",
        "../pack-kept",
        "../.pack.lock",
        "../.pack.0123456789abcdef0123456789abcdef.draft/diary.txt",
        "../.pack.0123456789abcdef0123456789abcdef.old/plan.json",
        "../.pack.mine.draft",
        "../.pack.00000000000000000000000000000000.gone/x/y",
    ];

    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, Trials.Times(60, 3000))];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Nothing_that_is_not_the_packs_is_ever_lost(int seed)
    {
        var random = new Random(seed);
        using var scratch = new Scratch();
        var pack = scratch.At("in/pack");
        PackFiles.Write(pack, PackFiles.First);
        var outside = Directory.CreateDirectory(scratch.At("outside")).FullName;
        File.WriteAllText(Path.Combine(outside, "01-cover.svg"), "first cover");
        List<string> planted = [];
        var when = random.Next(4);
        if (when != 1 && when != 2)
        {
            Plant(pack);
        }

        var rules = new PackRules
        {
            Lock = PackFiles.Quick,
            Exchanges = random.Next(2) == 0,
            BeforeChange = when == 1 ? () => Plant(pack) : null,
            AfterChange =
                when == 2
                    ? () => Plant(Directory.GetDirectories(scratch.At("in"), ".pack.*").Single(NamesOnesOwn))
                    : null,
        };
        var before = when is 1 or 2 ? null : PackFiles.Snapshot(pack);
        try
        {
            PackFiles.Write(pack, PackFiles.Second, replace: true, rules);
            PackFiles.AssertIs(PackFiles.Second, pack);
        }
        catch (Refusal refusal)
        {
            Assert.Equal(Exit.NotWritten, refusal.ExitCode);
            Assert.True(before is null || before.SequenceEqual(PackFiles.Snapshot(pack)), "Refused, and yet changed.");
        }

        var all = PackFiles.Snapshot(scratch.Folder);
        Assert.All(planted, one => Assert.Contains(one, all.Values));
        Assert.True(File.Exists(Path.Combine(outside, "01-cover.svg")));
        Assert.DoesNotContain(all.Keys, NamesOnesOwn);

        void Plant(string folder)
        {
            for (var left = random.Next(1, 5); left > 0; left--)
            {
                PlantOne(Path.GetFullPath(Path.Combine(folder, s_names[random.Next(s_names.Length)])));
            }
        }

        void PlantOne(string path)
        {
            var mark = string.Create(CultureInfo.InvariantCulture, $"planted {planted.Count} of {seed}");
            try
            {
                Directory.CreateDirectory(Path.GetDirectoryName(path)!);
                // What a person does to a pack of theirs: replaces a file of the program's, adds one, or puts a link there.
                if (File.Exists(path) && !IsPlanted(path))
                {
                    File.Delete(path);
                }

                if (Path.Exists(path))
                {
                    return;
                }

                if (random.Next(3) == 0)
                {
                    var link = Path.Combine(outside, mark);
                    File.CreateSymbolicLink(path, random.Next(2) == 0 ? link : outside);
                    planted.Add("link to " + new FileInfo(path).LinkTarget);
                }
                else
                {
                    File.WriteAllText(path, mark);
                    planted.Add(Convert.ToHexStringLower(File.ReadAllBytes(path)));
                }
            }
            catch (IOException)
            {
                // A file is in the way of a folder: nothing was planted.
            }
        }

        bool IsPlanted(string path) =>
            new FileInfo(path).LinkTarget is not null
            || planted.Contains(Convert.ToHexStringLower(File.ReadAllBytes(path)));
    }

    // Drafts of the run itself, whose ids are random: those that the test plants have few different digits.
    private static bool NamesOnesOwn(string path)
    {
        var name = path.TrimEnd('/')
            .Split('/')
            .FirstOrDefault(part => part.StartsWith(".pack.", StringComparison.Ordinal));
        var words = name?.Split('.') ?? [];
        return words is ["", "pack", { Length: 32 }, _]
            && words[2] is not ("0123456789abcdef0123456789abcdef" or "00000000000000000000000000000000");
    }
}
