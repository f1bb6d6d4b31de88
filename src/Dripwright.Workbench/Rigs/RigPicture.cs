using Dripwright.Engine;
using Dripwright.Sheets.Screen;

namespace Dripwright.Workbench.Rigs;

/// <summary>What is to be drawn.</summary>
/// <param name="Plan">The plan.</param>
/// <param name="View">From where.</param>
/// <param name="Row">Row of the view from the front.</param>
/// <param name="Colour">What the colour of the pots says.</param>
/// <param name="IsNarrow">For a page as narrow as a hand.</param>
internal sealed record WantedPicture(Plan Plan, DrawnView View, int Row, ScreenColour Colour, bool IsNarrow);

/// <summary>The drawing of a rig on one page. One is drawn at a time; of those wanted meanwhile only the newest is drawn after it.</summary>
/// <remarks>All members are called from the page's own thread; the drawing goes on in the background and comes back to it.</remarks>
internal sealed class RigPicture
{
    private WantedPicture? _wanted;
    private bool _isDrawing;

    /// <summary>What is drawn; null before the first.</summary>
    public WantedPicture? Drawn { get; private set; }

    /// <summary>The drawing as SVG; null where there is nothing to draw.</summary>
    public string? Svg { get; private set; }

    /// <summary>Draws what is wanted now.</summary>
    /// <param name="wanted">What is wanted.</param>
    /// <param name="drawn">Told of each drawing; says whether another plan is drawn than before.</param>
    public async Task Draw(WantedPicture wanted, Action<bool> drawn)
    {
        if (wanted == (_wanted ?? Drawn))
        {
            return;
        }

        _wanted = wanted;
        if (_isDrawing)
        {
            return;
        }

        _isDrawing = true;
        try
        {
            while (_wanted is { } next)
            {
                var svg = await Task.Run(() => Of(next));
                var isEdit = Drawn is { } before && !ReferenceEquals(before.Plan, next.Plan);
                (Drawn, Svg) = (next, svg);
                if (ReferenceEquals(_wanted, next))
                {
                    _wanted = null;
                }

                drawn(isEdit);
            }
        }
        finally
        {
            _isDrawing = false;
        }
    }

    private static string? Of(WantedPicture wanted) =>
        wanted.View switch
        {
            DrawnView.Round => null,
            DrawnView.Wire => WireView.Of(wanted.Plan, wanted.IsNarrow ? 110 : 210),
            DrawnView.Front => Of(wanted, ScreenKind.Front),
            DrawnView.End => Of(wanted, ScreenKind.End),
            _ => Of(wanted, ScreenKind.Plan),
        };

    private static string Of(WantedPicture wanted, ScreenKind kind)
    {
        var size = wanted.IsNarrow
            ? ScreenOptions.Narrow with
            {
                Legend = wanted.Colour is not ScreenColour.None,
            }
            : new ScreenOptions { Width = 210, Height = 150 };
        return ScreenView.Of(wanted.Plan, kind, size with { Colour = wanted.Colour, Row = wanted.Row });
    }
}
