using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Layout;

/// <summary>The reservoir in its place.</summary>
/// <param name="Left">[m] X of its left side.</param>
/// <param name="Right">[m] X of its right side.</param>
/// <param name="Front">[m] Y of its front.</param>
/// <param name="Back">[m] Y of its back.</param>
/// <param name="Floor">[m] Height of its inside floor.</param>
/// <param name="Rim">[m] Height of its rim.</param>
/// <param name="Full">[m] Water surface with the pump off.</param>
/// <param name="Lowest">[m] Lowest water surface kept.</param>
/// <param name="PumpOutlet">Where the pump's outlet is.</param>
/// <param name="Mouth">Where the return drips into the reservoir: the centre of the last elbow.</param>
public sealed record TankPlace(
    double Left,
    double Right,
    double Front,
    double Back,
    double Floor,
    double Rim,
    double Full,
    double Lowest,
    Vector3 PumpOutlet,
    Vector3 Mouth
);

/// <summary>A link of the feed from one named point to the next, apart from the rows' own feed lines.</summary>
/// <remarks>
/// Points are named <c>pump</c>, <c>bypass</c>, <c>break</c> (the siphon-breaking hole), <c>split</c>, <c>near-k</c> and <c>far-k</c>: the entries of row k at its
/// near and far end. The single entry of a loop or a middle tee is <c>near-k</c>. Several links may share one run.
/// </remarks>
/// <param name="From">Upstream point.</param>
/// <param name="To">Downstream point.</param>
/// <param name="Run">The run they lie on.</param>
/// <param name="Length">[m] Length of pipe between the two points.</param>
/// <param name="Height">[m] Height of the downstream point.</param>
/// <param name="Loss">[-] Sum of the loss coefficients of its fittings, on its own velocity.</param>
public sealed record FeedLink(string From, string To, PipeRun Run, double Length, double Height, double Loss)
{
    /// <summary>Name of the point at the siphon-breaking hole.</summary>
    internal const string BreakHole = "break";
}

/// <summary>The hole that lets air into the header when the pump stops.</summary>
/// <param name="Station">[m] On the header, from the pump.</param>
/// <param name="Height">[m] Height of its centre.</param>
/// <param name="Diameter">[m] Its diameter.</param>
public sealed record BreakHole(double Station, double Height, double Diameter);

/// <summary>A rig placed in space: every pot, joint, pipe, fitting and hole.</summary>
/// <remarks>Method page: docs/methods/layout.md</remarks>
public sealed record RigLayout
{
    /// <summary>The rig that is placed.</summary>
    public required ResolvedRig Resolved { get; init; }

    /// <summary>Its parts.</summary>
    public RigParts Parts => Resolved.Parts;

    /// <summary>The rows, front to back.</summary>
    public required IReadOnlyList<RowLayout> Rows { get; init; }

    /// <summary>The stands.</summary>
    public required StandLayout Stand { get; init; }

    /// <summary>The crop wires; none where nothing hangs.</summary>
    public required IReadOnlyList<WirePlace> Wires { get; init; }

    /// <summary>The reservoir.</summary>
    public required TankPlace Tank { get; init; }

    /// <summary>The feed up to the rows, upstream first.</summary>
    public required IReadOnlyList<FeedLink> Supply { get; init; }

    /// <summary>What a row's pots are filled with.</summary>
    /// <param name="row">A row of this layout.</param>
    public Catalogue.MediumType MediumOf(RowLayout row)
    {
        ArgumentNullException.ThrowIfNull(row);
        return Resolved.Rows[row.SpecIndex].Medium;
    }

    /// <summary>The siphon-breaking hole; null where the rig has none, or none can be drilled.</summary>
    public BreakHole? BreakHole =>
        Supply.FirstOrDefault(l => l.To == FeedLink.BreakHole) is { } link
            ? link
                .Run.Holes.Where(h => h.Use == HoleUse.SiphonBreak)
                .Select(h => new BreakHole(h.Station, link.Height, h.Diameter))
                .FirstOrDefault()
            : null;

    /// <summary>Return runs from the rows' drains to the reservoir: under-row returns, drops, and the collector.</summary>
    public required IReadOnlyList<PipeRun> Returns { get; init; }

    /// <summary>Holes that lie where they must not.</summary>
    public required IReadOnlyList<HoleConflict> Conflicts { get; init; }

    /// <summary>[m] From the room's front to the back of whatever stands farthest: pots, drains or reservoir.</summary>
    public required double DepthUsed { get; init; }

    /// <summary>[m] From the leftmost to the rightmost of rows, drains and reservoir.</summary>
    public required double LengthUsed { get; init; }

    /// <summary>Every run: header, feed, drain, returns.</summary>
    public IEnumerable<PipeRun> Runs =>
        Supply
            .Select(l => l.Run)
            .Distinct()
            .Concat(Rows.SelectMany(r => r.Feed))
            .Concat(Rows.Select(r => r.Drain))
            .Concat(Returns);

    /// <summary>Places a rig.</summary>
    /// <param name="rig">The rig.</param>
    public static RigLayout Of(ResolvedRig rig)
    {
        ArgumentNullException.ThrowIfNull(rig);
        return new LayoutBuilder(rig).Build();
    }

    /// <summary>Places a rig that was changed; null where the catalogue lacks a part that it then needs.</summary>
    /// <param name="rig">The rig.</param>
    /// <param name="catalogue">The parts it can name.</param>
    public static RigLayout? TryOf(Rig rig, PartsCatalogue catalogue) =>
        ResolvedRig.TryOf(rig, catalogue) is { } resolved ? Of(resolved) : null;
}
