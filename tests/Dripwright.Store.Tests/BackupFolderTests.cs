using Dripwright.Store.Ground;
using Dripwright.Store.Keeping;
using Dripwright.Store.Tests.Places;

namespace Dripwright.Store.Tests;

public sealed class DailyBackupsOfAFile() : BackupFolderTests(new SqlitePlaces());

public sealed class DailyBackupsOfAServer() : BackupFolderTests(new PostgresPlaces());

/// <summary>Backups by the calendar: made, tried, kept by the rule, told.</summary>
public abstract class BackupFolderTests(ITestPlaces places) : IAsyncDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("dripwright-backups-").FullName;
    private readonly SteppedClock _clock = new(new DateTime(2026, 4, 1, 3, 0, 0));

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private string First => Path.Combine(_folder, "first");

    private string Second => Path.Combine(_folder, "second");

    public async ValueTask DisposeAsync()
    {
        await places.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
        GC.SuppressFinalize(this);
    }

    [Fact]
    public async Task One_is_made_each_day_tried_and_told()
    {
        await using var garden = await Open();
        using var backups = new BackupFolder(garden, First, null, _clock);
        Assert.True(backups.Status() is { LastGood: null, IsOld: true, Fault: null });
        var made = (await backups.MakeIfDueAsync(Stop))!;
        Assert.True(made.IsGood, made.Fault);
        Assert.Null(await backups.MakeIfDueAsync(Stop));
        _clock.Step(TimeSpan.FromHours(23));
        Assert.Null(await backups.MakeIfDueAsync(Stop));
        Assert.Equal(TimeSpan.FromHours(23), backups.Status().Age);
        _clock.Step(TimeSpan.FromHours(1));
        Assert.NotNull(await backups.MakeIfDueAsync(Stop));
        Assert.False(backups.Status().IsOld);
        _clock.Step(TimeSpan.FromDays(3.1));
        Assert.True(backups.Status().IsOld);
        Assert.Equal(2, backups.Status().All.Count);
        Assert.Equal(backups.Bytes(), Directory.GetFiles(First).Sum(file => new FileInfo(file).Length));
    }

    [Fact]
    public async Task A_backup_of_the_list_brings_the_whole_garden_back()
    {
        await using var garden = await Open();
        using var backups = new BackupFolder(garden, First, null, _clock);
        var path = backups.PathOf((await backups.MakeAsync(Stop)).Name)!;
        var place = GardenPlace.File(Path.Combine(_folder, "back"));
        if (garden.Place.Path is null)
        {
            await using var empty = await Garden.OpenAsync(place, stop: Stop);
            await using var file = File.OpenRead(path);
            await empty.ImportAsync(file, "backup", Stop);
        }
        else
        {
            await Garden.RestoreAsync(place, path, stop: Stop);
        }

        await using var back = await Garden.OpenAsync(place, stop: Stop);
        Assert.Equal("Bench", Assert.Single(await back.RigsAsync(Stop)).Name);
        Assert.Null(backups.PathOf("../back"));
        Assert.Null(backups.PathOf("backups.json"));
    }

    [Fact]
    public async Task Old_ones_go_by_the_rule_in_both_places_and_no_other_file_ever_does()
    {
        await using var garden = await Open();
        Directory.CreateDirectory(First);
        Directory.CreateDirectory(Second);
        using var backups = new BackupFolder(garden, First, Second, _clock);
        var first = await backups.MakeAsync(Stop);
        var mine = first.Name.Replace("20260401", "20250401", StringComparison.Ordinal);
        File.Copy(Path.Combine(First, first.Name), Path.Combine(First, mine));
        File.Copy(Path.Combine(First, first.Name), Path.Combine(Second, mine));
        for (var hour = 0; hour < 5; hour++)
        {
            _clock.Step(TimeSpan.FromHours(1));
            await backups.MakeAsync(Stop);
        }

        var newest = Assert.Single(backups.Status().All).Name;
        Assert.Equal(Sorted([newest, mine, "backups.json"]), Names(First));
        Assert.Equal(Sorted([newest, mine]), Names(Second));
    }

    [Fact]
    public async Task A_second_place_that_is_not_there_is_told_and_never_made()
    {
        await using var garden = await Open();
        using var backups = new BackupFolder(garden, First, Second, _clock);
        var made = await backups.MakeAsync(Stop);
        Assert.True(made.IsGood);
        Assert.False(made.IsAtSecond);
        Assert.Contains("second place", backups.Status().SecondFault, StringComparison.Ordinal);
        Assert.DoesNotContain(_folder, backups.Status().SecondFault, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Second));

        Directory.CreateDirectory(Second);
        _clock.Step(TimeSpan.FromDays(1));
        Assert.True((await backups.MakeIfDueAsync(Stop))!.IsAtSecond);
        Assert.Null(backups.Status().SecondFault);
        // While the disk is away nothing on it is forgotten that is still to be deleted there.
        Directory.Move(Second, Second + "-away");
        _clock.Step(TimeSpan.FromHours(1));
        await backups.MakeAsync(Stop);
        Assert.Equal(2, backups.Status().All.Count(entry => entry.MadeAt.Day == 2));
    }

    [Fact]
    public async Task One_that_fails_is_told_and_tried_again_an_hour_later()
    {
        await using var garden = await Open();
        // A file where the folder should be.
        await File.WriteAllTextAsync(First, "in the way", Stop);
        using var backups = new BackupFolder(garden, First, null, _clock);
        await Assert.ThrowsAsync<GardenException>(() => backups.MakeAsync(Stop));
        File.Delete(First);
        Directory.CreateDirectory(First);
        File.WriteAllText(
            Path.Combine(First, "backups.json"),
            """[ { "name": "x", "madeAt": "2026-04-01T02:30:00Z", "bytes": 0, "fault": "full" } ]"""
        );
        Assert.Equal("full", backups.Status().Fault);
        Assert.Null(await backups.MakeIfDueAsync(Stop));
        _clock.Step(TimeSpan.FromMinutes(31));
        Assert.True((await backups.MakeIfDueAsync(Stop))!.IsGood);
        Assert.Null(backups.Status().Fault);
    }

    [Fact]
    public async Task A_backup_whose_file_is_gone_is_not_told_as_good()
    {
        await using var garden = await Open();
        using var backups = new BackupFolder(garden, First, null, _clock);
        var made = await backups.MakeAsync(Stop);
        File.Delete(Path.Combine(First, made.Name));
        Assert.True(backups.Status() is { LastGood: null, Fault: not null });
    }

    private async Task<Garden> Open()
    {
        var garden = await Garden.OpenAsync(places.New(), _clock, Stop);
        var rig = await garden.AddRigAsync("Bench", "{}", Stop);
        await garden.SaveRevisionAsync(rig.Id, 1, "Jo", "first", Stop);
        return garden;
    }

    private static IEnumerable<string> Names(string folder) =>
        Sorted(Directory.GetFileSystemEntries(folder).Select(path => Path.GetFileName(path)));

    private static IEnumerable<string> Sorted(IEnumerable<string> names) => names.Order(StringComparer.Ordinal);
}
