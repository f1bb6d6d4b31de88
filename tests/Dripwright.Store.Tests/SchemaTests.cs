using Dripwright.Store.Ground;
using Dripwright.Store.Tables;
using Dripwright.Store.Tests.Places;
using Microsoft.EntityFrameworkCore;

namespace Dripwright.Store.Tests;

public sealed class SchemaInAFile() : SchemaTests(new SqlitePlaces());

public sealed class SchemaOnAServer() : SchemaTests(new PostgresPlaces());

/// <summary>The tables and the versions of them.</summary>
public abstract class SchemaTests(ITestPlaces places) : IAsyncDisposable
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask DisposeAsync()
    {
        await places.DisposeAsync();
        GC.SuppressFinalize(this);
    }

    [Fact]
    public async Task No_change_of_the_tables_lacks_its_migration()
    {
        await using var tables = new Connection(places.New()).Open();
        Assert.False(tables.Database.HasPendingModelChanges());
    }

    [Fact]
    public async Task A_garden_of_the_first_version_is_brought_up_to_date_with_all_that_is_in_it()
    {
        var place = places.New();
        await OldGarden.Make(place, Stop);
        await using var garden = await Garden.OpenAsync(place, stop: Stop);
        await OldGarden.IsThere(garden, Stop);
    }

    [Fact]
    public async Task A_garden_of_a_newer_program_is_left_alone()
    {
        var place = places.New();
        await (await Garden.OpenAsync(place, stop: Stop)).DisposeAsync();
        await OldGarden.Run(
            place,
            "INSERT INTO \"__EFMigrationsHistory\" VALUES ('29991231000000_Marvels', '99.0.0')",
            Stop
        );
        var wrong = await Assert.ThrowsAsync<GardenException>(() => Garden.OpenAsync(place, stop: Stop));
        Assert.Equal(TroubleKind.Newer, wrong.Kind);
        Assert.Contains("newer Dripwright", wrong.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Many_that_open_a_new_garden_at_once_open_the_same_one()
    {
        var place = places.New();
        var gardens = await Task.WhenAll(
            Enumerable.Range(0, 4).Select(_ => Task.Run(() => Garden.OpenAsync(place, stop: Stop), Stop))
        );
        var rig = await gardens[0].AddRigAsync("Bench", "{}", Stop);
        foreach (var garden in gardens)
        {
            Assert.Equal(rig, await garden.DraftAsync(rig.Id, Stop));
            Assert.Equal(3, (await garden.DocumentsAsync(null, Stop)).Count);
            await garden.DisposeAsync();
        }
    }

    [Fact]
    public async Task Tables_of_another_program_are_left_alone()
    {
        var place = places.New();
        if (place.Path is not null)
        {
            await OldGarden.Run(place, "CREATE TABLE documents (id INTEGER)", Stop);
        }
        else
        {
            await using var tables = new Connection(place).Open();
            var creator = (Microsoft.EntityFrameworkCore.Storage.IRelationalDatabaseCreator)
                Microsoft.EntityFrameworkCore.Infrastructure.AccessorExtensions.GetService<Microsoft.EntityFrameworkCore.Storage.IDatabaseCreator>(
                    tables.Database
                );
            await creator.CreateAsync(Stop);
            await OldGarden.Run(place, "CREATE TABLE documents (id INTEGER)", Stop);
        }

        var wrong = await Assert.ThrowsAsync<GardenException>(() => Garden.OpenAsync(place, stop: Stop));
        Assert.Equal(TroubleKind.NotAGarden, wrong.Kind);
    }
}
