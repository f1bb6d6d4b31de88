using Dripwright.Files;
using Dripwright.Pack;
using Dripwright.Terminal;

namespace Dripwright.Program.Tests;

public sealed class PackTests
{
    private static readonly KeyValuePair<string, byte[]>[] s_files =
    [
        new("build-pack.pdf", [1]),
        new("plan.json", [2]),
        new("sheets/plan-view.svg", [3]),
    ];

    private static readonly PackList s_list = PackList.Of(s_files);

    [Fact]
    public void A_pack_is_written_whole_with_nothing_beside_it()
    {
        using var scratch = new Scratch();
        PackFolder.Write(scratch.At("deep/er/pack"), s_list, s_files, replace: false, CancellationToken.None);

        Assert.Equal(
            [
                "deep",
                "deep/er",
                "deep/er/pack",
                "deep/er/pack/build-pack.pdf",
                "deep/er/pack/pack-list.json",
                "deep/er/pack/plan.json",
                "deep/er/pack/sheets",
                "deep/er/pack/sheets/plan-view.svg",
            ],
            scratch.Names
        );
    }

    [Fact]
    public void A_failure_in_the_middle_leaves_nothing_behind()
    {
        using var scratch = new Scratch();

        var refusal = Assert.Throws<Refusal>(() =>
            PackFolder.Write(scratch.At("deep/pack"), s_list, FailingAfter(2), replace: false, CancellationToken.None)
        );

        Assert.Equal(Exit.NotWritten, refusal.ExitCode);
        Assert.Empty(scratch.Names);
    }

    [Fact]
    public void A_failure_in_the_middle_leaves_the_old_pack_as_it_was()
    {
        using var scratch = new Scratch();
        PackFolder.Write(scratch.At("pack"), s_list, s_files, replace: false, CancellationToken.None);
        var before = scratch.Names;

        Assert.Throws<Refusal>(() =>
            PackFolder.Write(scratch.At("pack"), s_list, FailingAfter(1), replace: true, CancellationToken.None)
        );

        Assert.Equal(before, scratch.Names);
        Assert.Equal([3], File.ReadAllBytes(scratch.At("pack/sheets/plan-view.svg")));
    }

    [Fact]
    public void A_stop_in_the_middle_leaves_nothing_behind()
    {
        using var scratch = new Scratch();
        using var stop = new CancellationTokenSource();

        Assert.Throws<OperationCanceledException>(() =>
            PackFolder.Write(scratch.At("pack"), s_list, StoppingAfterOne(stop), replace: false, stop.Token)
        );

        Assert.Empty(scratch.Names);
    }

    [Fact]
    public void A_pack_that_stands_there_is_replaced_only_when_asked()
    {
        using var scratch = new Scratch();
        PackFolder.Write(scratch.At("pack"), s_list, s_files, replace: false, CancellationToken.None);

        Assert.Throws<Refusal>(() =>
            PackFolder.Write(scratch.At("pack"), s_list, s_files, replace: false, CancellationToken.None)
        );
        PackFolder.Write(
            scratch.At("pack"),
            PackList.Of(s_files[..2]),
            s_files[..2],
            replace: true,
            CancellationToken.None
        );

        Assert.Equal(["pack", "pack/build-pack.pdf", "pack/pack-list.json", "pack/plan.json"], scratch.Names);
    }

    [Fact]
    public void A_folder_that_is_no_pack_is_never_replaced()
    {
        using var scratch = new Scratch();
        Directory.CreateDirectory(scratch.At("home"));
        scratch.Write("home/letters.txt", "dear");

        var refusal = Assert.Throws<Refusal>(() =>
            PackFolder.Write(scratch.At("home"), s_list, s_files, replace: true, CancellationToken.None)
        );

        Assert.Equal(Exit.NotWritten, refusal.ExitCode);
        Assert.Equal(["home", "home/letters.txt"], scratch.Names);
    }

