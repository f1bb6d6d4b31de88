using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Dripwright.Files;
using Dripwright.Pack;
using Dripwright.Terminal;

namespace Dripwright.Program.Tests;

/// <summary>Replacing a pack takes nothing of the grower's with it.</summary>
public sealed class PackReplaceTests
{
    [Theory]
    [InlineData("diary.txt", "diary.txt")]
    [InlineData(".hidden", ".hidden")]
    [InlineData("sheets/notes.txt", "sheets/notes.txt")]
    [InlineData("photos/summer/1.jpg", "photos/")]
    [InlineData("Plan.json", "Plan.json")]
    public void A_file_that_is_not_the_packs_is_named_and_nothing_is_changed(string file, string named)
    {
        using var scratch = new Scratch();
        var pack = Packed(scratch);
        Directory.CreateDirectory(Path.GetDirectoryName(Path.Combine(pack, file))!);
        File.WriteAllText(Path.Combine(pack, file), "mine");

        AssertRefusedUnchanged(scratch, pack, $"Found {named}.");
    }

    [Theory]
    [InlineData("plan.json", "second plan, changed")]
    [InlineData("plan.json", "FIRST plan")]
    [InlineData("build-pack.pdf", "")]
    public void A_file_of_the_pack_that_was_changed_is_named_and_nothing_is_changed(string file, string text)
    {
        using var scratch = new Scratch();
        var pack = Packed(scratch);
        File.WriteAllText(Path.Combine(pack, file), text);

        AssertRefusedUnchanged(scratch, pack, $"Found {file} (changed).");
    }

    [Fact]
    public void An_empty_folder_that_is_not_the_packs_counts_as_yours()
    {
        using var scratch = new Scratch();
        var pack = Packed(scratch);
        Directory.CreateDirectory(Path.Combine(pack, "photos"));

        AssertRefusedUnchanged(scratch, pack, "Found photos/.");
    }

    [Fact]
    public void A_folder_in_the_place_of_a_file_and_a_file_in_the_place_of_a_folder_count_as_yours()
    {
        using var scratch = new Scratch();
        var pack = Packed(scratch);
        File.Delete(Path.Combine(pack, "plan.json"));
        Directory.CreateDirectory(Path.Combine(pack, "plan.json"));
        Directory.Delete(Path.Combine(pack, "sheets"), recursive: true);
        File.WriteAllText(Path.Combine(pack, "sheets"), "mine");

        AssertRefusedUnchanged(scratch, pack, "Found plan.json/ (changed), sheets.");
    }

    [Fact]
    public void Ten_are_named_and_the_rest_is_counted()
    {
        using var scratch = new Scratch();
        var pack = Packed(scratch);
        for (var i = 10; i < 33; i++)
        {
            File.WriteAllText(
                Path.Combine(pack, string.Create(CultureInfo.InvariantCulture, $"photo-{i}.jpg")),
                "mine"
            );
        }

        AssertRefusedUnchanged(scratch, pack, "photo-10.jpg, ", "photo-19.jpg and 13 more.");
    }

    [Fact]
    public void An_older_pack_without_a_list_is_not_replaced()
    {
        using var scratch = new Scratch();
        var pack = Packed(scratch);
        File.Delete(Path.Combine(pack, PackList.FileName));

        AssertRefusedUnchanged(scratch, pack, "no pack-list.json", "build-pack.pdf", "sheets/");
    }

    [Fact]
    public void A_missing_file_of_the_pack_is_no_hindrance()
    {
        using var scratch = new Scratch();
        var pack = Packed(scratch);
        File.Delete(Path.Combine(pack, "plan.json"));
        Directory.Delete(Path.Combine(pack, "sheets"), recursive: true);
        File.Delete(Path.Combine(pack, "fittings/J1.stl"));

        Assert.Empty(PackFiles.Write(pack, PackFiles.Second, replace: true));

        PackFiles.AssertIs(PackFiles.Second, pack);
        Assert.Equal(["pack/"], TopOf(scratch));
    }

