using System.Security.Cryptography;
using Dripwright.Store.Ground;
using Dripwright.Store.Tests.Places;
using Microsoft.Data.Sqlite;

namespace Dripwright.Store.Tests;

/// <summary>Backups of a garden's file, and restoring one; what can be wrong with a file.</summary>
public sealed class BackupTests : IAsyncDisposable
{
    private readonly SqlitePlaces _places = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public ValueTask DisposeAsync() => _places.DisposeAsync();

    [Fact]
    public async Task A_copy_of_a_garden_in_use_is_one_whole_file_and_brings_everything_back()
    {
        await using var garden = await Garden.OpenAsync(_places.New(), stop: Stop);
        var draft = await garden.AddRigAsync("Bench", "{}", Stop);
        await garden.SaveRevisionAsync(draft.Id, 1, "Jo", "first", Stop);
        draft = Kept(await garden.KeepDraftAsync(draft.Id, "{ half", 1, "", Stop));
        await garden.BackupAsync(At("copy"), stop: Stop);
        Assert.Equal(["copy"], Directory.GetFiles(_places.Folder, "*copy*").Select(Path.GetFileName));

        var later = Kept(await garden.KeepDraftAsync(draft.Id, "later", draft.Version, "", Stop));
        await garden.AddRigAsync("Later", "{}", Stop);
        List<GardenChange> heard = [];
        garden.Watch(heard.Add);
        var aside = await garden.RestoreAsync(At("copy"), Stop);

        var now = (await garden.DraftAsync(draft.Id, Stop))!;
        Assert.Equal("{ half", now.Text);
        Assert.True(now.CanUndo);
        Assert.Equal("first", (await garden.RevisionAsync(draft.Id, 1, Stop))!.Note);
        Assert.Single(await garden.RigsAsync(Stop));
        Assert.Equal(new GardenChange(GardenEvent.All, 0, 0), Assert.Single(heard));
        // A page that still shows what was replaced must not overwrite what came back.
        Assert.IsType<DraftOutcome.Overtaken>(
            await garden.KeepDraftAsync(draft.Id, "stale page", later.Version, "", Stop)
        );
        await using var replaced = await Garden.OpenAsync(GardenPlace.File(aside!), stop: Stop);
        Assert.Equal("later", (await replaced.DraftAsync(draft.Id, Stop))!.Text);
    }

    [Fact]
    public async Task Copies_taken_while_others_write_are_each_a_garden_at_one_moment()
    {
        await using var garden = await Garden.OpenAsync(_places.New(), stop: Stop);
        var draft = await garden.AddRigAsync("Bench", "0", Stop);
        using var enough = new CancellationTokenSource();
        var writing = Task.Run(
            async () =>
            {
                for (var n = 1; !enough.IsCancellationRequested; n++)
                {
                    var text = n.ToString(System.Globalization.CultureInfo.InvariantCulture);
                    draft = Kept(await garden.KeepDraftAsync(draft.Id, text, draft.Version, "", Stop));
                }
            },
            Stop
        );
        for (var n = 0; n < 5; n++)
        {
            await garden.BackupAsync(At("copy"), replace: true, Stop);
            var place = _places.New();
            await Garden.RestoreAsync(place, At("copy"), stop: Stop);
            await using var copy = await Garden.OpenAsync(place, stop: Stop);
            var steps = await copy.StepsAsync(draft.Id, Stop);
            Assert.Equal((await copy.DraftAsync(draft.Id, Stop))!.Text, steps[^1].Text);
        }

        await enough.CancelAsync();
        await writing;
    }

