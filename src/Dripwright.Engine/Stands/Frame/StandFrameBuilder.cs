using System.Globalization;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Stands.Sections;

namespace Dripwright.Engine.Stands.Frame;

/// <summary>Puts a row's tubes together into nodes and elements.</summary>
internal sealed class StandFrameBuilder
{
    private const double Grain = 1e-6; // m; places nearer than this are one

    private readonly List<StandMember> _members;
    private readonly SectionProperties _section;
    private readonly Steel _steel;
    private readonly StandOptions _options;
    private readonly Dictionary<(long, long, long), int> _nodeAt;
    private readonly List<FrameNode> _nodes = [];
    private readonly List<Phrase> _places = [];
    private readonly List<FrameElement> _elements = [];
    private readonly Dictionary<(long, long), SortedSet<double>> _heightsAt = [];
    private readonly double _floor;
    private readonly double _top;
    private readonly double[] _sides;

    public StandFrameBuilder(
        List<StandMember> members,
        TubeSection tube,
        Steel steel,
        StandOptions options,
        Dictionary<(long, long, long), int> nodeAt
    )
    {
        (_members, _section, _steel, _options, _nodeAt) = (members, tube.Properties, steel, options, nodeAt);
        Frames = StandFrames.Of(members);
        var leg = members.First(m => m.Role == MemberRole.Leg);
        (_floor, _top) = (leg.From.Z, leg.To.Z);
        _sides =
        [
            .. members.Where(m => m.Role == MemberRole.Rail).Select(m => Math.Round(m.From.Y, 6)).Distinct().Order(),
        ];
        Tubes = [];
    }

    public double[] Frames { get; }

    public List<StandTube> Tubes { get; }

    /// <summary>What to call each node of the model.</summary>
    public IReadOnlyList<Phrase> Places => _places;

    public static (long, long, long) Key(Vector3 at) =>
        ((long)Math.Round(at.X / Grain), (long)Math.Round(at.Y / Grain), (long)Math.Round(at.Z / Grain));

    public FrameModel Model()
    {
        // Where a tie is clipped to a leg, the leg gets a node.
        foreach (var m in _members)
        {
            foreach (var end in (Vector3[])[m.From, m.To])
            {
                var (x, y, _) = Key(end);
                if (!_heightsAt.TryGetValue((x, y), out var heights))
                {
                    heights = _heightsAt[(x, y)] = [];
                }

                heights.Add(end.Z);
            }
        }

        foreach (var member in _members)
        {
            Add(member);
        }

        return new FrameModel(_nodes, _elements);
    }

    private void Add(StandMember member)
    {
        var clipped = member.Role is MemberRole.Tie or MemberRole.Brace;
        var socket = new EndStiffness(_options.Joint.Stiffness, _options.Joint.TwistStiffness);
        var socketAtStart = member.Role is MemberRole.Rail or MemberRole.Cross;
        var socketAtEnd = !clipped;
        // Where both ends let the tube spin, one of them is said to hold it: it passes no twist either way, and nodes
        // within the tube stay put.
        var hold = _options.Joint.TwistStiffness > 0 ? _options.Joint.TwistStiffness : double.PositiveInfinity;
        var start =
            clipped ? EndStiffness.Hinge
            : socketAtStart ? socket with { Twist = hold }
            : EndStiffness.Rigid;
        var end = clipped ? new EndStiffness(0, 0) : socket;
        var shares = Shares(member);
        var middle = Middle(member);
        var name = NameOf(member.Label, middle);
        List<int> elements = [];
        var from = Node(member.From, member, false);
        for (var i = 1; i < shares.Count; i++)
        {
            var at = Along(member, shares[i]);
            var within = i < shares.Count - 1 && !Clipped(member, at);
            var to = Node(at, member, within);
            elements.Add(_elements.Count);
            _elements.Add(
                new FrameElement(
                    name,
                    from,
                    to,
                    _section,
                    _steel,
                    i == 1 ? start : EndStiffness.Rigid,
                    i == shares.Count - 1 ? end : EndStiffness.Rigid
                )
            );
            from = to;
        }

        Tubes.Add(
            new StandTube(PlaceOf(Phrase.Plain(member.Label), middle), member, elements, socketAtStart, socketAtEnd)
        );
    }

