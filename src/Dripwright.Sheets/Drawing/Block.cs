using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Drawing;

/// <summary>A piece of a flow that is never torn between sheets.</summary>
/// <param name="Height">[mm] Height with the space below it.</param>
/// <param name="Draw">Draws it with its top left corner at the point.</param>
public sealed record Block(double Height, Func<Point, IEnumerable<Element>> Draw)
{
    /// <summary>Whether the next piece must stand on the same sheet.</summary>
    public bool KeepWithNext { get; init; }

    /// <summary>Whether a new sheet starts here.</summary>
    public bool StartsSheet { get; init; }

    /// <summary>Repeated above this piece when it starts a sheet in the middle of a table.</summary>
    public Block? Header { get; init; }
}
