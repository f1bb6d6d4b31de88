using Dripwright.Engine.Chemistry.Formulas;

namespace Dripwright.Engine.Nutrients.Correcting;

/// <summary>A top-up solution that replaces what plants take, ion by ion.</summary>
/// <param name="Solution">[mol/m³] What the top-up shall hold, water included.</param>
/// <param name="Salts">[mol/m³] What must be added to the water for that.</param>
/// <param name="Surplus">What the water brings more of than is wanted: it will build up.</param>
public sealed record TopUpSolution(Composition Solution, Composition Salts, IReadOnlyList<Constituent> Surplus);

/// <summary>Works out the top-up from what plants take, and mends a tank that is off on the way.</summary>
/// <remarks>
/// In balance a tank takes back exactly what the plants took, so the top-up has the strength of the uptake; to mend a tank
/// over the next W litres of uptake, V (wanted - now) / W comes on top. Cannot take anything away.
/// </remarks>
public static class BalancedTopUp
{
    /// <summary>The top-up that holds a tank.</summary>
    /// <param name="uptake">[mol/m³] What plants take per volume of water.</param>
    /// <param name="water">[mol/m³] What the water holds.</param>
    public static TopUpSolution Holding(Composition uptake, Composition water)
    {
        ArgumentNullException.ThrowIfNull(uptake);
        ArgumentNullException.ThrowIfNull(water);
        return Make(uptake, water);
    }

    /// <summary>The top-up that also brings a tank to what is wanted over the water of the next days.</summary>
    /// <param name="uptake">[mol/m³] What plants take per volume of water.</param>
    /// <param name="water">[mol/m³] What the water holds.</param>
    /// <param name="tank">[mol/m³] What the tank holds.</param>
    /// <param name="target">[mol/m³] What it shall hold.</param>
    /// <param name="volume">[m³] Volume of tank and pots.</param>
    /// <param name="ahead">[m³] Water the plants will take meanwhile.</param>
    /// <exception cref="ArgumentOutOfRangeException">A volume is not positive.</exception>
    public static TopUpSolution Mending(
        Composition uptake,
        Composition water,
        Composition tank,
        Composition target,
        double volume,
        double ahead
    )
    {
        ArgumentNullException.ThrowIfNull(uptake);
        ArgumentNullException.ThrowIfNull(water);
        ArgumentNullException.ThrowIfNull(tank);
        ArgumentNullException.ThrowIfNull(target);
        Guard.Positive(volume);
        Guard.Positive(ahead);
        return Make(uptake + ((target - tank) * (volume / ahead)), water);
    }

    private static TopUpSolution Make(Composition wanted, Composition water)
    {
        List<Constituent> surplus = [];
        Composition salts = Composition.Nothing;
        foreach (Constituent constituent in Composition.Constituents)
        {
            double lacking = wanted[constituent] - water[constituent];
            if (lacking > 0)
            {
                salts = salts.With(constituent, lacking);
            }
            else if (water[constituent] > 0 && lacking < 0)
            {
                surplus.Add(constituent);
            }
        }

        return new TopUpSolution(water + salts, salts, surplus);
    }
}
