using Dripwright.Engine.Layout;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Stands.Sections;

namespace Dripwright.Engine.Stands.Frame;

/// <summary>The stand of one row as a frame.</summary>
/// <remarks>
/// Nodes at joint centres, at clips on the legs and at the feet; tubes run from centre to centre, which leaves out the stiff
/// core of a joint and is on the safe side. Tube ends in printed sockets turn against their node with the joint's
/// stiffness. Ties and braces are clipped on: hinges. Feet stand on the floor: held by friction while they press, free when
/// they lift.
/// Method page: docs/methods/stand-frame.md
/// </remarks>
public sealed record StandFrame
{
    private readonly Dictionary<(long, long, long), int> _nodeAt;

    private StandFrame(RowLayout row, List<StandMember> members, TubeSection tube, Steel steel, StandOptions options)
    {
        (Row, Tube, Steel, Options) = (row, tube, steel, options);
        _nodeAt = [];
        var builder = new StandFrameBuilder(members, tube, steel, options, _nodeAt);
        Model = builder.Model();
        Ties = options.Tied ? [.. TiedAt(row, members).Select(NodeAt)] : [];
        if (Ties.Count > 0)
        {
            Model = new FrameModel(
                [.. Model.Nodes.Select((n, i) => Ties.Contains(i) ? n with { Held = n.Held | Held.X | Held.Y } : n)],
                Model.Elements
            );
        }

        Tubes = builder.Tubes;
        Places = builder.Places;
        FrameStations = builder.Frames;
        Rails =
        [
            .. Tubes
                .Where(t => t.Member.Role == MemberRole.Rail)
                .GroupBy(t => Math.Round(t.Member.From.Y, 6))
                .OrderBy(g => g.Key)
                .Select(g => new RailLine(g.Key, [.. g.OrderBy(t => t.Member.From.X)])),
        ];
        Feet = [.. Enumerable.Range(0, Model.Nodes.Count).Where(n => Model.Nodes[n].Lifts)];
    }

    /// <summary>The row.</summary>
    public RowLayout Row { get; }

    /// <summary>Its tube, worn as the options say.</summary>
    public TubeSection Tube { get; }

    /// <summary>Its steel.</summary>
    public Steel Steel { get; }

    /// <summary>What it was built with.</summary>
    public StandOptions Options { get; }

    /// <summary>The frame.</summary>
    public FrameModel Model { get; }

    /// <summary>Its tubes.</summary>
    public IReadOnlyList<StandTube> Tubes { get; }

    /// <summary>What to call each node of the frame.</summary>
    public IReadOnlyList<Phrase> Places { get; }

    /// <summary>Its rails, front to back.</summary>
    public IReadOnlyList<RailLine> Rails { get; }

    /// <summary>[m] X of its frames, left to right.</summary>
    public IReadOnlyList<double> FrameStations { get; }

    /// <summary>Nodes that are feet.</summary>
    public IReadOnlyList<int> Feet { get; }

    /// <summary>Nodes that are tied to the back: held level, across the row and along it.</summary>
    public IReadOnlyList<int> Ties { get; }

    /// <summary>The node at a place, or -1.</summary>
    /// <param name="at">The place.</param>
    public int NodeAt(Vector3 at) => _nodeAt.GetValueOrDefault(StandFrameBuilder.Key(at), -1);

    /// <summary>The stands of a layout: one for each kind of row, since rows alike have stands alike.</summary>
    /// <param name="layout">The layout.</param>
    /// <param name="options">Options; the defaults where null.</param>
    /// <returns>No frame for rows whose pots stand on the floor.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An option lies outside its range.</exception>
    public static IReadOnlyList<StandFrame> Of(RigLayout layout, StandOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(layout);
        options ??= new StandOptions();
        var tube = (options.Tube ?? TubeSection.Of(layout.Stand.Tube)).Worn(options.WallLoss);
        var steel = options.Steel ?? Steels.For(layout.Stand.Tube);
        List<StandFrame> frames = [];
        HashSet<int> seen = [];
        foreach (var row in layout.Rows)
        {
            if (seen.Add(row.SpecIndex))
            {
                var members = StandGeometry.Members(layout.Stand, row, options);
                if (members.Count > 0)
                {
                    frames.Add(new StandFrame(CutOff(row, options.MostModules), members, tube, steel, options));
                }
            }
        }

        return frames;
    }

    // At the back of the frames at the module joints and the ends.
    private static Vector3[] TiedAt(RowLayout row, List<StandMember> members)
    {
        Vector3[] back = [.. members.Where(m => m.Role == MemberRole.Leg).Select(m => m.To).OrderBy(t => t.X)];
        var deepest = back.Max(t => t.Y);
        return
        [
            .. back.Where(t =>
            {
                var modules = (t.X - back[0].X) / row.Spec.ModuleLength;
                return deepest - t.Y < 1e-6
                    && (Math.Abs(modules - Math.Round(modules)) < 1e-3 || back[^1].X - t.X < 1e-6);
            }),
        ];
    }

    // A long row repeats itself: its first modules tell what any of them does.
    private static RowLayout CutOff(RowLayout row, int? most) =>
        most is { } modules && row.Modules > modules
            ? row with
            {
                Modules = modules,
                Length = modules * row.Spec.ModuleLength,
                Pots = [.. row.Pots.Where(p => p.Station < modules * row.Spec.ModuleLength)],
            }
            : row;
}

/// <summary>One line of rails from end to end.</summary>
/// <param name="Y">[m] Where it lies across the room.</param>
/// <param name="Tubes">Its tubes, left to right.</param>
public sealed record RailLine(double Y, IReadOnlyList<StandTube> Tubes)
{
    /// <summary>[m] X of its left end.</summary>
    public double Left => Tubes[0].Member.From.X;

    /// <summary>[m] X of its right end.</summary>
    public double Right => Tubes[^1].Member.To.X;

    /// <summary>The element at a place along the row and the distance from the element's start; at a joint that on its left.</summary>
    /// <param name="x">[m] Place; beyond the ends the nearest end counts.</param>
    /// <param name="model">The frame.</param>
    /// <returns>The element, and the distance from its start [m].</returns>
    public (int Element, double At) Place(double x, FrameModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        var low = 0;
        var high = Tubes.Count - 1;
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (x <= Tubes[middle].Member.To.X)
            {
                high = middle;
            }
            else
            {
                low = middle + 1;
            }
        }

        var tube = Tubes[low];
        var along = Math.Clamp(x - tube.Member.From.X, 0, tube.Span);
        foreach (var e in tube.Elements)
        {
            var length = model.LengthOf(e);
            if (along <= length + 1e-12 || e == tube.Elements[^1])
            {
                return (e, Math.Min(along, length));
            }

            along -= length;
        }

        return (tube.Elements[^1], 0);
    }
}
