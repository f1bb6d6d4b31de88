using Dripwright.Engine.Chemistry.Solutions;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Nutrients.Correcting;

/// <summary>What was read at a tank. Nothing is refused here, so that a wrong reading can be talked about.</summary>
/// <param name="DecisiemensPerMetre">[dS/m] EC at 25 °C, as a compensated meter shows it.</param>
/// <param name="PH">[-] pH.</param>
/// <param name="Volume">[m³] Water in the tank.</param>
/// <param name="Celsius">[°C] Temperature of the water.</param>
public sealed record TankReading(double DecisiemensPerMetre, double PH, double Volume, double Celsius = 20)
{
    /// <summary>[dS/m] EC above which a reading is taken for another unit or a dry meter.</summary>
    public const double HighestEc = 15;

    private const double LowestPH = 3;
    private const double HighestPH = 10;
    private const double WarmestCelsius = 40;

    // [dS/m] From here on the number looks like µS/cm or ppm.
    private const double MicrosiemensFrom = 100;

    /// <summary>What is impossible in the reading, and what may lie behind it; empty when it can be used.</summary>
    /// <param name="capacity">[m³] What the tank holds when full.</param>
    public IReadOnlyList<Unanswerable> Faults(double capacity) => [.. Each(capacity).OfType<Unanswerable>()];

    private IEnumerable<Unanswerable?> Each(double capacity)
    {
        yield return FaultOfEc();
        yield return PH is >= LowestPH and <= HighestPH
            ? null
            : Unanswerable.Of("reading-ph", Told(PH, Measured.Number));
        yield return FaultOfVolume(capacity);
        yield return Celsius is >= 0 and <= WarmestCelsius
            ? null
            : Unanswerable.With(
                "reading-temperature",
                Celsius is > WarmestCelsius and < 105 ? "fahrenheit" : "again",
                Told(Celsius, Measured.Number)
            );
    }

    private Unanswerable? FaultOfEc() =>
        DecisiemensPerMetre is >= 0 and <= HighestEc ? null
        : DecisiemensPerMetre is > HighestEc and < double.PositiveInfinity
            ? Unanswerable.With(
                "reading-ec-high",
                DecisiemensPerMetre >= MicrosiemensFrom ? "unit" : "again",
                Told(DecisiemensPerMetre / 10, Measured.Ec)
            )
        : Unanswerable.Of("reading-ec", Told(DecisiemensPerMetre / 10, Measured.Ec));

    private Unanswerable? FaultOfVolume(double capacity) =>
        Volume == 0 ? Unanswerable.Of("tank-empty")
        : !(Volume > 0 && double.IsFinite(Volume)) ? Unanswerable.Of("reading-volume", Told(Volume, Measured.Volume))
        : Volume > capacity * 1.001
            ? Unanswerable.Of("reading-volume-high", Measured.Volume(Volume), Measured.Volume(capacity))
        : null;

    // No unit fits what is no number.
    private static object Told(double value, Func<double, Measured> form) =>
        double.IsFinite(value) ? form(value) : Phrase.Of("unanswerable.no-number");
}
