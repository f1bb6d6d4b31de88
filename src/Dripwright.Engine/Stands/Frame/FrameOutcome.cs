using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Stands.Frame;

/// <summary>What came of solving a frame: a solution, or why there is none.</summary>
public abstract record FrameOutcome
{
    private protected FrameOutcome() { }
}

/// <summary>Why a frame has no solution.</summary>
public enum FrameFaultKind
{
    /// <summary>A part can move without any load: a mechanism, or a part that hangs on nothing.</summary>
    Loose,

    /// <summary>Feet have lifted off and what is left on the floor cannot hold it: it tips.</summary>
    Tips,

    /// <summary>The floor's friction is less than what pushes it: it slides off.</summary>
    Walks,

    /// <summary>Under these loads the frame has lost its sideways stiffness: it buckles.</summary>
    Buckles,
}

/// <summary>A frame that does not stand, with the motion that nothing resists.</summary>
/// <param name="Kind">Why.</param>
/// <param name="Node">The node that moves most.</param>
/// <param name="NodeName">Its name.</param>
/// <param name="Direction">[-] Unit vector along which it moves, or about which it turns.</param>
/// <param name="Turns">True where it turns on the spot.</param>
/// <param name="Motion">[-] The whole motion: shift and turn of every node, the largest 1.</param>
public sealed record FrameFault(
    FrameFaultKind Kind,
    int Node,
    string NodeName,
    Vector3 Direction,
    bool Turns,
    IReadOnlyList<(Vector3 Shift, Vector3 Turn)> Motion
) : FrameOutcome
{
    /// <summary>Feet that slide or lift with it.</summary>
    public IReadOnlyList<int> Feet { get; init; } = [];

    /// <summary>One sentence for a person.</summary>
    /// <param name="node">What to call the node that moves most.</param>
    public Phrase Sentence(Phrase node)
    {
        var motion = Turns ? Phrase.Of("frame.turns", node, Way) : Phrase.Of("frame.moves", node, Way);
        return Kind switch
        {
            FrameFaultKind.Loose => Phrase.Of("frame.loose", motion),
            FrameFaultKind.Tips => Phrase.Of("frame.tips", motion),
            FrameFaultKind.Walks => Phrase.Of("frame.walks", Way),
            _ => Phrase.Of("frame.buckles", motion),
        };
    }

    private Several Way
    {
        get
        {
            var (x, y, z) = (Math.Abs(Direction.X), Math.Abs(Direction.Y), Math.Abs(Direction.Z));
            var most = Math.Max(x, Math.Max(y, z));
            List<Phrase> ways = [];
            void Add(double size, string key)
            {
                if (size > 0.4 * most && size > 0)
                {
                    ways.Add(Phrase.Of(key));
                }
            }

            Add(x, Turns ? "frame.way.lengthwise" : "frame.way.along");
            Add(y, Turns ? "frame.way.crosswise" : "frame.way.across");
            Add(z, Turns ? "frame.way.upright" : "frame.way.up-and-down");
            return new Several(ways.Count > 0 ? ways : [Phrase.Of("frame.way.none")]);
        }
    }
}
