using System.Globalization;
using Dripwright.Store.Ground;
using Microsoft.Data.Sqlite;

namespace Dripwright.Store.Backups;

/// <summary>The number of the last edit, kept beside a garden's file: with it an older file put in its place is told.</summary>
/// <param name="Edit">Number of the edit.</param>
/// <param name="At">When it was noted, UTC.</param>
internal sealed record LastEdit(long Edit, DateTime At)
{
    /// <summary>Greatest number that is believed.</summary>
    public const long Most = 1L << 52;

    /// <summary>Name of the file beside a garden.</summary>
    public static string Beside(string path) => path + ".last-edit";

    /// <summary>The number that a garden's file has itself; 0 where its tables are too old to have one.</summary>
    public static long In(SqliteConnection file) =>
        RawTable.ColumnsOf(file, "gardens").Contains("Edits")
        && long.TryParse(
            SqliteLook.Column(file, "SELECT CAST(coalesce(max(\"Edits\"), 0) AS TEXT) FROM gardens")[0],
            NumberStyles.None,
            CultureInfo.InvariantCulture,
            out var edit
        )
            ? edit
            : 0;

    /// <summary>What is noted; null where nothing is, or nothing that can be read: it is a help and no part of the garden.</summary>
    public static LastEdit? Read(string path)
    {
        try
        {
            var file = new FileInfo(Beside(path));
            if (!file.Exists || file.Length > 200)
            {
                return null;
            }

            var words = File.ReadAllText(file.FullName).Split('\n')[0].Split(' ');
            return
                words is ["edit", var number, var time]
                && long.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var edit)
                && edit <= Most
                && DateTime.TryParse(
                    time,
                    CultureInfo.InvariantCulture,
                    DateTimeStyles.AdjustToUniversal | DateTimeStyles.AssumeUniversal,
                    out var at
                )
                ? new LastEdit(edit, at)
                : null;
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    /// <summary>Notes it beside a garden, whole or not at all.</summary>
    /// <exception cref="IOException">It cannot be written.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder may not be written.</exception>
    public void Write(string path)
    {
        using var passing = Passing.Beside(path);
        var draft = passing.At("last-edit");
        File.WriteAllText(
            draft,
            string.Create(CultureInfo.InvariantCulture, $"edit {Edit} {At:yyyy-MM-ddTHH:mm:ss}Z\n")
        );
        SqliteCopy.OnDisk(draft);
        File.Move(draft, Beside(path), overwrite: true);
    }
}
