using Dripwright.Store.Tests.Places;

namespace Dripwright.Store.Tests;

public sealed class BinInAFile() : BinTests(new SqlitePlaces());

public sealed class BinOnAServer() : BinTests(new PostgresPlaces());

/// <summary>The bin, and how much of the disk a garden takes.</summary>
public abstract class BinTests(ITestPlaces places) : IAsyncDisposable
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask DisposeAsync()
    {
        await places.DisposeAsync();
        GC.SuppressFinalize(this);
    }

    [Fact]
    public async Task The_bin_is_emptied_for_good_and_nothing_else_goes()
    {
        await using var garden = await Garden.OpenAsync(places.New(), stop: Stop);
        var kept = await garden.AddRigAsync("Kept", "{}", Stop);
        var gone = await garden.AddRigAsync("Gone", "{}", Stop);
        var later = await garden.AddRigAsync("Later", "{}", Stop);
        await garden.SaveRevisionAsync(gone.Id, 1, "", "", Stop);
        await garden.SaveRevisionAsync(kept.Id, 1, "", "", Stop);
        await garden.RemoveRigAsync(gone.Id, Stop);
        var shown = (await garden.BinAsync(Stop)).Select(entry => entry.Id).ToList();
        await garden.RemoveRigAsync(later.Id, Stop);
        List<GardenChange> heard = [];
        using var watch = garden.Watch(heard.Add);

        Assert.Equal(1, await garden.EmptyBinAsync(shown, Stop));

        // What came into the bin after it was shown was not agreed to.
        Assert.Equal(later.Id, Assert.Single(await garden.BinAsync(Stop)).Id);
        Assert.Empty(await garden.RevisionsAsync(gone.Id, Stop));
        Assert.Empty(await garden.StepsAsync(gone.Id, Stop));
        Assert.False(await garden.RestoreRigAsync(gone.Id, Stop));
        Assert.Single(await garden.RevisionsAsync(kept.Id, Stop));
        Assert.Equal(GardenEvent.List, Assert.Single(heard).Event);
        Assert.Equal(1, await garden.EmptyBinAsync(stop: Stop));
        Assert.Equal(0, await garden.EmptyBinAsync(stop: Stop));
        // An address that was given away never leads to another rig.
        var newest = await garden.AddRigAsync("Newest", "{}", Stop);
        Assert.True(newest.Id > later.Id);
    }

    [Fact]
    public async Task What_is_deleted_takes_no_room_any_more()
    {
        await using var garden = await Garden.OpenAsync(places.New(), stop: Stop);
        var before = (await garden.DiskUseAsync(Stop)).Garden;
        Assert.True(before > 0);
        Assert.SkipWhen(garden.Place.Path is null, "A server gives room back in its own time.");
        var large = await garden.AddRigAsync("Large", new string('x', 1 << 20), Stop);
        Assert.True((await garden.DiskUseAsync(Stop)).Garden > before + (1 << 20));
        await garden.RemoveRigAsync(large.Id, Stop);
        await garden.EmptyBinAsync(stop: Stop);
        Assert.True(new FileInfo(garden.Place.Path!).Length < before + (1 << 18));
        var copy = garden.Place.Path + ".copy";
        await garden.BackupAsync(copy, stop: Stop);
        Assert.Equal(0, (await garden.DiskUseAsync(Stop)).Beside);
        await garden.RestoreAsync(copy, Stop);
        Assert.True((await garden.DiskUseAsync(Stop)).Beside > 0);
        Assert.NotNull((await garden.DiskUseAsync(Stop)).Free);
    }
}
