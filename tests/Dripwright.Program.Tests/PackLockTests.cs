using System.Runtime.InteropServices;
using System.Text;
using Dripwright.Files;
using Dripwright.Terminal;
using Microsoft.Win32.SafeHandles;

namespace Dripwright.Program.Tests;

/// <summary>One writer at a time, also across machines, and no dead one bars the way for ever.</summary>
public sealed class PackLockTests
{
    private const string OtherMachine = "ffffffffffffffffffffffffffffffff";
    private const string SomeId = "0123456789abcdef0123456789abcdef";

    [Fact]
    public void Many_writers_at_once_leave_one_whole_pack_and_nothing_beside_it()
    {
        using var scratch = new Scratch();
        var packs = Enumerable.Range(0, 6).Select(i => PackFiles.Of("writer " + "abcdef"[i])).ToList();
        PackFiles.Write(scratch.At("pack"), PackFiles.First);
        var (written, busy) = (0, 0);
        List<Exception> wrong = [];
        var threads = packs
            .Select(files => new Thread(() =>
            {
                for (var i = 0; i < 8; i++)
                {
                    try
                    {
                        PackFiles.Write(
                            scratch.At("pack"),
                            files,
                            replace: true,
                            new PackRules { Lock = PackFiles.Quick }
                        );
                        Interlocked.Increment(ref written);
                    }
                    catch (Refusal refusal) when (refusal.Message.Contains("another run", StringComparison.Ordinal))
                    {
                        Interlocked.Increment(ref busy);
                        Thread.Sleep(1);
                    }
                    catch (Exception other)
                    {
                        lock (wrong)
                        {
                            wrong.Add(other);
                        }
                    }
                }
            }))
            .ToList();
        threads.ForEach(thread => thread.Start());
        threads.ForEach(thread => thread.Join());

        Assert.Empty(wrong);
        Assert.True(written > 0);
        Assert.Equal(48, written + busy);
        Assert.True(StandingPack.Look(scratch.At("pack"), TestContext.Current.CancellationToken).IsWhole);
        Assert.Equal(["pack"], Directory.GetFileSystemEntries(scratch.Folder).Select(Path.GetFileName));
    }

    [Fact]
    public void While_one_writes_another_is_refused_and_told_why()
    {
        using var scratch = new Scratch();
        var rules = new PackRules
        {
            BeforeChange = () =>
            {
                var second = Assert.Throws<Refusal>(() => PackFiles.Write(scratch.At("pack"), PackFiles.Second));
                Assert.Equal(Exit.NotWritten, second.ExitCode);
                Assert.Contains("another run", second.Message, StringComparison.Ordinal);
            },
        };

        PackFiles.Write(scratch.At("pack"), PackFiles.First, rules: rules);

        PackFiles.AssertIs(PackFiles.First, scratch.At("pack"));
        Assert.DoesNotContain(scratch.Names, name => name.StartsWith('.'));
    }

    [Fact]
    public void What_a_killed_run_of_this_machine_left_is_taken_over_at_once()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Only there has a running system an id.");
        using var scratch = new Scratch();
        Leave(scratch, new LockRules().Machine);
        PackFiles.Write(scratch.At("pack"), PackFiles.First);
        var draft = $".pack.{SomeId}.draft";
        Directory.CreateDirectory(scratch.At(draft + "/sheets"));
        foreach (var (name, bytes) in PackFiles.Of("half").Where(file => file.Key != "plan.json"))
        {
            Directory.CreateDirectory(Path.GetDirectoryName(scratch.At($"{draft}/{name}"))!);
            File.WriteAllBytes(scratch.At($"{draft}/{name}"), bytes);
        }

        File.WriteAllBytes(
            scratch.At($"{draft}/pack-list.json"),
            Dripwright.Pack.PackList.Of(PackFiles.Of("half")).ToBytes()
        );
        scratch.Write($"{draft}/.{SomeId}.part", "half a pla");

