using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Layout;

/// <summary>What a run of pipe is for.</summary>
public enum RunService
{
    /// <summary>From the pump to the rows.</summary>
    Header,

    /// <summary>Along a row, with the emitters' holes.</summary>
    Feed,

    /// <summary>Along a row, with the pots' drain holes.</summary>
    Drain,

    /// <summary>From the rows' drains to the reservoir.</summary>
    Return,

    /// <summary>From the header back into the reservoir.</summary>
    Bypass,
}

/// <summary>What a hole is for.</summary>
public enum HoleUse
{
    /// <summary>An emitter or the barb of its small tube.</summary>
    Emitter,

    /// <summary>A pot's drain elbow.</summary>
    PotOutlet,

    /// <summary>Lets air into the header above the water, so that nothing siphons when the pump stops.</summary>
    SiphonBreak,
}

/// <summary>One hole in a run.</summary>
/// <param name="Number">Counted from the run's left end, from 1.</param>
/// <param name="Station">[m] Along the row from its left end, level, to the hole's centre.</param>
/// <param name="Use">What it is for.</param>
/// <param name="Pot">Pot of the row it serves, from 1; 0 for a siphon break.</param>
/// <param name="Diameter">[m] Diameter to drill or punch.</param>
public sealed record Hole(int Number, double Station, HoleUse Use, int Pot, double Diameter);

/// <summary>A fitting on a run.</summary>
/// <param name="Label">As in the drawings, such as <c>D1-e2</c>.</param>
/// <param name="Type">The catalogue's fitting.</param>
/// <param name="Station">[m] Of its centre, measured like the holes'.</param>
/// <param name="Interrupts">True where the pipe is cut for it.</param>
public sealed record RunFitting(string Label, FittingType Type, double Station, bool Interrupts)
{
    /// <summary>[m] From its centre to the end of its socket: no hole may lie nearer than this and the hole's radius.</summary>
    public double Reach => Type.LayingLength + Type.SocketDepth;

    /// <summary>What to call it: "coupling D1-c1".</summary>
    public Phrase Name => Phrase.Of("fitting.name", Phrase.Of($"fitting.kind.{Type.Kind}"), Label);
}

/// <summary>One cut piece of a run.</summary>
/// <param name="Label">As in the drawings, such as <c>D1-A</c>.</param>
/// <param name="From">[m] Station of its left end.</param>
/// <param name="To">[m] Station of its right end.</param>
/// <param name="Length">[m] Cut length, along the pipe.</param>
public sealed record Piece(string Label, double From, double To, double Length);

/// <summary>A run of one size of pipe with everything on it, placed in the room.</summary>
/// <remarks>
/// A run along a row has its stations measured from the row's left end, whichever way the water flows. Any other run
/// has them measured from its own start along its path.
/// </remarks>
public sealed record PipeRun
{
    /// <summary>Label in drawings and lists.</summary>
    public required string Label { get; init; }

    /// <summary>What it is for.</summary>
    public required RunService Service { get; init; }

    /// <summary>Row it belongs to, from 1; 0 where it serves all.</summary>
    public required int Row { get; init; }

    /// <summary>Pipe or hose.</summary>
    public required PipeSize Pipe { get; init; }

    /// <summary>Corners of the centre line, in the order of the stations.</summary>
    public required IReadOnlyList<Vector3> Path { get; init; }

    /// <summary>[m] Station of the first corner.</summary>
    public required double Start { get; init; }

    /// <summary>[-] Length along the pipe per length of station: a little over 1 on a slope.</summary>
    public required double Stretch { get; init; }

    /// <summary>Fittings, by station.</summary>
    public required IReadOnlyList<RunFitting> Fittings { get; init; }

    /// <summary>Holes, by station.</summary>
    public required IReadOnlyList<Hole> Holes { get; init; }

    /// <summary>Pieces to cut, by station.</summary>
    public required IReadOnlyList<Piece> Pieces { get; init; }

    /// <summary>[m] Station of the last corner.</summary>
    public required double End { get; init; }

    /// <summary>[m] Length along the pipe from end to end, through the fittings.</summary>
    public double Length => (End - Start) * Stretch;

    /// <summary>The place at a station, on the centre line.</summary>
    /// <param name="station">[m] Between <see cref="Start"/> and <see cref="End"/>.</param>
    public Vector3 At(double station)
    {
        var left = AlongPath(station);
        for (var i = 1; i < Path.Count; i++)
        {
            var leg = Path[i - 1].DistanceTo(Path[i]);
            if (left <= leg || i == Path.Count - 1)
            {
                return Path[i - 1] + ((leg > 0 ? left / leg : 0) * (Path[i] - Path[i - 1]));
            }

            left -= leg;
        }

        return Path[0];
    }

    /// <summary>The straight legs of the centre line between two stations, corners included.</summary>
    /// <param name="from">[m] Between <see cref="Start"/> and <see cref="End"/>.</param>
    /// <param name="to">[m] Not under <paramref name="from"/>.</param>
    public IEnumerable<(Vector3 From, Vector3 To)> Legs(double from, double to)
    {
        var (low, high) = (AlongPath(from), AlongPath(to));
        var last = At(from);
        double corner = 0;
        for (var i = 1; i < Path.Count - 1; i++)
        {
            corner += Path[i - 1].DistanceTo(Path[i]);
            if (corner > low + 1e-9 && corner < high - 1e-9)
            {
                yield return (last, Path[i]);
                last = Path[i];
            }
        }

        yield return (last, At(to));
    }

    // [m] Stations of sloped row pipes count level distance; those of other runs count along the path, whose legs are
    // straight, so interpolating by each leg's share of the whole is right for both.
    private double AlongPath(double station)
    {
        double total = 0;
        for (var i = 1; i < Path.Count; i++)
        {
            total += Path[i - 1].DistanceTo(Path[i]);
        }

        return End > Start ? (station - Start) / (End - Start) * total : 0;
    }
}
