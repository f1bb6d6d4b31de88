using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Findings;

/// <summary>Where a finding is: what to call it, and what a drawing needs to mark it.</summary>
/// <param name="Name">What to call the place: "row 2, pot 7", "drain of row 1".</param>
/// <param name="Row">Number of its row, from 1; 0 where it is in none.</param>
/// <param name="Pot">Number of its pot within the row, from 1; 0 where it is none.</param>
/// <param name="Run">Label of its run of pipe, such as "D1"; empty where it is on none.</param>
/// <param name="Hole">Number of the hole in that run, from 1; 0 where it is none.</param>
/// <param name="Part">Which part of the rig it is where row and run do not say it.</param>
public sealed record Place(
    Phrase Name,
    int Row = 0,
    int Pot = 0,
    string Run = "",
    int Hole = 0,
    PlacePart Part = PlacePart.None
)
{
    /// <summary>A place that has a name and nothing else.</summary>
    /// <param name="key">Key of its name, such as <c>place.drains</c>.</param>
    public static Place Of(string key) => new(Phrase.Of(key));

    /// <summary>The reservoir.</summary>
    public static Place Reservoir { get; } = new(Phrase.Of("place.reservoir"), Part: PlacePart.Reservoir);

    /// <summary>The pump.</summary>
    public static Place Pump { get; } = new(Phrase.Of("place.pump"), Part: PlacePart.Pump);

    /// <summary>The feed lines of all rows.</summary>
    public static Place FeedLines { get; } = Of("place.feed-lines");

    /// <summary>The drains of all rows.</summary>
    public static Place Drains { get; } = Of("place.drains");

    /// <summary>A row.</summary>
    /// <param name="row">[-] Its number, from 1.</param>
    public static Place OfRow(int row) => new(Phrase.Of("place.row", row), row);

    /// <summary>A pot.</summary>
    /// <param name="row">[-] Its row, from 1.</param>
    /// <param name="pot">[-] Its number within the row, from 1.</param>
    public static Place OfPot(int row, int pot) => new(Phrase.Of("place.pot", row, pot), row, pot);

    /// <summary>Several pots of a row; a single one is told and marked as itself.</summary>
    /// <param name="row">[-] Their row, from 1.</param>
    /// <param name="pots">[-] Their numbers within the row, from 1; at least one.</param>
    public static Place OfPots(int row, IReadOnlyList<int> pots)
    {
        ArgumentNullException.ThrowIfNull(pots);
        return pots.Count == 1 ? OfPot(row, pots[0]) : new(Phrase.Of("place.pots", row, new Numbers(pots)), row);
    }

    /// <summary>A run of pipe.</summary>
    /// <param name="run">Its label.</param>
    /// <param name="row">[-] Its row, from 1; 0 where it serves all.</param>
    public static Place OfRun(string run, int row) =>
        row > 0
            ? new(Phrase.Of("place.run-of-row", row, run), row, Run: run)
            : new(Phrase.Of("place.run", run), Run: run);

    /// <summary>A hole in a run of pipe.</summary>
    /// <param name="run">Label of the run.</param>
    /// <param name="hole">[-] Its number in that run, from 1.</param>
    /// <param name="row">[-] Its row, from 1; 0 where the run serves all.</param>
    /// <param name="pot">[-] The pot it serves, from 1; 0 where it serves none.</param>
    public static Place OfHole(string run, int hole, int row, int pot) =>
        pot > 0
            ? new(Phrase.Of("place.hole-at-pot", row, pot, hole, run), row, pot, run, hole)
            : new(Phrase.Of("place.hole", hole, run), row, Run: run, Hole: hole);
}

/// <summary>Parts of a rig that row and run do not tell apart.</summary>
public enum PlacePart
{
    /// <summary>None of these.</summary>
    None,

    /// <summary>The reservoir.</summary>
    Reservoir,

    /// <summary>The pump.</summary>
    Pump,

    /// <summary>The ends of crop wires, and what holds them; their inner supports are not meant.</summary>
    WireEnds,
}
