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

    /// <summary>Feet have lifted off and what is left on the floor cannot hold it: it tips or slides away.</summary>
    Tips,

    /// <summary>Under these loads the frame has lost its sideways stiffness: it buckles.</summary>
    Buckles,

    /// <summary>Feet went on lifting and landing without end.</summary>
    NotSettled,
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
    /// <summary>One sentence for a person.</summary>
    public string Sentence
    {
        get
        {
            string where = Turns ? $"{NodeName} can turn about the {Way} axis" : $"{NodeName} can move {Way}";
            return Kind switch
            {
                FrameFaultKind.Loose => $"The frame is loose: {where} and nothing resists.",
                FrameFaultKind.Tips => $"The stand tips or slides: {where} once its feet have lifted.",
                FrameFaultKind.Buckles => $"The frame buckles under this load: {where}.",
                _ => $"The feet do not come to rest: {NodeName} goes on lifting and landing.",
            };
        }
    }

    private string Way
    {
        get
        {
            var (x, y, z) = (Math.Abs(Direction.X), Math.Abs(Direction.Y), Math.Abs(Direction.Z));
            double most = Math.Max(x, Math.Max(y, z));
            List<string> ways = [];
            void Add(double size, string word)
            {
                if (size > 0.4 * most && size > 0)
                {
                    ways.Add(word);
                }
            }

            Add(x, Turns ? "lengthwise" : "along the row");
            Add(y, Turns ? "crosswise" : "across the row");
            Add(z, Turns ? "upright" : "up and down");
            return ways.Count == 0 ? "in no direction" : string.Join(" and ", ways);
        }
    }
}
