using Microsoft.Data.Sqlite;

namespace Dripwright.Store.Tests.Places;

/// <summary>A garden's file, changed past the store.</summary>
internal static class Raw
{
    public static async Task Run(string path, string sql, CancellationToken stop)
    {
        await using var file = new SqliteConnection($"Data Source={path};Pooling=False;Foreign Keys=False");
        await file.OpenAsync(stop);
        await using var command = file.CreateCommand();
#pragma warning disable CA2100 // The tests' own texts.
        command.CommandText = sql;
#pragma warning restore CA2100
        await command.ExecuteNonQueryAsync(stop);
    }

    public static async Task<long> Number(string path, string sql, CancellationToken stop)
    {
        await using var file = new SqliteConnection($"Data Source={path};Pooling=False;Mode=ReadOnly");
        await file.OpenAsync(stop);
        await using var command = file.CreateCommand();
#pragma warning disable CA2100 // The tests' own texts.
        command.CommandText = sql;
#pragma warning restore CA2100
        return Convert.ToInt64(
            await command.ExecuteScalarAsync(stop),
            System.Globalization.CultureInfo.InvariantCulture
        );
    }
}
