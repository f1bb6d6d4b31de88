using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Water;

/// <summary>What one emitter gives.</summary>
/// <param name="Row">Row, from 1.</param>
/// <param name="Pot">Pot of the row, from 1.</param>
/// <param name="Index">Emitter at the pot, from 1.</param>
/// <param name="Open">[-] How far it is open; 0 is shut.</param>
/// <param name="Flow">[m³/s] What it gives.</param>
/// <param name="Pressure">[Pa] Gauge pressure at its inlet, after microtube and valve, at the outlet's height.</param>
public sealed record EmitterFlow(int Row, int Pot, int Index, double Open, double Flow, double Pressure);

/// <summary>What one pot gets.</summary>
/// <param name="Row">Row, from 1.</param>
/// <param name="Pot">Pot of the row, from 1.</param>
/// <param name="Planted">True where something grows.</param>
/// <param name="Flow">[m³/s] From all its emitters.</param>
/// <param name="Pressure">[Pa] Mean gauge pressure at its emitters.</param>
public sealed record PotFlow(int Row, int Pot, bool Planted, double Flow, double Pressure);

/// <summary>Flow in one stretch of pipe before the rows, or the fastest in a row's line.</summary>
/// <param name="Run">Label of the run.</param>
/// <param name="From">Upstream point.</param>
/// <param name="To">Downstream point.</param>
/// <param name="Flow">[m³/s] Flow.</param>
/// <param name="Velocity">[m/s] Mean velocity.</param>
/// <param name="HeadLoss">[m] Friction and fittings.</param>
public sealed record RunFlow(string Run, string From, string To, double Flow, double Velocity, double HeadLoss);

/// <summary>State of a row's line at one station.</summary>
/// <param name="Station">[m] Station.</param>
/// <param name="Pressure">[Pa] Gauge pressure in the line.</param>
/// <param name="Flow">[m³/s] Flow to the right of it, positive to the right.</param>
public readonly record struct LinePoint(double Station, double Pressure, double Flow);

/// <summary>Pressure and flow along one leg of a row's line.</summary>
/// <param name="Row">Row, from 1.</param>
/// <param name="Run">Label of the run.</param>
/// <param name="Points">Left to right.</param>
/// <param name="EndVelocity">[m/s] Velocity in the last stretch before a dead end when its cap is shut; 0 where there is none.</param>
/// <param name="FlushVelocity">[m/s] Velocity at the dead end with its flush cap open and the pump running; null where there is none or it was not computed.</param>
public sealed record LineProfile(
    int Row,
    string Run,
    IReadOnlyList<LinePoint> Points,
    double EndVelocity,
    double? FlushVelocity
);

/// <summary>Where the pump and the rig meet.</summary>
/// <param name="Flow">[m³/s] Flow through the pump.</param>
/// <param name="Head">[m] Head it gives.</param>
/// <param name="Power">[W] Electrical input.</param>
/// <param name="WaterPower">[W] What the water gets.</param>
/// <param name="HoursPerDay">[h] Hours it runs in a day.</param>
/// <param name="EnergyPerDayKilowattHours">[kWh] Electrical energy a day.</param>
/// <param name="WarmingPerDay">[K] How much a day's running warms the reservoir's water if nothing cools it.</param>
public sealed record OperatingPoint(
    double Flow,
    double Head,
    double Power,
    double WaterPower,
    double HoursPerDay,
    double EnergyPerDayKilowattHours,
    double WarmingPerDay
);

/// <summary>One measure of uniformity with its class.</summary>
/// <param name="Name">What it is called in the field.</param>
/// <param name="Value">[-] From 0 to 1.</param>
/// <param name="Class">Its class.</param>
/// <param name="Source">Whose measure and whose class limits.</param>
public sealed record UniformityMeasure(Phrase Name, double Value, UniformityClass Class, string Source)
{
    /// <summary>What its class is called.</summary>
    public Phrase ClassName =>
        Phrase.Of(
            Class switch
            {
                UniformityClass.Excellent => "uniformity.excellent",
                UniformityClass.Good => "uniformity.good",
                UniformityClass.Fair => "uniformity.fair",
                UniformityClass.Poor => "uniformity.poor",
                _ => "uniformity.unacceptable",
            }
        );
}

/// <summary>What closing the emitters at empty pots does.</summary>
/// <param name="EmptyPots">Pots that stand empty and have emitters.</param>
/// <param name="PlantedFlowOpen">[m³/s] Mean flow of a planted pot with the empty pots' emitters open.</param>
/// <param name="PlantedFlowShut">[m³/s] The same with them shut.</param>
/// <param name="WastedOpen">[m³/s] What runs into empty pots while they are open.</param>
public sealed record EmptyPotEffect(int EmptyPots, double PlantedFlowOpen, double PlantedFlowShut, double WastedOpen);