    [Fact]
    public async Task A_copy_brought_back_while_others_write_is_one_change_among_theirs()
    {
        var place = _places.New();
        await using var garden = await Garden.OpenAsync(place, stop: Stop);
        // A second object stands for a second process.
        await using var other = await Garden.OpenAsync(place, stop: Stop);
        var made = await garden.AddRigAsync("Bench", "start", Stop);
        await garden.BackupAsync(At("copy"), stop: Stop);
        using var enough = new CancellationTokenSource();
        var overtaken = 0;
        var writing = Task.Run(
            async () =>
            {
                var version = made.Version;
                for (var n = 1; !enough.IsCancellationRequested; n++)
                {
                    var text = n.ToString(System.Globalization.CultureInfo.InvariantCulture);
                    var outcome = await other.KeepDraftAsync(made.Id, text, version, "", Stop);
                    overtaken += outcome is DraftOutcome.Overtaken ? 1 : 0;
                    version = outcome is DraftOutcome.Overtaken late ? late.Current.Version : Kept(outcome).Version;
                }
            },
            Stop
        );
        for (var n = 0; n < 3; n++)
        {
            await Task.Delay(50, Stop);
            var aside = await garden.RestoreAsync(At("copy"), Stop);
            await using var replaced = await Garden.OpenAsync(GardenPlace.File(aside!), stop: Stop);
            var steps = await replaced.StepsAsync(made.Id, Stop);
            Assert.Equal((await replaced.DraftAsync(made.Id, Stop))!.Text, steps[^1].Text);
        }

        await enough.CancelAsync();
        await writing;
        Assert.InRange(overtaken, 1, 3);
        // Back to the text of the copy, and nothing of what was written before it came back.
        var draft = (await garden.DraftAsync(made.Id, Stop))!;
        while (draft.CanUndo)
        {
            draft = Kept(await garden.UndoAsync(made.Id, draft.Version, Stop));
        }

        Assert.Equal("start", draft.Text);
    }

    [Fact]
    public async Task A_copy_of_an_older_version_comes_back_up_to_date_and_itself_stays_as_it_was()
    {
        var old = _places.New();
        await OldGarden.Make(old, Stop);
        SqliteConnection.ClearAllPools();
        var before = SHA256.HashData(await File.ReadAllBytesAsync(old.Path!, Stop));
        var place = _places.New();
        Assert.Null(await Garden.RestoreAsync(place, old.Path!, stop: Stop));
        await using var garden = await Garden.OpenAsync(place, stop: Stop);
        await OldGarden.IsThere(garden, Stop);
        Assert.Equal(before, SHA256.HashData(await File.ReadAllBytesAsync(old.Path!, Stop)));
    }

    [Fact]
    public async Task Before_the_tables_change_the_old_garden_is_kept_beside()
    {
        var place = _places.New();
        await OldGarden.Make(place, Stop);
        await using var garden = await Garden.OpenAsync(place, stop: Stop);
        Assert.Single(Directory.GetFiles(_places.Folder, "*_First"));
    }

    [Fact]
    public async Task A_damaged_copy_replaces_nothing()
    {
        var place = await Good();
        await using (var garden = await Garden.OpenAsync(place, stop: Stop))
        {
            await garden.AddRigAsync("Big", new string('x', 200_000), Stop);
            await garden.BackupAsync(At("copy"), stop: Stop);
        }

        var bytes = await File.ReadAllBytesAsync(At("copy"), Stop);
        foreach (var (name, wreck) in Wrecks(bytes))
        {
            await File.WriteAllBytesAsync(At(name), wreck, Stop);
            var wrong = await Assert.ThrowsAsync<GardenException>(() =>
                Garden.RestoreAsync(place, At(name), stop: Stop)
            );
            Assert.True(
                wrong.Kind is TroubleKind.Damaged or TroubleKind.NotAGarden,
                $"{name}: {wrong.Kind} {wrong.Message}"
            );
        }

        Assert.Empty(Directory.GetFiles(_places.Folder, "*replaced*"));
        Assert.Empty(Directory.GetFiles(_places.Folder, "*.draft*"));
        await using var still = await Garden.OpenAsync(place, stop: Stop);
        Assert.Equal(2, (await still.RigsAsync(Stop)).Count);
    }

    [Theory]
    [InlineData("CREATE TRIGGER t AFTER INSERT ON steps BEGIN DELETE FROM revisions; END")]
    [InlineData("CREATE VIEW v AS SELECT 1")]
    [InlineData("CREATE TABLE stranger (a)")]
    [InlineData("DROP TABLE revisions")]
    [InlineData("DELETE FROM documents")]
    [InlineData("UPDATE gardens SET \"Settings\" = 'no settings'")]
    [InlineData("INSERT INTO \"__EFMigrationsHistory\" VALUES ('29991231000000_Marvels', '99.0.0')")]
    [InlineData("DELETE FROM steps")]
    public async Task A_copy_that_was_tampered_with_replaces_nothing(string sql)
    {
        var place = await Good();
        await using (var garden = await Garden.OpenAsync(place, stop: Stop))
        {
            await garden.BackupAsync(At("copy"), stop: Stop);
        }

        using (var copy = new SqliteConnection($"Data Source={At("copy")};Pooling=False;Foreign Keys=False"))
        {
            await copy.OpenAsync(Stop);
            using var command = copy.CreateCommand();
#pragma warning disable CA2100 // The test's own text.
            command.CommandText = sql;
#pragma warning restore CA2100
            await command.ExecuteNonQueryAsync(Stop);
        }

        await Assert.ThrowsAsync<GardenException>(() => Garden.RestoreAsync(place, At("copy"), stop: Stop));
        Assert.Empty(Directory.GetFiles(_places.Folder, "*replaced*"));
        Assert.Empty(Directory.GetFiles(_places.Folder, "*.draft*"));
    }

