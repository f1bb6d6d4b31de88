namespace Dripwright.Engine.Wires;

/// <summary>The crop wire of one row: how it is held and what hangs on it.</summary>
public sealed record SpannedWire
{
    /// <summary>The wire.</summary>
    public required WireKind Kind { get; init; }

    /// <summary>[m] Stations of its supports along the row, left to right; at least two.</summary>
    public required IReadOnlyList<double> Supports { get; init; }

    /// <summary>[m] Height of the supports over the row's floor, over 0.</summary>
    public required double Height { get; init; }

    /// <summary>[N] Level pull with which each span was tightened when empty.</summary>
    public required double Tightened { get; init; }

    /// <summary>What hangs on it; stations along the row.</summary>
    public required IReadOnlyList<WireLoad> Loads { get; init; }

    /// <summary>[-] Part of the breaking force that the wire's fastening keeps, over 0, at most 1.</summary>
    /// <remarks>About 0.8 for clips and 0.5 for knots (from memory); manufacturers' instructions come first.</remarks>
    public double FasteningEfficiency { get; init; } = 0.8;

    /// <summary>[-] Breaking force over the pull that is allowed to hang for a season, at least 1.</summary>
    /// <remarks>4 to 5 on a load that hangs still: published advice of rope suppliers.</remarks>
    public double Safety { get; init; } = 5;
}

/// <summary>Pull on one support of a crop wire.</summary>
/// <param name="Station">[m] Along the row.</param>
/// <param name="Level">[N] Level pull along the row; of an inner support the greatest difference, one span loaded and its neighbour picked bare.</param>
/// <param name="Down">[N] Downward pull of both its spans.</param>
/// <param name="End">True at the wire's ends, where its whole pull is held.</param>
public sealed record WireSupport(double Station, double Level, double Down, bool End)
{
    /// <summary>[N] The whole pull.</summary>
    public double Total => double.Hypot(Level, Down);
}

/// <summary>What the loaded crop wire does.</summary>
/// <param name="Spans">Each span under its loads, left to right.</param>
/// <param name="Supports">Pull on each support.</param>
/// <param name="LowestHeight">[m] Lowest point of the loaded wire over the floor.</param>
/// <param name="GreatestTension">[N] Greatest pull in the wire.</param>
/// <param name="AllowedTension">[N] What its breaking force, fastening and safety allow.</param>
public sealed record SpannedWirePlan(
    IReadOnlyList<WireShape> Spans,
    IReadOnlyList<WireSupport> Supports,
    double LowestHeight,
    double GreatestTension,
    double AllowedTension
)
{
    /// <summary>[-] Pull over what is allowed; over 1 is too much.</summary>
    public double Utilisation => GreatestTension / AllowedTension;

    /// <summary>Computes sag, tension and support pulls.</summary>
    /// <remarks>
    /// The wire is taken as made fast at every support, so each span stands for itself. A wire that slides through its inner
    /// hooks evens out; being fast is the severer case for an inner hook. Method page: docs/methods/crop-wire.md
    /// </remarks>
    /// <param name="wire">The wire.</param>
    /// <returns>What it does.</returns>
    /// <exception cref="ArgumentException">There are fewer than two supports, or they are not in order, or a load hangs beside them.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static SpannedWirePlan Of(SpannedWire wire)
    {
        ArgumentNullException.ThrowIfNull(wire);
        Guard.Positive(wire.Height);
        Guard.Between(wire.FasteningEfficiency, 0.05, 1);
        Guard.Between(wire.Safety, 1, 100);
        var at = wire.Supports;
        if (at.Count < 2 || Enumerable.Range(1, at.Count - 1).Any(i => !(at[i] > at[i - 1])))
        {
            throw new ArgumentException("At least two supports are needed, from left to right.", nameof(wire));
        }

        if (wire.Loads.Any(l => l.Station < at[0] || l.Station > at[^1]))
        {
            throw new ArgumentException("A load hangs beside the wire.", nameof(wire));
        }

        List<WireShape> spans = [];
        List<WireShape> bare = [];
        WireSpan? before = null;
        for (var i = 1; i < at.Count; i++)
        {
            var span = new WireSpan
            {
                Kind = wire.Kind,
                Length = at[i] - at[i - 1],
                Tightened = wire.Tightened,
            };
            // Spans are mostly alike: an empty one is then known from its neighbour.
            var alike = before is { } known && Math.Abs(known.Length - span.Length) < 1e-12 * span.Length;
            var slack = alike ? bare[^1].SlackLength : ElasticCatenary.SlackLength(span);
            before = span;
            // A load just at an inner support hangs on the span to its right.
            var last = i == at.Count - 1;
            WireLoad[] loads =
            [
                .. wire
                    .Loads.Where(l => l.Station >= at[i - 1] && (l.Station < at[i] || (last && l.Station <= at[i])))
                    .Select(l => l with { Station = Math.Clamp(l.Station - at[i - 1], 0, span.Length) }),
            ];
            spans.Add(ElasticCatenary.Solve(span, slack, loads));
            bare.Add(alike ? bare[^1] : ElasticCatenary.Solve(span, slack, []));
        }

        var allowed = wire.Kind.BreakingForce * wire.FasteningEfficiency / wire.Safety;
        return new SpannedWirePlan(
            spans,
            [.. Enumerable.Range(0, at.Count).Select(i => SupportAt(i, at[i], spans, bare))],
            wire.Height - spans.Max(s => s.Sag),
            spans.Max(s => s.GreatestTension),
            allowed
        );
    }

    private static WireSupport SupportAt(int index, double station, List<WireShape> spans, List<WireShape> bare)
    {
        if (index == 0)
        {
            return new WireSupport(station, spans[0].Left.Level, spans[0].Left.Down, true);
        }

        var left = spans[index - 1];
        if (index == spans.Count)
        {
            return new WireSupport(station, left.Right.Level, left.Right.Down, true);
        }

        var right = spans[index];
        var uneven = Math.Max(
            Math.Abs(left.Right.Level - bare[index].Left.Level),
            Math.Abs(right.Left.Level - bare[index - 1].Right.Level)
        );
        return new WireSupport(station, uneven, left.Right.Down + right.Left.Down, false);
    }
}
