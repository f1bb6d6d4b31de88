using Dripwright.Engine.Physics;

namespace Dripwright.Engine.Water;

/// <summary>What may flow when the pump stops. Heights are over the reservoir's inside floor.</summary>
public sealed record PowerOffState
{
    /// <summary>Inside shape of the reservoir.</summary>
    public required VesselShape Reservoir { get; init; }

    /// <summary>[m] Level while the pump runs and the drain returns, 0 to the height.</summary>
    public required double RunningLevel { get; init; }

    /// <summary>[m] Level at which it runs over: brim, or a lower overflow or cable hole; 0 to the height.</summary>
    public required double OverflowLevel { get; init; }

    /// <summary>[m³] Water in the feed line over the reservoir that runs back through the pump; 0 with a check valve.</summary>
    public double FeedLineReturn { get; init; }

    /// <summary>[m³] Water under way in the drain pipes (the profile's stored volume).</summary>
    public double DrainFilm { get; init; }

    /// <summary>[m³] Free water in the pots over their sills, still to come down.</summary>
    public double PotsOverSill { get; init; }

    /// <summary>[m] Height of the lowest opening a siphon could run out of, over the reservoir's floor. Null when every
    /// opening lies over the water or gives back into the reservoir.</summary>
    public double? LowestOutlet { get; init; }

    /// <summary>[m] Height of the pump's inlet: under it no siphon can draw.</summary>
    public double PumpInlet { get; init; }

    /// <summary>[m] Height of a siphon-breaking hole in the line; null without one.</summary>
    public double? SiphonBreak { get; init; }

    /// <summary>True when a check valve or a no-drain emitter keeps the line shut (in either direction) once the pump stops.</summary>
    public bool LineIsShut { get; init; }
}

/// <summary>What happens in the reservoir after the pump stops, in order.</summary>
/// <param name="Returned">[m³] Water that comes back: feed line, drain film, pots.</param>
/// <param name="FreeVolume">[m³] Room between the running level and the overflow.</param>
/// <param name="Overflow">[m³] What does not fit; 0 when all fits.</param>
/// <param name="Spare">[m³] Room left when all has come back; 0 when it overflows.</param>
/// <param name="LevelAfterReturn">[m] Level when all has come back.</param>
/// <param name="SiphonsOut">True when the reservoir then runs out through the lowest outlet.</param>
/// <param name="SiphonLevel">[m] Level at which the siphon breaks; the level after return when there is none.</param>
/// <param name="SiphonedOut">[m³] What the siphon takes.</param>
public sealed record PowerOffResult(
    double Returned,
    double FreeVolume,
    double Overflow,
    double Spare,
    double LevelAfterReturn,
    bool SiphonsOut,
    double SiphonLevel,
    double SiphonedOut
);

/// <summary>The sequence after the power goes: water comes back, may run over, may siphon out.</summary>
/// <remarks>Method page: docs/methods/drain-back.md</remarks>
public static class PowerOff
{
    /// <summary>Follows the sequence.</summary>
    /// <remarks>
    /// Return first, siphon after: the worst order for both, since all of the return meets the running level and the
    /// siphon starts from the highest one. The siphon breaks at the highest of pump inlet, lowest outlet and break hole.
    /// </remarks>
    /// <param name="state">Reservoir, levels and volumes.</param>
    /// <returns>The outcome.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A level lies outside the vessel, or a volume is negative.</exception>
    public static PowerOffResult Follow(PowerOffState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        var shape = state.Reservoir;
        var before = shape.VolumeAt(state.RunningLevel);
        var room = Math.Max(shape.VolumeAt(state.OverflowLevel) - before, 0);
        var returned =
            Guard.NotNegative(state.FeedLineReturn)
            + Guard.NotNegative(state.DrainFilm)
            + Guard.NotNegative(state.PotsOverSill);
        var kept = before + Math.Min(returned, room);
        var level = returned == 0 ? state.RunningLevel : shape.LevelOf(kept);

        var end = SiphonEnd(state, level);
        return new PowerOffResult(
            returned,
            room,
            Math.Max(returned - room, 0),
            Math.Max(room - returned, 0),
            level,
            end < level,
            end,
            end < level ? kept - shape.VolumeAt(end) : 0
        );
    }

    /// <summary>Volume in a length of pipe.</summary>
    /// <param name="diameter">[m] Inside diameter, over 0.</param>
    /// <param name="length">[m] Length, 0 or more.</param>
    /// <returns>[m³] π D²/4 · L.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside the range above.</exception>
    public static double PipeVolume(double diameter, double length) =>
        Math.PI / 4 * Guard.Positive(diameter) * diameter * Guard.NotNegative(length);

    /// <summary>What a siphon-breaking hole spouts while the pump runs, q = Cd a √(2 g h).</summary>
    /// <param name="diameter">[m] Diameter of the hole, over 0.</param>
    /// <param name="head">[m] Pressure head in the line at the hole, 0 or more.</param>
    /// <param name="coefficient">[-] Discharge coefficient, over 0, at most 1; 0.6 for a drilled hole (from memory).</param>
    /// <returns>[m³/s] Flow lost at the hole.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside the range above.</exception>
    public static double BreakHoleFlow(double diameter, double head, double coefficient = 0.6)
    {
        Guard.Positive(diameter);
        Guard.NotNegative(head);
        Guard.Between(coefficient, double.Epsilon, 1);
        return coefficient * Math.PI / 4 * diameter * diameter * Math.Sqrt(2 * StandardGravity.Value * head);
    }

    private static double SiphonEnd(PowerOffState state, double level)
    {
        Guard.NotNegative(state.PumpInlet);
        if (state.LineIsShut || state.LowestOutlet is not { } outlet)
        {
            return level;
        }

        var end = Math.Max(Math.Max(Guard.Finite(outlet), state.PumpInlet), state.SiphonBreak ?? 0);
        return Math.Min(end, level);
    }
}
