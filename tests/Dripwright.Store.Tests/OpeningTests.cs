using Dripwright.Store.Ground;
using Dripwright.Store.Tests.Places;
using Microsoft.Data.Sqlite;

namespace Dripwright.Store.Tests;

/// <summary>What stands at a garden's place before it is opened, and what killed programs left there.</summary>
public sealed class OpeningTests : IAsyncDisposable
{
    private readonly SqlitePlaces _places = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public ValueTask DisposeAsync() => _places.DisposeAsync();

    [Fact]
    public async Task A_main_file_without_its_journal_is_refused_and_never_opened_as_a_new_garden()
    {
        // All that was written lies in the journal, which did not come along.
        await using (var file = new SqliteConnection($"Data Source={At("0.dripwright")};Pooling=False"))
        {
            await file.OpenAsync(Stop);
            await using var command = file.CreateCommand();
            command.CommandText = "PRAGMA journal_mode = WAL; CREATE TABLE gardens (a); DROP TABLE gardens";
            await command.ExecuteNonQueryAsync(Stop);
        }

        var before = await File.ReadAllBytesAsync(At("0.dripwright"), Stop);
        Assert.NotEmpty(before);
        var wrong = await Assert.ThrowsAsync<GardenException>(() => Garden.OpenAsync(_places.New(), stop: Stop));
        Assert.Equal(TroubleKind.NotAGarden, wrong.Kind);
        Assert.Contains("-wal", wrong.Message, StringComparison.Ordinal);
        Assert.Contains("restore a backup", wrong.Message, StringComparison.Ordinal);
        Assert.Equal(before, await File.ReadAllBytesAsync(At("0.dripwright"), Stop));
    }

    [Fact]
    public async Task A_backup_can_be_restored_over_a_main_file_without_its_journal()
    {
        await A_main_file_without_its_journal_is_refused_and_never_opened_as_a_new_garden();
        await using (var other = await Garden.OpenAsync(GardenPlace.File(At("other")), stop: Stop))
        {
            await other.AddRigAsync("Bench", "{}", Stop);
            await other.BackupAsync(At("copy"), stop: Stop);
        }

        var place = GardenPlace.File(At("0.dripwright"));
        var aside = await Garden.RestoreAsync(place, At("copy"), stop: Stop);
        Assert.True(File.Exists(aside));
        await using var garden = await Garden.OpenAsync(place, stop: Stop);
        Assert.Single(await garden.RigsAsync(Stop));
    }

    [Fact]
    public async Task A_file_without_a_byte_is_a_new_garden_also_for_many_at_once()
    {
        var place = _places.New();
        await File.WriteAllBytesAsync(place.Path!, [], Stop);
        var gardens = await Task.WhenAll(
            Enumerable.Range(0, 3).Select(_ => Task.Run(() => Garden.OpenAsync(place, stop: Stop), Stop))
        );
        var rig = await gardens[0].AddRigAsync("Bench", "{}", Stop);
        foreach (var garden in gardens)
        {
            Assert.Equal(rig, await garden.DraftAsync(rig.Id, Stop));
            await garden.DisposeAsync();
        }
    }

    [Fact]
    public async Task A_change_of_tables_that_was_killed_mends_itself()
    {
        var place = _places.New();
        await OldGarden.Make(place, Stop);
        await OldGarden.Run(
            place,
            "INSERT INTO \"__EFMigrationsLock\" (\"Id\", \"Timestamp\") VALUES (1, '2026-01-02 03:04:05')",
            Stop
        );
        await using var garden = await Garden.OpenAsync(place, stop: Stop);
        await OldGarden.IsThere(garden, Stop);
    }

    [Fact]
    public async Task Tables_that_are_half_changed_are_told_with_the_way_out_and_the_older_garden_stays_beside()
    {
        var place = _places.New();
        await OldGarden.Make(place, Stop);
        await (await Garden.OpenAsync(place, stop: Stop)).DisposeAsync();
        var beside = Assert.Single(Directory.GetFiles(_places.Folder, "*_First"));
        var older = await File.ReadAllBytesAsync(beside, Stop);
        // As if the change had been made and its note in the history not.
        await Raw.Run(
            place.Path!,
            "DELETE FROM \"__EFMigrationsHistory\" WHERE \"MigrationId\" NOT LIKE '%_First'",
            Stop
        );
        for (var n = 0; n < 2; n++)
        {
            var wrong = await Assert.ThrowsAsync<GardenException>(() => Garden.OpenAsync(place, stop: Stop));
            Assert.Equal(TroubleKind.Damaged, wrong.Kind);
            Assert.Contains("restore a backup", wrong.Message, StringComparison.Ordinal);
        }

        Assert.Equal(older, await File.ReadAllBytesAsync(beside, Stop));
        await Garden.RestoreAsync(place, beside, stop: Stop);
        await using var garden = await Garden.OpenAsync(place, stop: Stop);
        await OldGarden.IsThere(garden, Stop);
    }