    [Theory]
    [InlineData("../x")]
    [InlineData("../pack/../x")]
    [InlineData("sheets/../../x")]
    public void A_forged_list_that_names_a_file_outside_is_not_believed(string name)
    {
        using var scratch = new Scratch();
        var pack = Packed(scratch);
        scratch.Write("x", "mine");
        var sum = Convert.ToHexStringLower(SHA256.HashData("mine"u8));
        var checksum = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes($"{name} 4 {sum}\n")));
        File.WriteAllText(
            Path.Combine(pack, PackList.FileName),
            $$"""
            {
              "format": 1,
              "files": [
                { "name": "{{name}}", "bytes": 4, "sha256": "{{sum}}" }
              ],
              "checksum": "{{checksum}}"
            }

            """.ReplaceLineEndings("\n")
        );

        AssertRefusedUnchanged(scratch, pack, "cannot be trusted", name);
    }

    [Fact]
    public void A_list_that_was_edited_by_hand_is_not_believed()
    {
        using var scratch = new Scratch();
        var pack = Packed(scratch);
        var list = Path.Combine(pack, PackList.FileName);
        File.WriteAllText(list, File.ReadAllText(list).Replace("plan.json", "play.json", StringComparison.Ordinal));

        AssertRefusedUnchanged(scratch, pack, "cannot be trusted", "edited by hand");
    }

    [Fact]
    public void A_link_to_a_pack_stays_a_link_and_the_folder_it_leads_to_gets_the_new_pack()
    {
        using var scratch = new Scratch();
        Directory.CreateDirectory(scratch.At("stick"));
        PackFiles.Write(scratch.At("stick/real"), PackFiles.First);
        Directory.CreateSymbolicLink(scratch.At("step"), "stick/real");
        Directory.CreateSymbolicLink(scratch.At("pack"), "step");

        Assert.Empty(PackFiles.Write(scratch.At("pack"), PackFiles.Second, replace: true));

        Assert.Equal("step", new DirectoryInfo(scratch.At("pack")).LinkTarget);
        Assert.Equal("stick/real", new DirectoryInfo(scratch.At("step")).LinkTarget);
        PackFiles.AssertIs(PackFiles.Second, scratch.At("stick/real"));
        Assert.Equal(["pack", "step", "stick/"], TopOf(scratch));
        Assert.Equal(["real/"], PackFiles.Snapshot(scratch.At("stick")).Keys.Where(IsTop));
    }

    [Fact]
    public void A_link_that_leads_nowhere_is_told()
    {
        using var scratch = new Scratch();
        Directory.CreateSymbolicLink(scratch.At("pack"), scratch.At("stick/real"));

        Assert.Contains("is a link to", PackFiles.Refused(scratch.At("pack")).Message, StringComparison.Ordinal);
        Assert.Equal(["pack"], scratch.Names);
    }

    [Fact]
    public void A_link_inside_is_yours_and_is_never_followed()
    {
        using var scratch = new Scratch();
        var pack = Packed(scratch);
        // The folder it leads to holds the very files that the list names.
        Directory.Move(Path.Combine(pack, "sheets"), scratch.At("mine"));
        Directory.CreateSymbolicLink(Path.Combine(pack, "sheets"), scratch.At("mine"));
        File.Move(Path.Combine(pack, "plan.json"), scratch.At("plan.json"));
        File.CreateSymbolicLink(Path.Combine(pack, "plan.json"), scratch.At("plan.json"));

        AssertRefusedUnchanged(scratch, pack, "Found plan.json (a link) (changed), sheets (a link).");
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void What_is_put_there_while_the_pack_is_written_stops_it(bool exchanges)
    {
        using var scratch = new Scratch();
        var pack = Packed(scratch);
        var rules = new PackRules
        {
            Exchanges = exchanges,
            BeforeChange = () => File.WriteAllText(Path.Combine(pack, "diary.txt"), "mine"),
        };

        Assert.Contains("Found diary.txt.", PackFiles.Refused(pack, rules).Message, StringComparison.Ordinal);

        Assert.Equal("mine", File.ReadAllText(Path.Combine(pack, "diary.txt")));
        Assert.Equal("first plan", File.ReadAllText(Path.Combine(pack, "plan.json")));
        Assert.Equal(["pack/"], TopOf(scratch));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void What_gets_into_the_old_pack_after_the_last_look_is_kept_and_told(bool exchanges)
    {
        using var scratch = new Scratch();
        var pack = Packed(scratch);
        var rules = new PackRules
        {
            Exchanges = exchanges,
            AfterChange = () =>
            {
                var old = Directory.GetDirectories(scratch.Folder, ".pack.*").Single();
                File.WriteAllText(Path.Combine(old, "sheets", "diary.txt"), "mine");
                File.WriteAllText(Path.Combine(old, "plan.json"), "mine too");
            },
        };

        var notes = PackFiles.Write(pack, PackFiles.Second, replace: true, rules);

        Assert.Contains(scratch.At("pack-kept"), Assert.Single(notes), StringComparison.Ordinal);
        PackFiles.AssertIs(PackFiles.Second, pack);
        Assert.Equal(["pack-kept/", "pack/"], TopOf(scratch));
        Assert.Equal(["plan.json", "sheets/", "sheets/diary.txt"], PackFiles.Snapshot(scratch.At("pack-kept")).Keys);
        Assert.Equal("mine", File.ReadAllText(scratch.At("pack-kept/sheets/diary.txt")));
        Assert.Equal("mine too", File.ReadAllText(scratch.At("pack-kept/plan.json")));
    }

    [Fact]
    public void Without_replace_an_empty_folder_is_filled_and_one_that_fills_meanwhile_is_left_alone()
    {
        using var scratch = new Scratch();
        Directory.CreateDirectory(scratch.At("pack"));
        var rules = new PackRules { BeforeChange = () => File.WriteAllText(scratch.At("pack/diary.txt"), "mine") };

        Assert.Throws<Refusal>(() => PackFiles.Write(scratch.At("pack"), PackFiles.First, rules: rules));
        Assert.Equal(["pack", "pack/diary.txt"], scratch.Names);

        File.Delete(scratch.At("pack/diary.txt"));
        PackFiles.Write(scratch.At("pack"), PackFiles.First);
        PackFiles.AssertIs(PackFiles.First, scratch.At("pack"));
    }

    [Fact]
    public void The_target_is_there_at_every_moment_of_a_replacement()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Only Linux is asked to exchange two folders.");
        using var scratch = new Scratch();
        var pack = Packed(scratch);
        var plan = Path.Combine(pack, "plan.json");
        var (isDone, missed, looks) = (false, 0, 0);
        var watch = new Thread(() =>
        {
            while (!Volatile.Read(ref isDone))
            {
                looks++;
                missed += File.Exists(plan) ? 0 : 1;
            }
        });
        watch.Start();
        for (var i = 0; i < 40; i++)
        {
            PackFiles.Write(pack, i % 2 == 0 ? PackFiles.Second : PackFiles.First, replace: true);
        }

        Volatile.Write(ref isDone, true);
        watch.Join();
        Assert.True(looks > 40);
        Assert.Equal(0, missed);
    }

    private static string Packed(Scratch scratch)
    {
        PackFiles.Write(scratch.At("pack"), PackFiles.First);
        return scratch.At("pack");
    }

    private static void AssertRefusedUnchanged(Scratch scratch, string pack, params string[] words)
    {
        var before = PackFiles.Snapshot(scratch.Folder);

        var refusal = PackFiles.Refused(pack);

        Assert.Equal(Exit.NotWritten, refusal.ExitCode);
        Assert.All(words, word => Assert.Contains(word, refusal.Message, StringComparison.Ordinal));
        Assert.Equal(before, PackFiles.Snapshot(scratch.Folder));
    }

    private static IEnumerable<string> TopOf(Scratch scratch) => PackFiles.Snapshot(scratch.Folder).Keys.Where(IsTop);

    private static bool IsTop(string name) => !name.TrimEnd('/').Contains('/', StringComparison.Ordinal);
}
