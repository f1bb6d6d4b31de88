using Dripwright.Store.Ground;
using Npgsql;

namespace Dripwright.Store.Tests.Places;

/// <summary>Databases on a server that these tests start for themselves.</summary>
public sealed class PostgresPlaces : ITestPlaces
{
    private readonly List<string> _connections = [];

    public GardenPlace New()
    {
        var connection = PostgresServer.ConnectionTo($"garden_{Guid.NewGuid():N}");
        _connections.Add(connection);
        return GardenPlace.Server(connection);
    }

    public ValueTask DisposeAsync()
    {
        foreach (var connection in _connections)
        {
            using var any = new NpgsqlConnection(connection);
            NpgsqlConnection.ClearPool(any);
        }

        return ValueTask.CompletedTask;
    }
}