    [Fact]
    public async Task What_killed_programs_left_is_cleared_at_the_next_start_and_what_is_in_use_stays()
    {
        var place = _places.New();
        await File.WriteAllTextAsync(At("diary.txt"), "mine", Stop);
        var foreign = Directory.CreateDirectory(At(".0.dripwright.passing-by")).FullName;
        var left = Directory.CreateDirectory(At($".0.dripwright.passing-{Guid.NewGuid():N}")).FullName;
        await File.WriteAllTextAsync(Path.Combine(left, "lock"), "", Stop);
        await File.WriteAllTextAsync(Path.Combine(left, "upload"), "half of it", Stop);
        using var used = Passing.Beside(place.Path!);
        await File.WriteAllTextAsync(used.At("upload"), "coming", Stop);

        await (await Garden.OpenAsync(place, stop: Stop)).DisposeAsync();

        Assert.False(Directory.Exists(left));
        Assert.Equal("coming", await File.ReadAllTextAsync(used.At("upload"), Stop));
        Assert.True(Directory.Exists(foreign));
        Assert.Equal("mine", await File.ReadAllTextAsync(At("diary.txt"), Stop));
    }

    [Fact]
    public async Task Opening_writing_and_closing_leave_one_file_and_the_note_beside_it()
    {
        await using (var garden = await Garden.OpenAsync(_places.New(), stop: Stop))
        {
            await garden.AddRigAsync("Bench", "{}", Stop);
        }

        Assert.Equal(
            ["0.dripwright", "0.dripwright.last-edit"],
            Directory.GetFileSystemEntries(_places.Folder).Select(Path.GetFileName).Order(StringComparer.Ordinal)
        );
    }

    [Fact]
    public async Task Half_a_minute_after_a_change_the_file_alone_is_whole()
    {
        var clock = new SteppedClock(new DateTime(2026, 4, 1));
        var place = _places.New();
        await using var garden = await Garden.OpenAsync(place, clock, Stop);
        await garden.AddRigAsync("Bench", "{}", Stop);
        await Garden_alone(0);
        clock.Step(TimeSpan.FromSeconds(31));
        await Until(() => new FileInfo(place.Path + "-wal").Length == 0);
        await Garden_alone(1);

        async Task Garden_alone(int rigs)
        {
            File.Copy(place.Path!, At("alone"), overwrite: true);
            var count = await Raw.Number(At("alone"), "SELECT count(*) FROM documents WHERE \"Kind\" = 'rig'", Stop);
            Assert.Equal(rigs, count);
        }
    }

    [Fact]
    public async Task An_older_file_put_in_the_place_of_a_newer_one_is_told_and_still_opens()
    {
        var place = _places.New();
        await using (var garden = await Garden.OpenAsync(place, stop: Stop))
        {
            await garden.AddRigAsync("Bench", "{}", Stop);
        }

        File.Copy(place.Path!, At("older"));
        await using (var garden = await Garden.OpenAsync(place, stop: Stop))
        {
            Assert.Null(garden.Older);
            await garden.AddRigAsync("Newer", "{}", Stop);
        }

        SqliteConnection.ClearAllPools();
        File.Copy(At("older"), place.Path!, overwrite: true);
        await using (var garden = await Garden.OpenAsync(place, stop: Stop))
        {
            Assert.True(garden.Older!.Found < garden.Older.Known);
            Assert.Single(await garden.RigsAsync(Stop));
        }

        // It is told again until something is changed: then this is the garden.
        await using (var garden = await Garden.OpenAsync(place, stop: Stop))
        {
            Assert.NotNull(garden.Older);
            await garden.AddRigAsync("Here", "{}", Stop);
        }

        await using var after = await Garden.OpenAsync(place, stop: Stop);
        Assert.Null(after.Older);
    }

    [Fact]
    public async Task A_backup_restored_on_purpose_is_not_told_as_an_older_file()
    {
        var place = _places.New();
        await using (var garden = await Garden.OpenAsync(place, stop: Stop))
        {
            await garden.BackupAsync(At("copy"), stop: Stop);
            await garden.AddRigAsync("Bench", "{}", Stop);
        }

        await Garden.RestoreAsync(place, At("copy"), stop: Stop);
        await using (var garden = await Garden.OpenAsync(place, stop: Stop))
        {
            Assert.Null(garden.Older);
            Assert.Empty(await garden.RigsAsync(Stop));
        }

        SqliteConnection.ClearAllPools();
        File.Delete(place.Path!);
        await Garden.RestoreAsync(place, At("copy"), stop: Stop);
        await using var alone = await Garden.OpenAsync(place, stop: Stop);
        Assert.Null(alone.Older);
    }

    private static async Task Until(Func<bool> isSo)
    {
        for (var n = 0; n < 500 && !isSo(); n++)
        {
            await Task.Delay(20, Stop);
        }

        Assert.True(isSo());
    }

    private string At(string name) => Path.Combine(_places.Folder, name);
}
