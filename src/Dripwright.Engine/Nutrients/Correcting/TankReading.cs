using System.Globalization;
using Dripwright.Engine.Chemistry.Solutions;

namespace Dripwright.Engine.Nutrients.Correcting;

/// <summary>What was read at a tank. Nothing is refused here, so that a wrong reading can be talked about.</summary>
/// <param name="DecisiemensPerMetre">[dS/m] EC at 25 °C, as a compensated meter shows it.</param>
/// <param name="PH">[-] pH.</param>
/// <param name="Volume">[m³] Water in the tank.</param>
/// <param name="Celsius">[°C] Temperature of the water.</param>
public sealed record TankReading(double DecisiemensPerMetre, double PH, double Volume, double Celsius = 20)
{
    /// <summary>[dS/m] EC above which a reading is taken for another unit or a dry pen.</summary>
    public const double HighestEc = 15;

    /// <summary>What is impossible in the reading, and what may lie behind it; empty when it can be used.</summary>
    /// <param name="capacity">[m³] What the tank holds when full.</param>
    public IReadOnlyList<Unanswerable> Faults(double capacity)
    {
        List<Unanswerable> faults = [];
        if (!double.IsFinite(DecisiemensPerMetre) || DecisiemensPerMetre < 0)
        {
            faults.Add(new Unanswerable($"An EC of {Text(DecisiemensPerMetre)} dS/m cannot be.", "Read it again."));
        }
        else if (DecisiemensPerMetre > HighestEc)
        {
            faults.Add(
                new Unanswerable(
                    $"An EC of {Text(DecisiemensPerMetre)} dS/m is no tank that plants live in.",
                    DecisiemensPerMetre >= 100
                        ? "This looks like µS/cm or ppm: 1000 µS/cm is 1 dS/m; for ppm name the meter's scale."
                        : "Rinse and calibrate the pen and read again; if it is true, drain and mix anew."
                )
            );
        }

        if (!double.IsFinite(PH) || PH is < 3 or > 10)
        {
            faults.Add(
                new Unanswerable(
                    $"A pH of {Text(PH)} is no reading of a feed tank.",
                    "Calibrate the pen in fresh buffers and read again; if it is true, drain and mix anew."
                )
            );
        }

        if (!double.IsFinite(Volume) || Volume < 0)
        {
            faults.Add(new Unanswerable($"A volume of {Text(Volume * 1000)} L cannot be.", "Read the level again."));
        }
        else if (Volume == 0)
        {
            faults.Add(
                new Unanswerable("The tank is empty: there is nothing to correct.", "Mix it new from the recipe.")
            );
        }
        else if (Volume > capacity * 1.001)
        {
            faults.Add(
                new Unanswerable(
                    $"{Text(Volume * 1000)} L are more than the tank's {Text(capacity * 1000)} L.",
                    "Read the level again, or correct the tank's volume."
                )
            );
        }

        if (!double.IsFinite(Celsius) || Celsius is < 0 or > 40)
        {
            faults.Add(
                new Unanswerable(
                    $"A water temperature of {Text(Celsius)} °C is no tank that roots live in.",
                    Celsius is > 40 and < 105 ? "This looks like °F." : "Read it again."
                )
            );
        }

        return faults;
    }

    private static string Text(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
