using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Drawing;

/// <summary>Sheets that hold one table.</summary>
public static class TableSheet
{
    /// <summary>As many sheets as the table takes.</summary>
    /// <param name="paper">Size of the sheets.</param>
    /// <param name="title">Title of the sheets, also above the table.</param>
    /// <param name="table">The table.</param>
    /// <param name="note">A paragraph above it; null for none.</param>
    public static IReadOnlyList<SheetDraft> Build(Paper paper, string title, Table table, string? note = null)
    {
        var flow = new Flow(paper, title).Heading(title);
        if (note is not null)
        {
            flow.Paragraph(note);
        }

        return flow.Table(table).Build();
    }
}