        Assert.Empty(PackFiles.Write(scratch.At("pack"), PackFiles.Second, replace: true));

        PackFiles.AssertIs(PackFiles.Second, scratch.At("pack"));
        Assert.Equal(["pack"], Directory.GetFileSystemEntries(scratch.Folder).Select(Path.GetFileName));
    }

    [Fact]
    public void A_pack_that_a_killed_run_left_aside_is_given_back_and_then_is_in_the_way_as_it_should_be()
    {
        using var scratch = new Scratch();
        PackFiles.Write(scratch.At("pack"), PackFiles.First);
        Directory.Move(scratch.At("pack"), scratch.At($".pack.{SomeId}.old"));
        PackFiles.Write(scratch.At("x"), PackFiles.Second);
        Directory.Move(scratch.At("x"), scratch.At($".pack.{SomeId}.draft"));

        var refusal = Assert.Throws<Refusal>(() => PackFiles.Write(scratch.At("pack"), PackFiles.Second));

        Assert.Contains("there already", refusal.Message, StringComparison.Ordinal);
        PackFiles.AssertIs(PackFiles.First, scratch.At("pack"));
        Assert.Equal(["pack"], Directory.GetFileSystemEntries(scratch.Folder).Select(Path.GetFileName));
    }

    [Fact]
    public void A_lock_of_another_machine_that_stays_the_same_is_taken_over()
    {
        using var scratch = new Scratch();
        Leave(scratch, OtherMachine);

        PackFiles.Write(scratch.At("pack"), PackFiles.First, rules: new PackRules { Lock = PackFiles.Quick });

        PackFiles.AssertIs(PackFiles.First, scratch.At("pack"));
        Assert.Equal(["pack"], Directory.GetFileSystemEntries(scratch.Folder).Select(Path.GetFileName));
    }

    [Fact]
    public void A_lock_that_another_machine_keeps_alive_is_respected_though_the_system_sees_no_lock_on_it()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Past the platform's own locks the test writes by Linux.");
        using var scratch = new Scratch();
        Leave(scratch, OtherMachine);
        using var other = OpenUnlocked(scratch.At(".pack.lock"));
        var beat = 1;
        using var heart = new Timer(
            _ => RandomAccess.Write(other, new LockText(SomeId, OtherMachine, beat++).ToBytes(), 0),
            null,
            0,
            50
        );
        // Patience far over the beat, so that a machine that is busy with other tests does not decide.
        var rules = new PackRules { Lock = PackFiles.Quick with { Patience = TimeSpan.FromSeconds(30) } };

        var refusal = Assert.Throws<Refusal>(() => PackFiles.Write(scratch.At("pack"), PackFiles.First, rules: rules));

        Assert.Contains("another run", refusal.Message, StringComparison.Ordinal);
        Assert.Equal([".pack.lock"], scratch.Names);
    }

    [Fact]
    public void A_writer_whose_lock_was_taken_while_it_slept_changes_nothing()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Past the platform's own locks the test writes by Linux.");
        using var scratch = new Scratch();
        PackFiles.Write(scratch.At("pack"), PackFiles.First);
        var rules = new PackRules
        {
            BeforeChange = () =>
            {
                using var other = OpenUnlocked(scratch.At(".pack.lock"));
                RandomAccess.Write(other, new LockText(SomeId, OtherMachine, 7).ToBytes(), 0);
            },
        };

        Assert.Contains("taken over", PackFiles.Refused(scratch.At("pack"), rules).Message, StringComparison.Ordinal);

        PackFiles.AssertIs(PackFiles.First, scratch.At("pack"));
        // The lock is the other one's now, and stays.
        Assert.Equal(
            [".pack.lock", "pack"],
            Directory.GetFileSystemEntries(scratch.Folder).Select(Path.GetFileName).Order(StringComparer.Ordinal)
        );
    }

    [Fact]
    public void A_writer_whose_draft_was_cleared_away_while_it_slept_never_calls_half_a_pack_whole()
    {
        using var scratch = new Scratch();
        PackFiles.Write(scratch.At("pack"), PackFiles.First);
        IEnumerable<KeyValuePair<string, byte[]>> Slow()
        {
            foreach (var file in PackFiles.Second)
            {
                yield return file;
                if (file.Key == "plan.json")
                {
                    // As the one who takes over does it.
                    var draft = Directory.GetDirectories(scratch.Folder, ".pack.*.draft").Single();
                    Directory.Move(draft, scratch.At("cleared"));
                    Directory.CreateDirectory(Path.Combine(draft, "sheets"));
                    Directory.CreateDirectory(Path.Combine(draft, "fittings"));
                }
            }
        }

        Assert.Throws<Refusal>(() =>
            PackFolder.Write(
                scratch.At("pack"),
                Dripwright.Pack.PackList.Of(PackFiles.Second),
                Slow(),
                replace: true,
                CancellationToken.None
            )
        );

        PackFiles.AssertIs(PackFiles.First, scratch.At("pack"));
    }

    [Theory]
    [InlineData("")]
    [InlineData("\0\0\0\0\0\0")]
    public void A_lock_that_was_made_and_never_written_bars_nobody_for_long(string text)
    {
        using var scratch = new Scratch();
        scratch.Write(".pack.lock", text);

        PackFiles.Write(scratch.At("pack"), PackFiles.First, rules: new PackRules { Lock = PackFiles.Quick });

        PackFiles.AssertIs(PackFiles.First, scratch.At("pack"));
    }

    [Theory]
    [InlineData("my own notes on locks")]
    [InlineData("dripwright-lock 0123456789abcdef0123456789abcdef")]
    public void A_file_of_that_name_that_is_no_lock_is_left_alone(string text)
    {
        using var scratch = new Scratch();
        scratch.Write(".pack.lock", text);

        var refusal = Assert.Throws<Refusal>(() =>
            PackFiles.Write(scratch.At("pack"), PackFiles.First, rules: new PackRules { Lock = PackFiles.Quick })
        );

        Assert.Contains(".pack.lock", refusal.Message, StringComparison.Ordinal);
        Assert.Equal(text, File.ReadAllText(scratch.At(".pack.lock")));
    }

    [Fact]
    public void A_lock_reads_back_as_it_was_written_and_is_always_as_long()
    {
        var text = new LockText(SomeId, OtherMachine, long.MaxValue);

        Assert.Equal(text, LockText.Of(text.ToBytes()));
        Assert.Equal(LockText.Length, text.ToBytes().Length);
        Assert.Equal(LockText.Length, (text with { Beat = 0 }).ToBytes().Length);
        Assert.Null(LockText.Of(Encoding.ASCII.GetBytes(new string('x', LockText.Length))));
    }

    [Fact]
    public void A_name_as_long_as_the_disk_allows_has_room_for_its_lock_and_draft()
    {
        using var scratch = new Scratch();
        var name = new string('p', 250);

        PackFiles.Write(scratch.At(name), PackFiles.First);

        PackFiles.AssertIs(PackFiles.First, scratch.At(name));
    }

    private static void Leave(Scratch scratch, string machine) =>
        File.WriteAllBytes(scratch.At(".pack.lock"), new LockText(SomeId, machine, 0).ToBytes());

    // As a machine writes whose locks are not seen here.
    private static SafeFileHandle OpenUnlocked(string path)
    {
        const int WriteOnly = 1;
        var handle = Open(Encoding.UTF8.GetBytes(path + '\0'), WriteOnly);
        Assert.True(handle >= 0);
        return new SafeFileHandle(handle, ownsHandle: true);
    }

    [DllImport("libc", EntryPoint = "open")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Open(byte[] path, int flags);
}