    [Fact]
    public async Task A_wrecked_garden_is_moved_aside_when_a_copy_comes_back()
    {
        var place = await Good();
        await using (var garden = await Garden.OpenAsync(place, stop: Stop))
        {
            await garden.BackupAsync(At("copy"), stop: Stop);
        }

        await File.WriteAllTextAsync(place.Path!, "the dog ate it", Stop);
        var wrong = await Assert.ThrowsAsync<GardenException>(() => Garden.OpenAsync(place, stop: Stop));
        Assert.Equal(TroubleKind.NotAGarden, wrong.Kind);
        var aside = await Garden.RestoreAsync(place, At("copy"), stop: Stop);
        Assert.Equal("the dog ate it", await File.ReadAllTextAsync(aside!, Stop));
        await using var back = await Garden.OpenAsync(place, stop: Stop);
        Assert.Single(await back.RigsAsync(Stop));
    }

    [Fact]
    public async Task A_database_of_another_program_is_never_replaced()
    {
        var place = await Good();
        await using (var garden = await Garden.OpenAsync(place, stop: Stop))
        {
            await garden.BackupAsync(At("copy"), stop: Stop);
        }

        var other = _places.New();
        await OldGarden.Run(other, "CREATE TABLE accounts (a)", Stop);
        var wrong = await Assert.ThrowsAsync<GardenException>(() => Garden.RestoreAsync(other, At("copy"), stop: Stop));
        Assert.Equal(TroubleKind.NotAGarden, wrong.Kind);
    }

    [Fact]
    public async Task A_place_that_is_no_file_of_ours_is_told_in_one_sentence()
    {
        await File.WriteAllTextAsync(At("letter.txt"), new string('a', 5000), Stop);
        foreach (
            var (path, kind) in new[]
            {
                (At("letter.txt"), TroubleKind.NotAGarden),
                (_places.Folder, TroubleKind.NotAGarden),
                (Path.Combine(At("letter.txt"), "garden"), TroubleKind.NotWritable),
                ("/proc/garden.dripwright", TroubleKind.NotWritable),
            }
        )
        {
            var wrong = await Assert.ThrowsAsync<GardenException>(() =>
                Garden.OpenAsync(GardenPlace.File(path), stop: Stop)
            );
            Assert.Equal(kind, wrong.Kind);
            Assert.StartsWith(path, wrong.Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_copy_never_replaces_a_file_unasked()
    {
        await using var garden = await Garden.OpenAsync(await Good(), stop: Stop);
        await File.WriteAllTextAsync(At("mine"), "mine", Stop);
        await Assert.ThrowsAsync<GardenException>(() => garden.BackupAsync(At("mine"), stop: Stop));
        await Assert.ThrowsAsync<GardenException>(() => garden.BackupAsync(garden.Place.Path!, replace: true, Stop));
        await Assert.ThrowsAsync<GardenException>(() => garden.BackupAsync(At("no/such/folder"), stop: Stop));
        Assert.Equal("mine", await File.ReadAllTextAsync(At("mine"), Stop));
        Assert.Single(await garden.RigsAsync(Stop));
    }

    private static IEnumerable<(string Name, byte[] Bytes)> Wrecks(byte[] good)
    {
        yield return ("empty", []);
        yield return ("short", good[..(good.Length / 2)]);
        yield return ("header", [.. Enumerable.Repeat((byte)7, 100), .. good[100..]]);
        var middle = good.ToArray();
        for (var at = 4096; at < middle.Length; at += 512)
        {
            middle[at] ^= 0x5A;
            middle[at + 1] ^= 0xFF;
        }

        yield return ("middle", middle);
    }

    private string At(string name) => Path.Combine(_places.Folder, name);

    private async Task<GardenPlace> Good()
    {
        var place = _places.New();
        await using var garden = await Garden.OpenAsync(place, stop: Stop);
        await garden.AddRigAsync("Bench", "{}", Stop);
        return place;
    }

    private static Draft Kept(DraftOutcome outcome) => Assert.IsType<DraftOutcome.Kept>(outcome).Draft;
}