    // Whether another tube is clipped to this leg here.
    private bool Clipped(StandMember member, Vector3 at)
    {
        if (member.Role != MemberRole.Leg)
        {
            return false;
        }

        var (x, y, _) = Key(at);
        return _heightsAt[(x, y)].Any(z => Math.Abs(z - at.Z) < Grain);
    }

    // Shares of the span at which the tube has nodes, ends included.
    private List<double> Shares(StandMember member)
    {
        List<double> cuts = [0, 1];
        if (member.Role == MemberRole.Leg)
        {
            var (x, y, _) = Key(member.From);
            var height = member.To.Z - member.From.Z;
            cuts =
            [
                .. _heightsAt[(x, y)]
                    .Where(z => z > member.From.Z - Grain && z < member.To.Z + Grain)
                    .Select(z => (z - member.From.Z) / height),
            ];
        }

        // Tubes that are pressed need a node between their ends, or their own buckling is overrated by a fifth.
        var parts = _options.Divisions;
        if (cuts.Count == 2 && member.Role is MemberRole.Leg or MemberRole.Brace)
        {
            parts *= 2;
        }

        List<double> all = [0];
        for (var i = 1; i < cuts.Count; i++)
        {
            if (cuts[i] - all[^1] > 1e-9)
            {
                var from = all[^1];
                for (var k = 1; k <= parts; k++)
                {
                    all.Add(from + ((cuts[i] - from) * k / parts));
                }
            }
        }

        return all;
    }

    private int Node(Vector3 at, StandMember member, bool within)
    {
        var key = Key(at);
        if (_nodeAt.TryGetValue(key, out var node))
        {
            return node;
        }

        var foot = Math.Abs(at.Z - _floor) < Grain && member.Role is MemberRole.Leg or MemberRole.Brace;
        var what =
            foot ? "foot"
            : within ? "within"
            : Math.Abs(at.Z - _top) < Grain ? "joint"
            : "clip";
        _nodes.Add(
            foot
                // A foot may rock; the floor keeps it from spinning.
                ? new FrameNode(NameOf(what, at), at, Held.Pin | Held.TurnZ, true)
                : new FrameNode(NameOf(what, at), at)
        );
        _places.Add(
            PlaceOf(
                within ? Phrase.Of("frame.within", StandTube.RoleOf(member.Role)) : Phrase.Of($"frame.node.{what}"),
                at
            )
        );
        return _nodeAt[key] = _nodes.Count - 1;
    }

    private static Vector3 Middle(StandMember member) =>
        new(Math.Min(member.From.X, member.To.X), (member.From.Y + member.To.Y) / 2, (member.From.Z + member.To.Z) / 2);

    // The model's own names are for whoever reads the model: they are told to nobody.
    private string NameOf(string what, Vector3 at)
    {
        var (frame, between, side) = Whereabouts(at);
        var number = frame.ToString(CultureInfo.InvariantCulture);
        return between ? $"{what} after frame {number}, {side}" : $"{what} at frame {number}, {side}";
    }

    private Phrase PlaceOf(Phrase what, Vector3 at)
    {
        var (frame, between, side) = Whereabouts(at);
        return Phrase.Of(
            between ? "frame.place.after" : "frame.place.at",
            what,
            frame,
            Phrase.Of($"frame.side.{side}")
        );
    }

    private (int Frame, bool Between, string Side) Whereabouts(Vector3 at)
    {
        var frame = Array.FindLastIndex(Frames, x => x <= at.X + Grain);
        var between = at.X - Frames[Math.Max(frame, 0)] > Grain;
        var side =
            at.Y <= _sides[0] + Grain ? "front"
            : at.Y >= _sides[^1] - Grain ? "back"
            : "middle";
        return (frame + 1, between, side);
    }

    private static Vector3 Along(StandMember m, double share) =>
        share >= 1
            ? m.To
            : new(
                m.From.X + (share * (m.To.X - m.From.X)),
                m.From.Y + (share * (m.To.Y - m.From.Y)),
                m.From.Z + (share * (m.To.Z - m.From.Z))
            );
}
