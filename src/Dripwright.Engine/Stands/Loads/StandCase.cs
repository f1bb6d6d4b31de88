using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Stands.Loads;

/// <summary>Which pots stand full on the stand; the others are off it.</summary>
public enum PotsFull
{
    /// <summary>All.</summary>
    All,

    /// <summary>Those of the left half.</summary>
    Left,

    /// <summary>Those of the right half.</summary>
    Right,

    /// <summary>Every second module's.</summary>
    EverySecondModule,

    /// <summary>The front line of a staggered row.</summary>
    FrontLine,

    /// <summary>The back line of a staggered row.</summary>
    BackLine,

    /// <summary>All, half dried out and without plants' weight.</summary>
    Light,

    /// <summary>None: the bare stand.</summary>
    None,
}

/// <summary>Where a person leans.</summary>
public enum LeanPlace
{
    /// <summary>Nowhere.</summary>
    None,

    /// <summary>On the front rail, in the middle of the first module, pushing to the back.</summary>
    FrontRail,

    /// <summary>On the front of the left end frame, pushing along the row.</summary>
    End,
}

/// <summary>One combination of loads that the stand must bear.</summary>
/// <param name="Key">Its name, lower case with dashes.</param>
/// <param name="Pots">Which pots are full.</param>
/// <param name="Plumb">[-] Direction in which the stand is out of plumb, a level unit vector or nothing.</param>
/// <param name="Lean">Where a person leans.</param>
/// <param name="Pull">[-] Direction in which the strings slant, a level unit vector or nothing.</param>
public sealed record StandCase(
    string Key,
    PotsFull Pots,
    Vector3 Plumb = default,
    LeanPlace Lean = LeanPlace.None,
    Vector3 Pull = default
)
{
    private static readonly Vector3 s_along = new(1, 0, 0);
    private static readonly Vector3 s_back = new(0, 1, 0);

    /// <summary>
    /// A person on dried-out pots: judged for tipping alone, since a foot that lifts for a moment is no fall and half as much
    /// again as tips it is wanted anyway.
    /// </summary>
    public static StandCase DryLean { get; } = new("light-lean", PotsFull.Light, s_back, LeanPlace.FrontRail);

    /// <summary>A person who leans on the bare frame while it is built: it must not go over, and its ties must hold it.</summary>
    public static StandCase BareLean { get; } = new("bare-lean", PotsFull.None, s_back, LeanPlace.FrontRail);

    /// <summary>Its name for a person, as a sentence without its full stop.</summary>
    public Phrase Name => Phrase.Of($"stand.case.{Key}");

    /// <summary>The combinations of a row.</summary>
    /// <remarks>
    /// Which of them a stand must bear is common practice among designers of shelving: full, half full in every uneven way,
    /// a person, strings to either side, and the light state in which it tips most easily.
    /// </remarks>
    /// <param name="staggered">True for two lines of pots.</param>
    /// <param name="modules">Modules in the row.</param>
    public static IReadOnlyList<StandCase> Of(bool staggered, int modules)
    {
        List<StandCase> cases =
        [
            new("full-along", PotsFull.All, s_along),
            new("full-across", PotsFull.All, s_back),
            new("left-half", PotsFull.Left, -s_along),
            new("right-half", PotsFull.Right, s_along),
        ];
        if (modules > 2)
        {
            cases.Add(new("alternate", PotsFull.EverySecondModule, s_along));
        }

        if (staggered)
        {
            cases.Add(new("front-line", PotsFull.FrontLine, -s_back));
            cases.Add(new("back-line", PotsFull.BackLine, s_back));
        }

        cases.AddRange([
            new("lean-rail", PotsFull.All, s_back, LeanPlace.FrontRail),
            new("lean-end", PotsFull.All, s_along, LeanPlace.End),
            new("pull-front", PotsFull.All, -s_back, Pull: -s_back),
            new("pull-back", PotsFull.All, s_back, Pull: s_back),
            new("light-front", PotsFull.Light, -s_back, Pull: -s_back),
            new("light-back", PotsFull.Light, s_back, Pull: s_back),
        ]);
        return cases;
    }
}
