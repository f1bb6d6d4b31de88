using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Drawing;

/// <summary>A sheet that has no frame, title block and number yet.</summary>
/// <param name="Paper">Size.</param>
/// <param name="Title">What the sheet shows.</param>
/// <param name="Elements">What is drawn within <see cref="SheetSet.Room"/>.</param>
public sealed record SheetDraft(Paper Paper, string Title, IReadOnlyList<Element> Elements)
{
    /// <summary>Scale for the title block; null where nothing is to scale.</summary>
    public Scale? Scale { get; init; }

    /// <summary>How views are laid out; null where there is one view or none.</summary>
    public Projection? Projection { get; init; }

    /// <summary>What the sheet shows, for a reader who does not see it.</summary>
    public string? Description { get; init; }
}
