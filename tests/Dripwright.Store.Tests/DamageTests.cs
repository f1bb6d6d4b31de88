using System.Globalization;
using System.Text;
using Dripwright.Store.Backups;
using Dripwright.Store.Ground;
using Dripwright.Store.Tests.Places;

namespace Dripwright.Store.Tests;

/// <summary>Whatever a disk, a stick or another hand did to a backup: it is refused, or it comes back as it was.</summary>
public sealed class DamageTests : IAsyncDisposable
{
    private static readonly StoppedClock s_clock = new(new DateTime(2026, 4, 1, 8, 30, 0, DateTimeKind.Utc));

    private readonly SqlitePlaces _places = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private static int Damages => Trials.Times(100, 1000);

    public ValueTask DisposeAsync() => _places.DisposeAsync();

    [Fact]
    public async Task A_backup_damaged_at_random_is_refused_or_comes_back_identical()
    {
        var before = await Backup(At("good"));
        var good = await File.ReadAllBytesAsync(At("good"), Stop);
        var random = new Random(20261130);
        var (refused, identical) = (0, 0);
        for (var n = 0; n < Damages; n++)
        {
            var (what, bytes) = Damaged(good, random);
            await File.WriteAllBytesAsync(At("bad"), bytes, Stop);
            var place = GardenPlace.File(At("back"));
            try
            {
                await Garden.RestoreAsync(place, At("bad"), s_clock, Stop);
            }
            catch (GardenException wrong)
            {
                Assert.True(
                    wrong.Kind is TroubleKind.Damaged or TroubleKind.NotAGarden or TroubleKind.Newer,
                    $"{what}: {wrong.Kind} {wrong.Message}"
                );
                Assert.False(File.Exists(place.Path), what);
                refused++;
                continue;
            }

            await using (var back = await Garden.OpenAsync(place, s_clock, Stop))
            {
                Assert.True(before == await Content(back), $"{what}: came back changed");
            }

            identical++;
            File.Delete(place.Path!);
        }

        TestContext.Current.TestOutputHelper?.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{Damages} damaged backups: {refused} refused, {identical} identical"
            )
        );
        // Most of a file is content: a check that takes everything would refuse nothing.
        Assert.True(refused > Damages / 2, string.Create(CultureInfo.InvariantCulture, $"only {refused} refused"));
        Assert.Empty(Directory.GetFileSystemEntries(_places.Folder, ".*"));
    }

    [Fact]
    public async Task A_garden_file_damaged_at_random_is_refused_or_read_identical()
    {
        await Backup(At("good"));
        await using var garden = await Garden.OpenAsync(GardenPlace.File(At("0.dripwright")), s_clock, Stop);
        using var file = new MemoryStream();
        await garden.ExportAsync(file, Stop);
        var good = file.ToArray();
        var sum = (await Read(good)).Sum();
        var random = new Random(7);
        var refused = 0;
        for (var n = 0; n < Damages; n++)
        {
            var (what, bytes) = Damaged(good, random);
            try
            {
                Assert.True((await Read(bytes)).Sum() == sum, $"{what}: read changed");
            }
            catch (GardenException)
            {
                refused++;
            }
        }

        Assert.True(refused > Damages / 2, string.Create(CultureInfo.InvariantCulture, $"only {refused} refused"));
    }

    [Theory]
    [InlineData("UPDATE documents SET \"Version\" = 2147483647", "Version")]
    [InlineData("UPDATE documents SET \"Version\" = 99999999999", "Version")]
    [InlineData("UPDATE documents SET \"Version\" = 'seven'", "Version")]
    [InlineData("UPDATE documents SET \"Name\" = ''", "Name")]
    [InlineData("UPDATE documents SET \"Name\" = CAST(x'ff41' AS TEXT)", "Name")]
    [InlineData("UPDATE documents SET \"Kind\" = 'Rig 1' WHERE \"Kind\" = 'rig'", "Kind")]
    [InlineData("UPDATE documents SET \"Kind\" = 'catalogue' WHERE \"Kind\" = 'rig'", "catalogue")]
    [InlineData("UPDATE documents SET \"Step\" = 77 WHERE \"Kind\" = 'rig'", "step is missing")]
    [InlineData("UPDATE documents SET \"Text\" = 'other' WHERE \"Kind\" = 'rig'", "something else")]
    [InlineData("UPDATE documents SET \"ChangedAt\" = 'yesterday'", "ChangedAt")]
    [InlineData("UPDATE documents SET \"ChangedAt\" = '9999-01-01 00:00:00'", "ChangedAt")]
    [InlineData("UPDATE steps SET \"Before\" = \"Number\" WHERE \"Number\" = 2", "Before")]
    [InlineData("UPDATE steps SET \"After\" = 1 WHERE \"Number\" = 2", "After")]
    [InlineData("UPDATE steps SET \"Before\" = 0 WHERE \"Number\" = 2 AND \"DocumentId\" = 3", "does not lead back")]
    [InlineData("UPDATE steps SET \"Text\" = x'00ff' WHERE \"Number\" = 1", "Text")]
    [InlineData("UPDATE steps SET \"What\" = CAST(x'c328' AS TEXT)", "What")]
    [InlineData("UPDATE revisions SET \"Number\" = 9 WHERE \"Number\" = 2", "Number")]
    [InlineData("UPDATE revisions SET \"Text\" = CAST(x'e28280ff' AS TEXT)", "Text")]
    [InlineData("UPDATE revisions SET \"At\" = 12", "At")]
    [InlineData("UPDATE gardens SET \"Settings\" = '{\"name\":\"\"}'", "settings")]
    [InlineData("UPDATE gardens SET \"Edits\" = -1", "Edits")]
    [InlineData("INSERT INTO gardens VALUES (2, '{}', '2026-01-02 03:04:05', 0)", "gardens")]
    public async Task Every_row_obeys_the_rules_of_a_live_edit_even_under_a_checksum_that_holds(string sql, string told)
    {
        await Backup(At("copy"));
        await Raw.Run(At("copy"), sql, Stop);
        Checksum.Seal(At("copy"), DateTime.UnixEpoch.AddYears(56));
        var place = GardenPlace.File(At("back"));
        var wrong = await Assert.ThrowsAsync<GardenException>(() =>
            Garden.RestoreAsync(place, At("copy"), s_clock, Stop)
        );
        Assert.Equal(TroubleKind.Damaged, wrong.Kind);
        Assert.Contains(told, wrong.Message, StringComparison.Ordinal);
        Assert.StartsWith("The backup: ", wrong.ForPage, StringComparison.Ordinal);
        Assert.DoesNotContain(_places.Folder, wrong.ForPage, StringComparison.Ordinal);
        Assert.False(File.Exists(place.Path));
    }

    [Theory]
    [InlineData("UPDATE revisions SET \"Note\" = 'as wished'")]
    [InlineData("UPDATE steps SET \"What\" = 'nothing'")]
    [InlineData("DELETE FROM revisions WHERE \"Number\" = 2")]
    [InlineData("UPDATE documents SET \"Name\" = 'Bunch' WHERE \"Name\" = 'Bench'")]
    [InlineData("UPDATE checksums SET \"Sha256\" = upper(\"Sha256\")")]
    [InlineData("DELETE FROM checksums")]
    public async Task A_backup_whose_content_is_not_what_its_checksum_says_is_refused(string sql)
    {
        await Backup(At("copy"));
        await Raw.Run(At("copy"), sql, Stop);
        var wrong = await Assert.ThrowsAsync<GardenException>(() =>
            Garden.RestoreAsync(GardenPlace.File(At("back")), At("copy"), s_clock, Stop)
        );
        Assert.Contains("checksum", wrong.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_garden_whose_versions_are_beyond_counting_is_mended_by_a_sound_backup()
    {
        await Backup(At("copy"));
        var place = GardenPlace.File(At("0.dripwright"));
        await Raw.Run(place.Path!, "UPDATE documents SET \"Version\" = 2147483647", Stop);
        await using var garden = await Garden.OpenAsync(place, s_clock, Stop);
        for (var n = 0; n < 2; n++)
        {
            await garden.RestoreAsync(At("copy"), Stop);
            var draft = (await garden.DraftAsync(3, Stop))!;
            Assert.InRange(draft.Version, 1, Limits.Number - 1);
            Assert.IsType<DraftOutcome.Kept>(await garden.KeepDraftAsync(3, "more", draft.Version, "", Stop));
        }
    }

    [Fact]
    public async Task A_draft_at_the_last_version_that_can_be_counted_is_still_kept()
    {
        await Backup(At("copy"));
        var place = GardenPlace.File(At("0.dripwright"));
        await Raw.Run(
            place.Path!,
            string.Create(CultureInfo.InvariantCulture, $"UPDATE documents SET \"Version\" = {Limits.Number}"),
            Stop
        );
        await using var garden = await Garden.OpenAsync(place, s_clock, Stop);
        var kept = await garden.KeepDraftAsync(3, "more", Limits.Number, "", Stop);
        Assert.Equal(1, Assert.IsType<DraftOutcome.Kept>(kept).Draft.Version);
        // And such a garden's backup is a good one.
        await garden.BackupAsync(At("second"), stop: Stop);
        await garden.RestoreAsync(At("second"), Stop);
        Assert.InRange((await garden.DraftAsync(3, Stop))!.Version, 1, Limits.Number);
    }

    // A garden with a tree of steps, revisions, a bin; its backup; and all that is in it as text.
    private async Task<string> Backup(string path)
    {
        await using var garden = await Garden.OpenAsync(_places.New(), s_clock, Stop);
        var bench = await garden.AddRigAsync("Bench", "{}", Stop);
        await garden.SaveRevisionAsync(bench.Id, 1, "Jo", "first", Stop);
        await garden.KeepDraftAsync(bench.Id, "{ }", 1, "a space", Stop);
        await garden.SaveRevisionAsync(bench.Id, 2, "Jo", "second ½ 🌱", Stop);
        await garden.UndoAsync(bench.Id, 2, Stop);
        await garden.AddRigAsync("Long", new string('ö', 40_000), Stop);
        var old = await garden.AddRigAsync("Old", "{ half", Stop);
        await garden.RemoveRigAsync(old.Id, Stop);
        await garden.BackupAsync(path, stop: Stop);
        return await Content(garden);
    }

    private static async Task<string> Content(Garden garden)
    {
        using var file = new MemoryStream();
        await garden.ExportAsync(file, Stop);
        var text = new StringBuilder(Encoding.UTF8.GetString(file.ToArray()));
        foreach (var entry in (await garden.DocumentsAsync(null, Stop)).Concat(await garden.BinAsync(Stop)))
        {
            text.Append(CultureInfo.InvariantCulture, $"\n{entry.Id} {entry.Version}");
            foreach (var step in await garden.StepsAsync(entry.Id, Stop))
            {
                text.Append('\n').Append(step);
            }
        }

        return text.ToString();
    }

    private static async Task<GardenFile> Read(byte[] bytes)
    {
        using var from = new MemoryStream(bytes);
        return await GardenFile.Read(from, "damaged", Limits.GardenFileBytes, Stop);
    }

    // What disks, sticks and broken transfers do: single bytes, runs, blocks in the wrong place, ends that are missing.
    private static (string What, byte[] Bytes) Damaged(byte[] good, Random random)
    {
        var bytes = good.ToArray();
        var at = random.Next(bytes.Length);
        var run = Math.Min(random.Next(1, 5000), bytes.Length - at);
        var kind = random.Next(6);
        switch (kind)
        {
            case 0:
                bytes[at] ^= (byte)(1 << random.Next(8));
                break;
            case 1:
                for (var n = random.Next(2, 9); n > 0; n--)
                {
                    bytes[random.Next(bytes.Length)] = (byte)random.Next(256);
                }

                break;
            case 2:
                bytes.AsSpan(at, run).Clear();
                break;
            case 3:
                random.NextBytes(bytes.AsSpan(at, run));
                break;
            case 4:
                bytes.AsSpan(random.Next(bytes.Length - run), run).CopyTo(bytes.AsSpan(at));
                break;
            default:
                bytes = bytes[..at];
                break;
        }

        return (string.Create(CultureInfo.InvariantCulture, $"damage {kind} at {at}, {run} bytes"), bytes);
    }

    private string At(string name) => Path.Combine(_places.Folder, name);
}
