using System.Data.Common;
using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace Dripwright.Store.Tables;

/// <summary>Writes many rows of one table with one prepared statement, inside the transaction that is open.</summary>
/// <remarks>While tens of thousands of rows go in everybody waits; the tables' classes take several times as long.</remarks>
internal sealed class RowWriter : IAsyncDisposable
{
    private readonly DbCommand _command;

    public RowWriter(GardenTables tables, string table, bool givesId, params string[] columns)
    {
        _command = tables.Database.GetDbConnection().CreateCommand();
        _command.Transaction = tables.Database.CurrentTransaction!.GetDbTransaction();
        var names = string.Join(", ", columns.Select(column => $"\"{column}\""));
        var places = string.Join(", ", columns.Select(column => "@" + column));
#pragma warning disable CA2100 // The names are those of the tables.
        _command.CommandText =
            $"INSERT INTO {table} ({names}) VALUES ({places})" + (givesId ? " RETURNING \"Id\"" : "");
#pragma warning restore CA2100
        foreach (var column in columns)
        {
            var place = _command.CreateParameter();
            place.ParameterName = "@" + column;
            _command.Parameters.Add(place);
        }
    }

    /// <summary>Writes a row.</summary>
    /// <param name="values">Its values, in the order of the columns.</param>
    /// <param name="stop">Asks to stop.</param>
    /// <returns>Its number, where it gives one; 0 otherwise.</returns>
    public async Task<int> Write(IReadOnlyList<object?> values, CancellationToken stop)
    {
        for (var at = 0; at < values.Count; at++)
        {
            _command.Parameters[at].Value = values[at] ?? DBNull.Value;
        }

        return Convert.ToInt32(
            await _command.ExecuteScalarAsync(stop).ConfigureAwait(false),
            CultureInfo.InvariantCulture
        );
    }

    public ValueTask DisposeAsync() => _command.DisposeAsync();
}
