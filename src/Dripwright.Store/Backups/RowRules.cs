using System.Globalization;
using System.Text;
using System.Text.Json;
using Dripwright.Store.Ground;
using Microsoft.Data.Sqlite;

namespace Dripwright.Store.Backups;

/// <summary>Holds every row of a garden's file to the rules that a live edit obeys, before any of it is taken over.</summary>
internal sealed class RowRules
{
    private static readonly UTF8Encoding s_strict = new(
        encoderShouldEmitUTF8Identifier: false,
        throwOnInvalidBytes: true
    );
    private static readonly string[] s_dates = ["yyyy-MM-dd HH:mm:ss", "yyyy-MM-dd HH:mm:ss.FFFFFFF"];

    private readonly Dictionary<long, Document> _documents = [];

    /// <summary>What is wrong with the first row that breaks a rule; null where all rows are good.</summary>
    public static string? Fault(SqliteConnection connection)
    {
        var rules = new RowRules();
        return Gardens(connection)
            ?? rules.DocumentRows(connection)
            ?? rules.Steps(connection)
            ?? rules.Revisions(connection)
            ?? rules.Singles();
    }

    private static string? Gardens(SqliteConnection connection)
    {
        var count = 0;
        foreach (var row in Rows(connection, "gardens"))
        {
            count++;
            var fault =
                row.Number("Id", 1, 1)
                ?? row.Number("Edits", 0, long.MaxValue / 2)
                ?? row.Date("MadeAt")
                ?? row.Text("Settings", Limits.TextFault)
                ?? SettingsFault(row.Word("Settings"));
            if (fault is not null)
            {
                return row.Told(fault);
            }
        }

        return count == 1 ? null : "gardens: expected one row";
    }

    private static string? SettingsFault(string text)
    {
        try
        {
            return SettingsText.Fault(SettingsText.Read(text));
        }
        catch (JsonException)
        {
            return "Settings: found no settings";
        }
    }

    private string? DocumentRows(SqliteConnection connection)
    {
        foreach (var row in Rows(connection, "documents"))
        {
            var fault =
                row.Number("Id", 1, Limits.Number)
                ?? row.Number("Version", 1, Limits.Number)
                ?? row.Number("Step", 1, Limits.Number)
                ?? row.Text("Kind", kind => DocumentKinds.IsKind(kind) ? null : "found no kind of document")
                ?? row.Text("Name", Limits.NameFault)
                ?? row.Text("Text", Limits.TextFault)
                ?? row.Text("ChangedBy", Limits.NoteFault)
                ?? row.Date("MadeAt")
                ?? row.Date("ChangedAt")
                ?? row.Date("RemovedAt", mayLack: true);
            if (fault is not null)
            {
                return row.Told(fault);
            }

            _documents[row.Value("Id")] = new Document(row.Word("Kind"), row.Value("Step"), row.Word("Text"));
        }

        return null;
    }

    // The draft stands at a step that has its text; undo leads back, redo forward to a step that leads back here.
    private string? Steps(SqliteConnection connection)
    {
        Dictionary<(long Document, long Number), (long Before, long After)> steps = [];
        foreach (var row in Rows(connection, "steps"))
        {
            var fault =
                row.Number("Number", 1, Limits.Number)
                ?? row.Number("Before", 0, row.Value("Number") - 1)
                ?? (row.Value("After") == 0 ? null : row.Number("After", row.Value("Number") + 1, Limits.Number))
                ?? row.Text("Text", Limits.TextFault)
                ?? row.Text("What", Limits.NoteFault)
                ?? row.Text("Who", Limits.NoteFault)
                ?? row.Date("At");
            if (fault is not null)
            {
                return row.Told(fault);
            }

            if (!_documents.TryGetValue(row.Value("DocumentId"), out var document))
            {
                return row.Told("DocumentId: there is no such document");
            }

            if (document.Step == row.Value("Number"))
            {
                if (document.Text != row.Word("Text"))
                {
                    return row.Told("Text: the draft that stands at this step says something else");
                }

                document.IsAtStep = true;
            }

            steps[(row.Value("DocumentId"), row.Value("Number"))] = (row.Value("Before"), row.Value("After"));
        }

        foreach (var ((document, number), (_, after)) in steps)
        {
            if (after != 0 && steps.TryGetValue((document, after), out var next) && next.Before != number)
            {
                return string.Create(
                    CultureInfo.InvariantCulture,
                    $"steps, document {document}, number {number}: redo leads to a step that does not lead back"
                );
            }
        }

        return _documents.FirstOrDefault(pair => !pair.Value.IsAtStep) is { Value: not null } lost
            ? string.Create(CultureInfo.InvariantCulture, $"documents, Id {lost.Key}: its step is missing")
            : null;
    }

