namespace Dripwright.Engine.Wires;

/// <summary>What the strings of one vine carry.</summary>
/// <param name="EachString">[N] Pull in each string while all hold.</param>
/// <param name="OneLeft">[N] Pull in the last string when the others have slipped: what string, hook and knot must stand.</param>
/// <param name="EachClip">[N] What one clip carries of the hanging stem.</param>
/// <param name="Clips">Clips on the hanging stem.</param>
/// <param name="Length">[m] String to cut for each hook.</param>
public sealed record VineStrings(double EachString, double OneLeft, double EachClip, int Clips, double Length)
{
    /// <summary>[m] String beyond the wire's height that a long crop is lowered with. Source: growers' published advice, 5 to 6 m.</summary>
    public const double LongCrop = 6;

    /// <summary>Pulls and lengths for one vine.</summary>
    /// <remarks>
    /// The hanging weight is shared evenly by the strings, and by the clips on the hanging length. Jute stretches and breaks
    /// within weeks (reported by growers): nylon or polypropylene, new for each crop.
    /// </remarks>
    /// <param name="force">[N] The vine's whole pull, 0 or more.</param>
    /// <param name="strings">Strings for the vine, 1 to 4.</param>
    /// <param name="hanging">[m] From the wire down to where the stem leaves the string, over 0.</param>
    /// <param name="clipSpacing">[m] Between clips along the stem, over 0; 0.2 to 0.25 is common practice.</param>
    /// <param name="wireHeight">[m] Wire over the floor, over 0.</param>
    /// <param name="spare">[m] String kept on the hook for lowering, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static VineStrings Of(
        double force,
        int strings,
        double hanging,
        double clipSpacing,
        double wireHeight,
        double spare = LongCrop
    )
    {
        Guard.NotNegative(force);
        ArgumentOutOfRangeException.ThrowIfLessThan(strings, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(strings, 4);
        Guard.Positive(hanging);
        Guard.Positive(clipSpacing);
        var each = force / strings;
        var clips = Math.Max(1, (int)Math.Floor(hanging / clipSpacing));
        return new VineStrings(each, force, each / clips, clips, Guard.Positive(wireHeight) + Guard.NotNegative(spare));
    }
}
