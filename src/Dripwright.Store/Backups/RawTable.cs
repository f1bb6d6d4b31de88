using Microsoft.Data.Sqlite;

namespace Dripwright.Store.Backups;

/// <summary>A cell as it lies in the file.</summary>
/// <param name="Kind">What SQLite calls its kind: null, integer, real, text, blob.</param>
/// <param name="Bytes">Its bytes: a damaged letter must not be read as a replacement for itself. A number's are its digits.</param>
internal readonly record struct RawCell(string Kind, byte[] Bytes);

/// <summary>A table of a garden's file, read without the tables' classes.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Key">The columns by which its rows are in order.</param>
internal sealed record RawTable(string Name, params string[] Key)
{
    /// <summary>The tables of a garden; each stands after those that it refers to.</summary>
    public static readonly IReadOnlyList<RawTable> All =
    [
        new("gardens", "Id"),
        new("documents", "Id"),
        new("steps", "DocumentId", "Number"),
        new("revisions", "DocumentId", "Number"),
    ];

    /// <summary>Its columns, in the order of their names; none where there is no such table.</summary>
    public IReadOnlyList<string> Columns(SqliteConnection connection) => ColumnsOf(connection, Name);

    /// <summary>Columns of a table, in the order of their names; none where there is no such table.</summary>
    public static IReadOnlyList<string> ColumnsOf(SqliteConnection connection, string table) =>
        SqliteLook.Column(connection, $"SELECT name FROM pragma_table_info('{table}') ORDER BY name");

    /// <summary>Its rows by their key, each with a cell for each of the columns.</summary>
    public IEnumerable<RawCell[]> Rows(SqliteConnection connection, IReadOnlyList<string> columns)
    {
        using var command = connection.CreateCommand();
        var asked = columns.Select(column => $"typeof(\"{column}\"), CAST(\"{column}\" AS BLOB)");
        var order = Key.Select(column => $"\"{column}\"");
#pragma warning disable CA2100 // The names are those of the tables.
        command.CommandText = $"SELECT {string.Join(", ", asked)} FROM \"{Name}\" ORDER BY {string.Join(", ", order)}";
#pragma warning restore CA2100
        using var rows = command.ExecuteReader();
        while (rows.Read())
        {
            var cells = new RawCell[columns.Count];
            for (var at = 0; at < cells.Length; at++)
            {
                cells[at] = new RawCell(
                    rows.GetString(2 * at),
                    rows.IsDBNull((2 * at) + 1) ? [] : rows.GetFieldValue<byte[]>((2 * at) + 1)
                );
            }

            yield return cells;
        }
    }
}
