using Dripwright.Store.Ground;
using Microsoft.Data.Sqlite;

namespace Dripwright.Store.Tests.Places;

/// <summary>Files in a folder of their own.</summary>
public sealed class SqlitePlaces : ITestPlaces
{
    private readonly List<string> _files = [];

    public string Folder { get; } = Directory.CreateTempSubdirectory("dripwright-store-").FullName;

    public GardenPlace New()
    {
        var path = Path.Combine(Folder, $"{_files.Count}.dripwright");
        _files.Add(path);
        return GardenPlace.File(path);
    }

    public ValueTask DisposeAsync()
    {
        foreach (var path in _files)
        {
            using var any = new SqliteConnection(Tables.Connection.SqliteWords(path));
            SqliteConnection.ClearPool(any);
        }

        Directory.Delete(Folder, recursive: true);
        return ValueTask.CompletedTask;
    }
}