/// <summary>What the siphon-breaking hole costs while the pump runs.</summary>
/// <param name="Flow">[m³/s] What spouts out of it, back into the reservoir.</param>
/// <param name="TotalWithout">[m³/s] Out of all emitters if the hole were shut.</param>
public sealed record BreakHoleEffect(double Flow, double TotalWithout);

/// <summary>What the line does when the pump stops.</summary>
/// <param name="LineVolume">[m³] Water in header and feed lines.</param>
/// <param name="ThroughEmitters">[m³] Runs out through emitters that lie lower than the water in the lines.</param>
/// <param name="BackToTank">[m³] Runs back through the pump.</param>
/// <param name="Stays">[m³] Stays in the lines.</param>
/// <param name="LowRows">Rows whose emitters get the run-off.</param>
/// <param name="Siphons">True where the reservoir goes on emptying through low emitters after the lines are empty.</param>
public sealed record StopEffect(
    double LineVolume,
    double ThroughEmitters,
    double BackToTank,
    double Stays,
    IReadOnlyList<int> LowRows,
    bool Siphons
);

/// <summary>Everything computed of the feed.</summary>
/// <remarks>Method pages: docs/methods/feed-network.md, pump.md, uniformity.md, scatter.md</remarks>
public sealed record FeedPlan
{
    /// <summary>True when the network was solved.</summary>
    public required bool Solved { get; init; }

    /// <summary>Where and why it was not, nothing when solved.</summary>
    public required Phrase Trouble { get; init; }

    /// <summary>The working point; null for gravity feed.</summary>
    public required OperatingPoint? OperatingPoint { get; init; }

    /// <summary>The pump's curve, drawn finely; empty for gravity feed.</summary>
    public required IReadOnlyList<CurvePoint> PumpCurve { get; init; }

    /// <summary>Head that the rig asks for at a flow; crosses the pump's curve at the working point.</summary>
    public required IReadOnlyList<CurvePoint> SystemCurve { get; init; }

    /// <summary>[m] Gravity feed: height of the water over the mean emitter outlet; with a pump: lift from water to mean outlet, negative.</summary>
    public required double StaticHead { get; init; }

    /// <summary>Every emitter, row by row, left to right.</summary>
    public required IReadOnlyList<EmitterFlow> Emitters { get; init; }

    /// <summary>Every pot.</summary>
    public required IReadOnlyList<PotFlow> Pots { get; init; }

    /// <summary>The planted pots that get nothing.</summary>
    public IEnumerable<PotFlow> Dry => Pots.Where(p => p.Planted && p.Flow <= 0);

    /// <summary>True where all emitters of a pot are shut, or it has none.</summary>
    /// <param name="pot">A pot of this plan.</param>
    public bool IsShut(PotFlow pot) => Emitters.All(e => e.Open <= 0 || (e.Row, e.Pot) != (pot.Row, pot.Pot));

    /// <summary>Flow before the rows and the fastest in each row's line.</summary>
    public required IReadOnlyList<RunFlow> Runs { get; init; }

    /// <summary>Along each leg.</summary>
    public required IReadOnlyList<LineProfile> Lines { get; init; }

    /// <summary>[m³/s] Out of all emitters.</summary>
    public required double TotalFlow { get; init; }

    /// <summary>[m³/s] Out of all emitters with the reservoir at its lowest level.</summary>
    public required double TotalFlowAtLowest { get; init; }

    /// <summary>The siphon-breaking hole; null where there is none.</summary>
    public BreakHoleEffect? BreakHole { get; init; }

    /// <summary>[m³/s] Back through the bypass.</summary>
    public required double BypassFlow { get; init; }

    /// <summary>Measures of uniformity of the planted pots; empty where no water comes.</summary>
    public required IReadOnlyList<UniformityMeasure> Uniformity { get; init; }

    /// <summary>The planted pot that gets least; null where no water comes.</summary>
    public required PotFlow? Weakest { get; init; }

    /// <summary>The planted pot that gets most; null where no water comes.</summary>
    public required PotFlow? Strongest { get; init; }

    /// <summary>What the differences come from; null where no water comes.</summary>
    public required SpreadShares? Causes { get; init; }

    /// <summary>Empty pots' emitters open or shut; null where no pot stands empty.</summary>
    public required EmptyPotEffect? EmptyPots { get; init; }

    /// <summary>The feed with a worn pump, and with a dirty strainer; those that the rig can have.</summary>
    public IReadOnlyList<WornFeed> Worn { get; init; } = [];

    /// <summary>When the pump stops.</summary>
    public required StopEffect Stop { get; init; }

    /// <summary>Manufacture and partial clogging, drawn many times; null where it was not asked for or no water comes.</summary>
    public ScatterResult? Scatter { get; init; }

    /// <summary>[-] Greatest mass error over total flow.</summary>
    public required double MassResidual { get; init; }

    /// <summary>[m] Greatest energy error along a link.</summary>
    public required double EnergyResidual { get; init; }

    /// <summary>Newton steps taken.</summary>
    public required int Iterations { get; init; }
}
