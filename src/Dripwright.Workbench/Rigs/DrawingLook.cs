using System.Globalization;
using Dripwright.Sheets.Screen;
using Dripwright.Workbench.Editing;

namespace Dripwright.Workbench.Rigs;

/// <summary>From where a drawing is seen.</summary>
public enum DrawnView
{
    /// <summary>In the round: turned by hand.</summary>
    Round,

    /// <summary>From above: every row, pot and pipe.</summary>
    Plan,

    /// <summary>One row from the front.</summary>
    Front,

    /// <summary>Across the rows, from the reservoir's end.</summary>
    End,

    /// <summary>The wire over the rows with its load, in the room of the wire alone.</summary>
    Wire,
}

/// <summary>What of the drawing is looked at. It stands in the page's address, so that reload, Back and a shared link show the same.</summary>
/// <param name="View">From where; null for what the room shows first.</param>
/// <param name="Row">Row of the view from the front, from 1.</param>
/// <param name="Colour">What the colour of the pots says.</param>
public sealed record DrawingLook(DrawnView? View = null, int Row = 1, ScreenColour Colour = ScreenColour.None)
{
    /// <summary>The look that an address asks for. A word that says nothing is passed over.</summary>
    /// <param name="view">Its <c>view</c>.</param>
    /// <param name="row">Its <c>row</c>.</param>
    /// <param name="colour">Its <c>colour</c>.</param>
    public static DrawingLook Of(string? view, string? row, string? colour) =>
        new(
            Named<DrawnView>(view),
            int.TryParse(row, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
                ? Math.Max(1, number)
                : 1,
            Named<ScreenColour>(colour) ?? ScreenColour.None
        );

    /// <summary>The end of an address with this look: empty, or beginning with a question mark.</summary>
    public string Query
    {
        get
        {
            List<string> said = [];
            if (View is { } view)
            {
                said.Add($"view={Word(view)}");
            }

            if (Row > 1)
            {
                said.Add(string.Create(CultureInfo.InvariantCulture, $"row={Row}"));
            }

            if (Colour is not ScreenColour.None)
            {
                said.Add($"colour={Word(Colour)}");
            }

            return said.Count == 0 ? "" : "?" + string.Join('&', said);
        }
    }

    /// <summary>The views of a room, the one that it shows first at the head.</summary>
    /// <param name="stage">The room.</param>
    public static IReadOnlyList<DrawnView> ViewsOf(Stage stage)
    {
        ArgumentNullException.ThrowIfNull(stage);
        DrawnView[] flat = [DrawnView.Plan, DrawnView.Front, DrawnView.End];
        return stage.Key is Stage.CropWire ? [DrawnView.Wire, .. flat, DrawnView.Round] : [.. flat, DrawnView.Round];
    }

    /// <summary>The view shown in a room.</summary>
    /// <param name="stage">The room.</param>
    public DrawnView In(Stage stage)
    {
        var views = ViewsOf(stage);
        return View is { } view && views.Contains(view) ? view : views[0];
    }

    /// <summary>What the colours say in a room: where nothing was chosen, the stand in the round shows what it bears.</summary>
    /// <param name="stage">The room.</param>
    public ScreenColour ColourIn(Stage stage)
    {
        ArgumentNullException.ThrowIfNull(stage);
        return Colour is ScreenColour.None && stage.Key is Stage.Stand && In(stage) is DrawnView.Round
            ? ScreenColour.Load
            : Colour;
    }

    /// <summary>The row shown of so many; the first where there is no such row.</summary>
    /// <param name="rows">How many there are.</param>
    public int RowOf(int rows) => Row <= rows ? Row : 1;

    private static string Word<T>(T value)
        where T : struct, Enum => value.ToString().ToLowerInvariant();

    // Only by their words: a number would name one as well.
    private static T? Named<T>(string? word)
        where T : struct, Enum
    {
        foreach (var value in Enum.GetValues<T>())
        {
            if (Word(value) == word)
            {
                return value;
            }
        }

        return null;
    }
}
