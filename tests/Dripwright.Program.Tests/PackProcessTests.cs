using System.Globalization;
using Dripwright.Files;
using Dripwright.Terminal;

namespace Dripwright.Program.Tests;

/// <summary>Packs of the built program: two runs at once, runs that are killed, a disk that is full.</summary>
public sealed class PackProcessTests
{
    private static readonly string[] s_pack = ["pack", Repository.OnePot, "--no-simulation"];

    [Fact]
    public async Task Of_two_runs_at_once_one_writes_the_pack_and_the_other_says_why_not()
    {
        using var scratch = new Scratch();
        var pack = scratch.At("pack");
        var runs = new[] { "A", "B" }
            .Select(revision => BuiltProgram.Start([.. s_pack, "-o", pack, "--revision", revision]))
            .ToList();

        var ends = await Task.WhenAll(runs.Select(BuiltProgram.End));

        Assert.Equal([Exit.Good, Exit.NotWritten], ends.Select(end => end.Exit).Order());
        Assert.All(
            ends.Where(end => end.Exit == Exit.NotWritten),
            end => Assert.Matches("is there already|another run of the program", end.Error)
        );
        AssertWholeAndAlone(scratch);
    }

    [Fact]
    public async Task Of_two_replacing_runs_at_once_one_whole_pack_stays()
    {
        using var scratch = new Scratch();
        var pack = scratch.At("pack");
        PackFiles.Write(pack, PackFiles.First);
        var runs = new[] { "A", "B" }
            .Select(revision => BuiltProgram.Start([.. s_pack, "-o", pack, "--replace", "--revision", revision]))
            .ToList();

        var ends = await Task.WhenAll(runs.Select(BuiltProgram.End));

        Assert.Contains(Exit.Good, ends.Select(end => end.Exit));
        Assert.All(ends, end => Assert.True(end.Exit is Exit.Good or Exit.NotWritten, end.Error));
        AssertWholeAndAlone(scratch);
    }

    [Fact]
    public async Task However_often_a_replacing_run_is_killed_there_is_a_whole_pack_and_the_next_run_goes_through()
    {
        var kills = Trials.Times(3, 100);
        using var scratch = new Scratch();
        var pack = scratch.At("pack");
        PackFiles.Write(pack, PackFiles.First);
        scratch.Write("diary.txt", "mine");
        var random = new Random(20260301);
        var within = 0;
        for (var i = 0; i < kills; i++)
        {
            using var run = BuiltProgram.Start([.. s_pack, "-o", pack, "--replace", "--revision", "k" + Number(i)]);
            // The lock shows that the writing has begun: a kill before it would try nothing.
            var before = LockIn(scratch);
            while (!run.HasExited && (LockIn(scratch) is not { } now || now == before))
            {
                await Task.Delay(1, TestContext.Current.CancellationToken);
            }

            await Task.Delay(random.Next(250), TestContext.Current.CancellationToken);
            run.Kill();
            await run.WaitForExitAsync(TestContext.Current.CancellationToken);
            within += LockIn(scratch) is null ? 0 : 1;

            Assert.True(StandingPack.Look(pack, TestContext.Current.CancellationToken).IsWhole, "Kill " + Number(i));
            Assert.Equal("mine", File.ReadAllText(scratch.At("diary.txt")));
        }

        var end = await BuiltProgram.Run([.. s_pack, "-o", pack, "--replace"]);

        TestContext.Current.TestOutputHelper!.WriteLine(
            $"{Number(within)} of {Number(kills)} kills came while it wrote."
        );
        Assert.Equal((Exit.Good, ""), (end.Exit, end.Error));
        File.Delete(scratch.At("diary.txt"));
        AssertWholeAndAlone(scratch);
    }

    [Fact]
    public async Task A_disk_that_takes_no_more_leaves_the_old_pack_and_nothing_else()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "The limit is set by bash.");
        using var scratch = new Scratch();
        var pack = scratch.At("pack");
        PackFiles.Write(pack, PackFiles.First);
        // No file may grow over 64 kB: the PDF is larger. The runtime's own memory would count as a file without the switch.
        string[] limited =
        [
            "-c",
            "trap '' XFSZ; ulimit -f 64; export DOTNET_EnableWriteXorExecute=0; exec dotnet \"$@\"",
            "bash",
            BuiltProgram.Path,
            .. s_pack,
            "-o",
            pack,
            "--replace",
        ];

        var end = await BuiltProgram.End(BuiltProgram.StartOf("bash", limited));

        Assert.Equal(Exit.NotWritten, end.Exit);
        Assert.Contains("cannot be written", end.Error, StringComparison.Ordinal);
        PackFiles.AssertIs(PackFiles.First, pack);
        AssertWholeAndAlone(scratch);
    }

    private static void AssertWholeAndAlone(Scratch scratch)
    {
        Assert.True(StandingPack.Look(scratch.At("pack"), TestContext.Current.CancellationToken).IsWhole);
        Assert.Equal(["pack"], Directory.GetFileSystemEntries(scratch.Folder).Select(Path.GetFileName));
    }

    // The id in the lock, past the lock itself.
    private static string? LockIn(Scratch scratch)
    {
        if (!OperatingSystem.IsLinux())
        {
            return File.Exists(scratch.At(".pack.lock")) ? "held" : null;
        }

        using var file = Disk.OpenUnlocked(scratch.At(".pack.lock"));
        if (file is null)
        {
            return null;
        }

        var bytes = new byte[LockText.Length];
        return LockText.Of(bytes[..RandomAccess.Read(file, bytes, 0)])?.Id;
    }

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
