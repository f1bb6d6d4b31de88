namespace Dripwright.Sheets.Model;

/// <summary>A text and the place it takes on the sheet.</summary>
/// <param name="Text">The text as drawn.</param>
/// <param name="Corners">Its four corners on the sheet.</param>
public sealed record SheetText(Text Text, IReadOnlyList<Point> Corners)
{
    /// <summary>The upright box around it.</summary>
    public Box Bounds => Box.Around(Corners);

    /// <summary>Every text of the sheet, in drawing order.</summary>
    public static IReadOnlyList<SheetText> Of(Sheet sheet) => Of(sheet.Elements);

    /// <summary>Every text among the elements, in drawing order.</summary>
    public static IReadOnlyList<SheetText> Of(IEnumerable<Element> elements) =>
        [
            .. elements.SelectMany<Element, SheetText>(element =>
                element switch
                {
                    Text { Content.Length: > 0 } text => [new(text, TextMeasure.Corners(text))],
                    Group group => Of(group.Children)
                        .Select(inner =>
                            inner with
                            {
                                Corners = [.. inner.Corners.Select(c => group.Offset + c.Turn(group.Rotation))],
                            }
                        ),
                    _ => [],
                }
            ),
        ];
}
