namespace Dripwright.Engine.Water;

/// <summary>What each planted pot is given in a day.</summary>
/// <remarks>Plants count as full grown. Method page: docs/methods/dose.md</remarks>
public sealed record DosePlan
{
    /// <summary>[-] A hot day over a mean one: growers' pages take half as much again.</summary>
    internal const double HotOverMean = 1.5;

    /// <summary>[-] The low end of a mean day over a hot one: 0.3 gal against 0.6 gal for a full-grown tomato.</summary>
    internal const double LowOverHot = 0.5;

    /// <summary>[-] Share of what is given that shall run through a pot, so that salts do not gather there. Common practice: 20 to 30 %.</summary>
    internal const double DrainShareWanted = 0.25;

    /// <summary>Every planted pot that gets water, row by row, left to right.</summary>
    public required IReadOnlyList<PotDose> Pots { get; init; }

    /// <summary>[s] At the start of each watering, until the lines that ran empty are full again.</summary>
    public required double FillTime { get; init; }

    /// <summary>[s] How long the emitters run in a day.</summary>
    public required double Running { get; init; }

    /// <summary>[-] Waterings a day; 1 where the pump never stops.</summary>
    public required double Waterings { get; init; }

    /// <summary>The pot that is given least for what its plants drink; null where no planted pot gets water.</summary>
    public PotDose? Thirstiest => Pots.Count > 0 ? Pots.MinBy(p => p.Share) : null;
}