    [Fact]
    public void A_file_that_is_not_on_the_list_cannot_lead_out_of_the_pack()
    {
        using var scratch = new Scratch();

        Assert.Throws<InvalidOperationException>(() =>
            PackFolder.Write(
                scratch.At("pack"),
                s_list,
                [new("../escaped.txt", [1])],
                replace: false,
                CancellationToken.None
            )
        );

        Assert.Empty(scratch.Names);
    }

    [Fact]
    public void A_place_that_cannot_be_written_is_told_and_nothing_is_left()
    {
        using var scratch = new Scratch();
        scratch.Write("a-file", "mine");
        List<string> places = [scratch.At("a-file/pack")];
        if (OperatingSystem.IsLinux())
        {
            places.Add("/proc/pack");
            places.Add("/proc/deep/pack");
        }

        foreach (var place in places)
        {
            var refusal = Assert.Throws<Refusal>(() =>
                PackFolder.Write(place, s_list, s_files, replace: true, CancellationToken.None)
            );
            Assert.Equal(Exit.NotWritten, refusal.ExitCode);
            Assert.Contains("Nothing was changed", refusal.Message, StringComparison.Ordinal);
        }

        Assert.Equal(["a-file"], scratch.Names);
    }

    [Fact]
    public async Task The_command_writes_a_pack_with_plan_and_rig_file()
    {
        using var scratch = new Scratch();
        var call = await Call.Of("pack", Repository.School, "-o", scratch.At("pack"));

        Assert.Equal(Exit.Good, call.Exit);
        Assert.Empty(call.Error);
        Assert.Contains(scratch.At("pack"), call.Out, StringComparison.Ordinal);
        Assert.Contains("pack/build-pack.pdf", scratch.Names);
        Assert.Contains("pack/plan.json", scratch.Names);
        var plan = await Call.Of("plan", Repository.School, "--json");
        Assert.Equal(
            plan.Out,
            await File.ReadAllTextAsync(scratch.At("pack/plan.json"), TestContext.Current.CancellationToken)
        );
    }

    [Fact]
    public async Task The_same_call_gives_the_same_bytes_and_replaces_only_when_asked()
    {
        using var scratch = new Scratch();
        string[] call = ["pack", Repository.OnePot, "--no-simulation", "-o"];
        Assert.Equal(Exit.Good, (await Call.Of([.. call, scratch.At("one")])).Exit);
        Assert.Equal(Exit.Good, (await Call.Of([.. call, scratch.At("two")])).Exit);

        Assert.Equal(Exit.NotWritten, (await Call.Of([.. call, scratch.At("two")])).Exit);
        Assert.Equal(Exit.Good, (await Call.Of([.. call, scratch.At("two"), "--replace"])).Exit);

        var names = scratch.Names.Where(name => File.Exists(scratch.At(name))).ToList();
        foreach (var name in names.Where(name => name.StartsWith("one/", StringComparison.Ordinal)))
        {
            Assert.Equal(File.ReadAllBytes(scratch.At(name)), File.ReadAllBytes(scratch.At("two" + name[3..])));
        }

        Assert.DoesNotContain(scratch.Names, name => name.StartsWith('.'));
    }

    [Fact]
    public async Task A_file_in_the_place_of_the_folder_gives_4()
    {
        using var scratch = new Scratch();
        scratch.Write("pack", "a file");
        var call = await Call.Of("pack", Repository.School, "-o", scratch.At("pack"), "--replace", "--no-simulation");

        Assert.Equal(Exit.NotWritten, call.Exit);
        Assert.Empty(call.Out);
        Assert.Equal(["pack"], scratch.Names);
    }

    private static IEnumerable<KeyValuePair<string, byte[]>> FailingAfter(int count)
    {
        foreach (var file in s_files.Take(count))
        {
            yield return file;
        }

        throw new IOException("The disk is full.");
    }

    private static IEnumerable<KeyValuePair<string, byte[]>> StoppingAfterOne(CancellationTokenSource stop)
    {
        yield return s_files[0];
        stop.Cancel();
        yield return s_files[1];
    }
}
