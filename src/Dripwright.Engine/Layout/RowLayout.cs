using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Layout;

/// <summary>One pot in its place.</summary>
public sealed record PotPlace
{
    /// <summary>Number in its row, from 1 at the left end.</summary>
    public required int Number { get; init; }

    /// <summary>[m] Station of its centre.</summary>
    public required double Station { get; init; }

    /// <summary>Centre of its base.</summary>
    public required Vector3 Base { get; init; }

    /// <summary>True in the back line of a staggered row.</summary>
    public required bool BackLine { get; init; }

    /// <summary>Crop in the grower's word; empty where nothing is planted or the crop is not said.</summary>
    public required string Crop { get; init; }

    /// <summary>The catalogue's row of what grows in it; null where nothing does.</summary>
    public required CropType? CropType { get; init; }

    /// <summary>Plants in it; 0 where it stands empty.</summary>
    public required int Plants { get; init; }

    /// <summary>Emitters at it, open or shut.</summary>
    public required int Emitters { get; init; }

    /// <summary>[m] Length of the small tubes to its emitters; null where it is the feed's.</summary>
    public double? Tube { get; init; }

    /// <summary>[-] How far its inline valves are open; 0 at an empty pot, whose emitters are shut.</summary>
    public required double ValveOpen { get; init; }

    /// <summary>True where something grows.</summary>
    public bool Planted => Plants > 0;
}

/// <summary>One emitter in its place.</summary>
/// <param name="Pot">Pot of the row, from 1.</param>
/// <param name="Index">Emitter at this pot, from 1.</param>
/// <param name="Leg">Feed run of the row it hangs on: 0, or 1 for the second leg of a loop.</param>
/// <param name="Station">[m] Of its hole.</param>
/// <param name="Outlet">[m] Height of its outlet.</param>
/// <param name="Open">[-] How far its valve is open; 0 is shut.</param>
public sealed record EmitterPlace(int Pot, int Index, int Leg, double Station, double Outlet, double Open);

/// <summary>A hole that lies where a fitting, a module joint or another hole is, or off the pipe.</summary>
/// <param name="Run">Label of the run.</param>
/// <param name="Hole">The hole.</param>
/// <param name="With">What it lies on: "coupling D1-c1", "module joint 2".</param>
/// <param name="Shift">[m] The least shift that cures it while all else stays, to the right where positive; 0 where no
/// place on the run is free.</param>
public sealed record HoleConflict(string Run, Hole Hole, Phrase With, double Shift);

/// <summary>One row in its place.</summary>
public sealed record RowLayout
{
    /// <summary>Number, from 1 at the front.</summary>
    public required int Number { get; init; }

    /// <summary>Index in the rig file's list of rows, from 0.</summary>
    public required int SpecIndex { get; init; }

    /// <summary>What the rig says of it.</summary>
    public required Row Spec { get; init; }

    /// <summary>Its kind of pot.</summary>
    public required PotType Pot { get; init; }

    /// <summary>[m] Length of the stand.</summary>
    public required double Length { get; init; }

    /// <summary>Modules in it.</summary>
    public required int Modules { get; init; }

    /// <summary>[m] X of its left end.</summary>
    public required double OriginX { get; init; }

    /// <summary>[m] Y of its middle.</summary>
    public required double CentreY { get; init; }

    /// <summary>[m] From its frontmost to its hindmost pot edge.</summary>
    public required double Depth { get; init; }

    /// <summary>[m] Height of its floor.</summary>
    public required double Floor { get; init; }

    /// <summary>[m] Height of its pots' base.</summary>
    public required double Base { get; init; }

    /// <summary>Its pots, left to right.</summary>
    public required IReadOnlyList<PotPlace> Pots { get; init; }

    /// <summary>Its emitters, left to right.</summary>
    public required IReadOnlyList<EmitterPlace> Emitters { get; init; }

    /// <summary>Its feed run; for a closed loop the front leg, the back leg, and the near and far cross pieces.</summary>
    public required IReadOnlyList<PipeRun> Feed { get; init; }

    /// <summary>Its drain run.</summary>
    public required PipeRun Drain { get; init; }

    /// <summary>[m] Stations at which the feed line is entered from the header: one, or two when fed from both ends.</summary>
    public required IReadOnlyList<double> FeedEntries { get; init; }

    /// <summary>[m] Station at which the drain leaves the row.</summary>
    public required double DrainExit { get; init; }

    /// <summary>[m] Stations of the module joints, both ends included.</summary>
    public required IReadOnlyList<double> Joints { get; init; }

    /// <summary>[m] Stations of the stand's frames, both ends included; empty where the pots stand on the floor.</summary>
    public required IReadOnlyList<double> Frames { get; init; }

    /// <summary>Where the stand holds the drain, left to right; empty where the pots stand on the floor.</summary>
    public IReadOnlyList<DrainHanger> Hangers { get; init; } = [];

    /// <summary>[m] Stations at which the drain is held: by the stand's hangers, or at the module joints without a stand.</summary>
    public IReadOnlyList<double> HeldAt =>
        Frames.Count > 0
            ? [.. Hangers.Select(hanger => hanger.Station)]
            : [.. Joints.Where(station => station >= Drain.Start - 1e-9 && station <= Drain.End + 1e-9)];
}
