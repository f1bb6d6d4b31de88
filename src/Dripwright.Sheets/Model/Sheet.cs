namespace Dripwright.Sheets.Model;

/// <summary>One sheet of paper and what is drawn on it.</summary>
/// <param name="Paper">Size.</param>
/// <param name="Title">What the sheet shows.</param>
/// <param name="Elements">What is drawn, lowest first.</param>
public sealed record Sheet(Paper Paper, string Title, IReadOnlyList<Element> Elements)
{
    /// <summary>What the drawing shows, for a reader who does not see it.</summary>
    public string? Description { get; init; }
}
