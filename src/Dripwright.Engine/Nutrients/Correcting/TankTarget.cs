using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Chemistry.Solutions;
using Dripwright.Engine.Chemistry.Waters;

namespace Dripwright.Engine.Nutrients.Correcting;

/// <summary>What a tank shall become.</summary>
/// <param name="DecisiemensPerMetre">[dS/m] EC at 25 °C.</param>
/// <param name="PH">[-] pH, 4 to 9.</param>
/// <param name="Volume">[m³] Volume; null for no more water than is needed.</param>
public sealed record TankTarget(double DecisiemensPerMetre, double PH = 5.8, double? Volume = null);

/// <summary>The water a tank is filled up with.</summary>
/// <param name="DecisiemensPerMetre">[dS/m] Its EC at 25 °C.</param>
/// <param name="Contents">[mol/m³] What it holds; null where there is no analysis.</param>
/// <param name="Gap">[mol/m³ of charge] Ions that its analysis does not name, positive for cations.</param>
public sealed record MakeUpWater(double DecisiemensPerMetre, Composition? Contents = null, double Gap = 0)
{
    /// <summary>A water of which there is an analysis; its EC as measured, else from its ions.</summary>
    /// <param name="supply">The water.</param>
    public static MakeUpWater Of(WaterSupply supply)
    {
        ArgumentNullException.ThrowIfNull(supply);
        var ec = supply.Conductivity is { } measured
            ? measured * 10
            : Conductivity.Of(supply.Composition, supply.PH ?? 7.5, SolutionConditions.Closed).DecisiemensPerMetre;
        return new MakeUpWater(ec, supply.Composition);
    }
}

/// <summary>What is needed beside the readings to say how much acid or base a tank takes.</summary>
/// <param name="Tank">[mol/m³] What the tank holds, from an analysis or reckoned from the recipe.</param>
/// <param name="Bottles">The grower's bottles: the first that moves pH the right way is used.</param>
/// <param name="SolutionConditions">Closed for what shows at once, open for an aerated tank at rest.</param>
public sealed record PhMeans(Composition Tank, IReadOnlyList<PhBottle> Bottles, SolutionConditions SolutionConditions);
