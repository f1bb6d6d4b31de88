namespace Dripwright.Engine.Catalogue.Salts;

/// <summary>One point of a solubility curve.</summary>
/// <param name="Temperature">[K] Temperature of the saturated solution.</param>
/// <param name="Molality">[mol/kg] Formula units in a kilogram of its water, hydrate water counted as water.</param>
public readonly record struct SolubilityPoint(double Temperature, double Molality);

/// <summary>How much a saturated solution holds at a temperature.</summary>
/// <param name="Molality">[mol/kg] Formula units in a kilogram of water.</param>
/// <param name="Beyond">True where the temperature lies outside the known points, so that the figure is a guess.</param>
public readonly record struct SolubilityAt(double Molality, bool Beyond);

/// <summary>Solubility of a salt in water against temperature.</summary>
/// <remarks>
/// Straight lines between the points. Colder than the first point the first line goes on, but never to less than half
/// the first point's value; a curve of one point loses 2 % a kelvin (common salts lose 1 to 3.5 %; from memory). Warmer than the
/// last point the last value is kept, which is on the safe side for salts that dissolve better when warm.
/// Method page: docs/methods/formulas-and-salts.md
/// </remarks>
public sealed class SolubilityCurve
{
    private const double LossPerKelvin = 0.02;
    private const double Coldest = 273.15;
    private const double Hottest = 333.15;

    /// <summary>A curve through points.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No points, or temperatures that do not rise, or amounts not above 0.</exception>
    public SolubilityCurve(IReadOnlyList<SolubilityPoint> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        if (points.Count == 0)
        {
            throw new ArgumentOutOfRangeException(nameof(points), "A curve needs a point.");
        }
        for (var i = 0; i < points.Count; i++)
        {
            var rising = i == 0 || points[i].Temperature > points[i - 1].Temperature;
            if (!rising || !double.IsFinite(points[i].Temperature) || !(points[i].Molality is > 0 and < 1e6))
            {
                throw new ArgumentOutOfRangeException(
                    nameof(points),
                    points[i],
                    "Temperatures must rise and amounts be above 0."
                );
            }
        }
        Points = points;
    }

    /// <summary>The points, from cold to warm.</summary>
    public IReadOnlyList<SolubilityPoint> Points { get; }

    /// <summary>Solubility at a temperature.</summary>
    /// <param name="temperature">[K] Temperature, 273.15 to 333.15.</param>
    /// <returns>The solubility and whether it is a guess.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is outside the range.</exception>
    public SolubilityAt At(double temperature)
    {
        Guard.Between(temperature, Coldest, Hottest);
        var first = Points[0];
        var last = Points[^1];
        if (temperature > last.Temperature)
        {
            return new(last.Molality, true);
        }
        if (temperature < first.Temperature)
        {
            var slope =
                Points.Count > 1
                    ? (Points[1].Molality - first.Molality) / (Points[1].Temperature - first.Temperature)
                    : first.Molality * LossPerKelvin;
            var guess = first.Molality + slope * (temperature - first.Temperature);
            return new(Math.Max(guess, first.Molality / 2), true);
        }
        for (var i = 1; i < Points.Count; i++)
        {
            if (temperature <= Points[i].Temperature)
            {
                var (t0, m0) = Points[i - 1];
                var (t1, m1) = Points[i];
                return new(m0 + (m1 - m0) * (temperature - t0) / (t1 - t0), false);
            }
        }
        return new(first.Molality, false);
    }
}