    private string? Revisions(SqliteConnection connection)
    {
        var (document, number) = (0L, 0L);
        foreach (var row in Rows(connection, "revisions"))
        {
            number = row.Value("DocumentId") == document ? number + 1 : 1;
            document = row.Value("DocumentId");
            var fault =
                row.Number("Number", number, number)
                ?? row.Text("Who", Limits.NoteFault)
                ?? row.Text("Note", Limits.NoteFault)
                ?? row.Text("Text", Limits.TextFault)
                ?? row.Date("At")
                ?? (_documents.ContainsKey(document) ? null : "DocumentId: there is no such document");
            if (fault is not null)
            {
                return row.Told(fault);
            }
        }

        return null;
    }

    private string? Singles() =>
        new[] { DocumentKinds.Catalogue, DocumentKinds.OnHand }.FirstOrDefault(kind =>
            _documents.Values.Count(document => document.Kind == kind) != 1
        )
            is { } wrong
            ? $"documents: expected one of kind \"{wrong}\""
            : null;

    private static IEnumerable<Row> Rows(SqliteConnection connection, string name)
    {
        var table = RawTable.All.First(table => table.Name == name);
        var columns = table.Columns(connection);
        return table
            .Rows(connection, columns)
            .Select(cells => new Row(
                name,
                columns.Zip(cells).ToDictionary(pair => pair.First, pair => pair.Second, StringComparer.Ordinal)
            ));
    }

    private sealed class Document(string kind, long step, string text)
    {
        public string Kind => kind;

        public long Step => step;

        public string Text => text;

        public bool IsAtStep { get; set; }
    }

    /// <summary>One row as it lies in the file. A column that older tables lack is no fault.</summary>
    private sealed class Row(string table, Dictionary<string, RawCell> cells)
    {
        public string? Number(string column, long least, long most)
        {
            if (!cells.TryGetValue(column, out var cell))
            {
                return null;
            }

            var value = Value(column);
            return cell.Kind == "integer" && value >= least && value <= most
                ? null
                : string.Create(
                    CultureInfo.InvariantCulture,
                    $"{column}: found {Shown(cell)}; expected {least} to {most}"
                );
        }

        public string? Text(string column, Func<string, string?> rule)
        {
            if (!cells.TryGetValue(column, out var cell))
            {
                return null;
            }

            try
            {
                return cell.Kind != "text" ? $"{column}: found {cell.Kind}; expected text"
                    : rule(s_strict.GetString(cell.Bytes)) is { } fault ? $"{column}: {fault.TrimEnd('.')}"
                    : null;
            }
            catch (DecoderFallbackException)
            {
                return $"{column}: found what is no text in UTF-8";
            }
        }

        public string? Date(string column, bool mayLack = false)
        {
            if (!cells.TryGetValue(column, out var cell) || (mayLack && cell.Kind == "null"))
            {
                return null;
            }

            return
                cell.Kind == "text"
                && DateTime.TryParseExact(
                    Word(column),
                    s_dates,
                    CultureInfo.InvariantCulture,
                    DateTimeStyles.None,
                    out var at
                )
                && at.Year is >= 1900 and < 2200
                ? null
                : $"{column}: found {Shown(cell)}; expected a date in the years 1900 to 2200";
        }

        public long Value(string column) =>
            cells.TryGetValue(column, out var cell)
            && long.TryParse(cell.Bytes, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var value)
                ? value
                : 0;

        public string Word(string column) => Encoding.UTF8.GetString(cells[column].Bytes);

        public string Told(string fault)
        {
            var key = table switch
            {
                "steps" or "revisions" => string.Create(
                    CultureInfo.InvariantCulture,
                    $"document {Value("DocumentId")}, number {Value("Number")}"
                ),
                _ => string.Create(CultureInfo.InvariantCulture, $"Id {Value("Id")}"),
            };
            return $"{table}, {key}: {fault}";
        }

        private static string Shown(RawCell cell) =>
            cell.Kind == "null" ? "nothing"
            : cell.Kind is "integer" or "real" ? Encoding.UTF8.GetString(cell.Bytes)
            : $"a {cell.Kind} of {cell.Bytes.Length.ToString(CultureInfo.InvariantCulture)} bytes";
    }
}
