using System.Globalization;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Printed.Joints;

namespace Dripwright.Engine.Printed;

/// <summary>Joints of a stand that one printed part serves.</summary>
/// <param name="Number">Piece number, as it stands on the part.</param>
/// <param name="Kind">Kind of part.</param>
/// <param name="Directions">Directions in which the tubes leave the first of the joints; empty for clips and hangers.</param>
/// <param name="Joints">The joints.</param>
public sealed record PrintedJoint(
    string Number,
    PrintedKind Kind,
    IReadOnlyList<Vector3> Directions,
    IReadOnlyList<StandJoint> Joints
)
{
    /// <summary>For a drain hanger: the one of them that reaches farthest; null for anything else.</summary>
    public DrainHanger? Hanger { get; init; }
}

/// <summary>Which printed parts a stand's joints need.</summary>
public static class PrintedJoints
{
    /// <summary>[m] A tube's end belongs to a joint this near.</summary>
    private const double Near = 1e-6;

    /// <summary>Directions in which tubes leave a joint; those that only pass by are not counted.</summary>
    /// <param name="stand">The stand.</param>
    /// <param name="joint">One of its joints.</param>
    public static IReadOnlyList<Vector3> Directions(StandLayout stand, StandJoint joint)
    {
        ArgumentNullException.ThrowIfNull(stand);
        ArgumentNullException.ThrowIfNull(joint);
        return Directions(stand.Members, joint);
    }

    /// <summary>The printed parts of a stand, alike joints together, in the order in which they first come.</summary>
    /// <param name="stand">The stand.</param>
    /// <returns>Parts with their numbers; a tie that is clipped to a leg needs a <see cref="PrintedKind.TubeClip"/>.</returns>
    public static IReadOnlyList<PrintedJoint> Of(StandLayout stand)
    {
        ArgumentNullException.ThrowIfNull(stand);
        // Ends by row and place along it: a stand of many modules has thousands of tubes.
        ILookup<(int, long), StandMember> ends = stand
            .Members.SelectMany(tube => new[] { (tube, Cell(tube.From)), (tube, Cell(tube.To)) })
            .Distinct()
            .ToLookup(end => (end.tube.Row, end.Item2), end => end.tube);
        List<(PrintedJoint Part, List<StandJoint> Joints)> parts = [];
        Dictionary<string, int> known = new(StringComparer.Ordinal);
        foreach (var joint in stand.Joints)
        {
            if (joint.Part is StandLayout.Clamp or StandLayout.Hanger)
            {
                continue;
            }

            var clip = joint.Part == StandPlacement.Clip;
            var cell = Cell(joint.At);
            var ways = clip
                ? []
                : Directions(
                    ends[(joint.Row, cell - 1)].Concat(ends[(joint.Row, cell)]).Concat(ends[(joint.Row, cell + 1)]),
                    joint
                );
            if (!clip && ways.Count == 0)
            {
                continue;
            }

            var kind = clip ? PrintedKind.TubeClip : SocketPattern.KindOf(ways);
            var key = Key(kind, ways);
            if (known.TryGetValue(key, out var at))
            {
                parts[at].Joints.Add(joint);
                continue;
            }

            var letter = Letter(kind);
            var number = parts.Count(part => Letter(part.Part.Kind) == letter) + 1;
            var name = letter + number.ToString(CultureInfo.InvariantCulture);
            known.Add(key, parts.Count);
            parts.Add((new(name, kind, ways, []), [joint]));
        }

        return [.. parts.Select(part => part.Part with { Joints = part.Joints }), .. Hangers(stand.Hangers)];
    }

    /// <summary>Hangers alike to a millimetre share a part; those that reach too far to be printed are told together.</summary>
    private static IEnumerable<PrintedJoint> Hangers(IReadOnlyList<DrainHanger> hangers)
    {
        var number = 0;
        foreach (
            var alike in hangers
                .Where(h => h.Mount != HangerMount.Tie)
                .GroupBy(h =>
                    (
                        h.Mount,
                        Reach: h.Reach > PrintChecks.MostReach ? long.MaxValue : Millimetres(h.Reach),
                        Low: Millimetres(h.Low)
                    )
                )
        )
        {
            var farthest = alike.MaxBy(h => h.Reach)!;
            var reach = alike.Key.Reach == long.MaxValue ? farthest.Reach : alike.Key.Reach / 1000.0;
            yield return new(
                Letter(PrintedKind.DrainHanger) + (++number).ToString(CultureInfo.InvariantCulture),
                PrintedKind.DrainHanger,
                [],
                [.. alike.Select(h => new StandJoint(StandLayout.Hanger, h.Row, h.At))]
            )
            {
                Hanger = farthest with { Reach = reach },
            };
        }
    }

    private static long Millimetres(double metres) => (long)Math.Round(metres * 1000);

    /// <summary>Letter of the piece numbers of a kind; none that pipes, wires, tubes of the stand or clamps are numbered by.</summary>
    /// <param name="kind">The kind.</param>
    public static string Letter(PrintedKind kind) =>
        kind switch
        {
            PrintedKind.Foot => "U",
            PrintedKind.TubeClip => "T",
            PrintedKind.DrainHanger => "P",
            PrintedKind.Coupler => "Y",
            PrintedKind.LineRest => "A",
            PrintedKind.HoseClip or PrintedKind.ClampBlock => "M",
            PrintedKind.StakeHolder => "E",
            PrintedKind.DrillGuide => "Z",
            PrintedKind.Coupon => "X",
            _ => "J",
        };

    // A centimetre along the row; a tube's end and its joint lie in one cell or in neighbours.
    private static long Cell(Vector3 at) => (long)Math.Floor(at.X * 100);

    private static List<Vector3> Directions(IEnumerable<StandMember> tubes, StandJoint joint)
    {
        List<Vector3> ways = [];
        foreach (var tube in tubes.Distinct())
        {
            if (tube.From.DistanceTo(joint.At) < Near)
            {
                ways.Add(Way(tube.From, tube.To));
            }
            else if (tube.To.DistanceTo(joint.At) < Near)
            {
                ways.Add(Way(tube.To, tube.From));
            }
        }

        return ways;
    }

    /// <summary>
    /// The same for joints that one part serves: those of the square kinds are alike however they are turned about the
    /// vertical; others only when their tubes point the same ways. What points up counts, for it gets a drain hole.
    /// </summary>
    private static string Key(PrintedKind kind, IReadOnlyList<Vector3> ways)
    {
        var words = kind is PrintedKind.Joint or PrintedKind.Corner
            ? ways.Select(w => $"{Word(w.X)} {Word(w.Y)} {Word(w.Z)}")
            : ways.Select(w => Word(w.Z));
        return $"{kind} {string.Join(", ", words.Order(StringComparer.Ordinal))}";
    }

    private static string Word(double value) =>
        (Math.Round(value, 4) + 0.0).ToString("0.####", CultureInfo.InvariantCulture);

    private static Vector3 Way(Vector3 from, Vector3 to) =>
        new Vector3(to.X - from.X, to.Y - from.Y, to.Z - from.Z).Unit();
}
