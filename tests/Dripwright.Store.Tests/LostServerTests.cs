using Dripwright.Store.Ground;
using Dripwright.Store.Tables;
using Dripwright.Store.Tests.Places;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace Dripwright.Store.Tests;

/// <summary>A database server that goes while it is in use, and comes back.</summary>
public sealed class LostServerTests : IAsyncDisposable
{
    private readonly PostgresPlaces _places = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public ValueTask DisposeAsync() => _places.DisposeAsync();

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_connection_lost_in_mid_transaction_is_told_as_such_and_keeps_nothing(bool isCut)
    {
        var direct = _places.New().Connection!;
        var port = new NpgsqlConnectionStringBuilder(direct).Port;
        await using var wire = new Wire(port);
        var place = GardenPlace.Server(
            new NpgsqlConnectionStringBuilder(direct) { Port = wire.Port, Timeout = 5 }.ToString()
        );
        await using var garden = await Garden.OpenAsync(place, stop: Stop);
        var rig = await garden.AddRigAsync("Bench", "{}", Stop);
        var at = new Connection(place);

        var wrong = await Assert.ThrowsAsync<GardenException>(() =>
            at.Change(
                async tables =>
                {
                    await tables.Documents.ExecuteUpdateAsync(set => set.SetProperty(row => row.Name, "half"), Stop);
                    if (isCut)
                    {
                        wire.Cut();
                    }
                    else
                    {
                        await End(direct);
                    }

                    return await tables.Documents.ExecuteUpdateAsync(
                        set => set.SetProperty(row => row.Text, "half"),
                        Stop
                    );
                },
                Stop
            )
        );

        Assert.Equal(TroubleKind.ConnectionLost, wrong.Kind);
        Assert.True(wrong.MayPass);
        Assert.Contains("try again", wrong.ForPage, StringComparison.Ordinal);
        Assert.DoesNotContain("127.0.0.1", wrong.ForPage, StringComparison.Ordinal);
        if (isCut)
        {
            var away = await Assert.ThrowsAsync<GardenException>(() => garden.RigsAsync(Stop));
            Assert.True(away.Kind is TroubleKind.NoServer or TroubleKind.ConnectionLost, away.Kind.ToString());
        }

        wire.Mend();
        Assert.Equal("Bench", (await Patiently(() => garden.DraftAsync(rig.Id, Stop)))!.Name);
        Assert.IsType<DraftOutcome.Kept>(
            await Patiently(() => garden.KeepDraftAsync(rig.Id, "{ }", rig.Version, "", Stop))
        );
    }

    [Fact]
    public async Task A_connection_lost_at_the_very_end_is_told_as_such()
    {
        var direct = _places.New().Connection!;
        await using var wire = new Wire(new NpgsqlConnectionStringBuilder(direct).Port);
        var place = GardenPlace.Server(
            new NpgsqlConnectionStringBuilder(direct) { Port = wire.Port, Timeout = 5 }.ToString()
        );
        await using var garden = await Garden.OpenAsync(place, stop: Stop);
        var wrong = await Assert.ThrowsAsync<GardenException>(() =>
            new Connection(place).Change(
                async tables =>
                {
                    var count = await tables.Documents.CountAsync(Stop);
                    wire.Cut();
                    return count;
                },
                Stop
            )
        );
        Assert.Equal(TroubleKind.ConnectionLost, wrong.Kind);
    }

    // Connections that the pool still holds may each have to find out that they are dead.
    private static async Task<T> Patiently<T>(Func<Task<T>> work)
    {
        for (var n = 0; ; n++)
        {
            try
            {
                return await work();
            }
            catch (GardenException wrong) when (wrong.MayPass && n < 5) { }
        }
    }

    // As when the server is stopped for a new version.
    private static async Task End(string direct)
    {
        var words = new NpgsqlConnectionStringBuilder(direct) { Pooling = false };
        await using var keeper = new NpgsqlConnection(words.ToString());
        await keeper.OpenAsync(Stop);
        await using var command = keeper.CreateCommand();
        command.CommandText =
            "SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE datname = current_database() AND pid <> pg_backend_pid()";
        await command.ExecuteNonQueryAsync(Stop);
    }
}
