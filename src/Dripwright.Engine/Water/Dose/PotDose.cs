namespace Dripwright.Engine.Water;

/// <summary>What a planted pot is given in a day, beside what its plants drink.</summary>
/// <param name="Row">Row, from 1.</param>
/// <param name="Pot">Pot of the row, from 1.</param>
/// <param name="Plants">Plants in it, at least 1.</param>
/// <param name="Flow">[m³/s] From all its emitters while the pump runs.</param>
/// <param name="Given">[m³] Water a day.</param>
/// <param name="HotDay">[m³] What its plants drink on a hot day.</param>
public sealed record PotDose(int Row, int Pot, int Plants, double Flow, double Given, double HotDay)
{
    /// <summary>[m³] What its plants drink on a mean day.</summary>
    public double MeanDay => HotDay / DosePlan.HotOverMean;

    /// <summary>[m³] The least they drink on a mean day, by growers' figures.</summary>
    public double LowDay => HotDay * DosePlan.LowOverHot;

    /// <summary>[m³] What a pot must be given on a hot day so that the share wanted runs through.</summary>
    public double Wanted => HotDay / (1 - DosePlan.DrainShareWanted);

    /// <summary>[-] Share of what is given that runs through on a hot day; 0 where the plants take it all.</summary>
    public double DrainShare => Given > HotDay ? 1 - (HotDay / Given) : 0;

    /// <summary>[-] How far the day's water goes: 1 where it is just what is wanted on a hot day.</summary>
    public double Share => HotDay > 0 ? Given / Wanted : double.PositiveInfinity;
}
