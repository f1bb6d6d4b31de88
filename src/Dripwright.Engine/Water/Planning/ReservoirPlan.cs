namespace Dripwright.Engine.Water;

/// <summary>Everything computed of the reservoir.</summary>
/// <remarks>Method pages: docs/methods/drain-back.md, reservoir-days.md</remarks>
public sealed record ReservoirPlan
{
    /// <summary>[m³] To the rim.</summary>
    public required double RimVolume { get; init; }

    /// <summary>[m³] At the level kept with the pump off.</summary>
    public required double FullVolume { get; init; }

    /// <summary>[m³] Between that level and the lowest kept.</summary>
    public required double WorkingVolume { get; init; }

    /// <summary>[m] Water level over the tank's floor while the pump runs: what is in lines, pots and drains is missing.</summary>
    public required double RunningLevel { get; init; }

    /// <summary>[m] Water over the pump's inlet while running.</summary>
    public required double InletCover { get; init; }

    /// <summary>[m] Cover wanted by the vortex formula.</summary>
    public required double InletCoverWanted { get; init; }

    /// <summary>[m³] Back through the header when the pump stops.</summary>
    public required double BackFromLines { get; init; }

    /// <summary>[m³] Back from the drains' film.</summary>
    public required double BackFromDrains { get; init; }

    /// <summary>[m³] Back from the pots, down to their sills.</summary>
    public required double BackFromPots { get; init; }

    /// <summary>[m³] All that comes back.</summary>
    public double BackInAll => BackFromLines + BackFromDrains + BackFromPots;

    /// <summary>[m³] Room between the running level and the rim.</summary>
    public required double Freeboard { get; init; }

    /// <summary>[m³] What runs over the rim; 0 when it fits.</summary>
    public required double Overflow { get; init; }

    /// <summary>[m] Level over the floor to which a siphon through low emitters or a broken line draws it; null where nothing siphons.</summary>
    public required double? SiphonsTo { get; init; }

    /// <summary>[s] Until the pump's inlet runs dry when the feed line comes off at the first row; null without a pump.</summary>
    public required double? SecondsToEmptyLineOff { get; init; }

    /// <summary>[s] Until the lowest level is reached when the drain is blocked and all feed stays in the pots.</summary>
    public required double? SecondsToEmptyDrainBlocked { get; init; }

    /// <summary>Plants that drink from it.</summary>
    public required int Plants { get; init; }

    /// <summary>[m³/s] What they take in a hot week.</summary>
    public required double Use { get; init; }

    /// <summary>[m³/s] What leaves it in a hot week: what the plants drink, or all they are given where the drain is caught elsewhere.</summary>
    public required double Leaves { get; init; }

    /// <summary>[d] Days it lasts in a hot week; null where nothing leaves it.</summary>
    public required double? Days { get; init; }

    /// <summary>[kg] Mass of the water when full.</summary>
    public required double WaterMass { get; init; }

    /// <summary>[Pa] Weight of the full tank over its footprint, water alone.</summary>
    public required double FloorPressure { get; init; }
}
