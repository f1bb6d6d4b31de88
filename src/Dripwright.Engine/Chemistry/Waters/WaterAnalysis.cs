using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Chemistry.Waters;

/// <summary>What is known of a water: any part of a laboratory's analysis. What is null or absent was not measured.</summary>
/// <remarks>Method page: docs/methods/water-analysis.md</remarks>
public sealed record WaterAnalysis
{
    /// <summary>An analysis with nothing in it: not pure water, but water of which nothing is known.</summary>
    public static WaterAnalysis Nothing { get; } = new();

    /// <summary>What the grower calls it.</summary>
    public Phrase Name { get; init; } = Phrase.Of("water.yours");

    /// <summary>[mol/m³] Measured constituents; the same numbers as mmol/L.</summary>
    public IReadOnlyDictionary<Constituent, double> Measured { get; init; } = new Dictionary<Constituent, double>();

    /// <summary>[mol/m³ of charge] Alkalinity; the same number as meq/L.</summary>
    public double? Alkalinity { get; init; }

    /// <summary>[mol/m³] Hardness: calcium and magnesium together.</summary>
    public double? Hardness { get; init; }

    /// <summary>[S/m] Conductivity at 25 °C; 1 dS/m = 1 mS/cm = 0.1 S/m.</summary>
    public double? Conductivity { get; init; }

    /// <summary>[-] pH.</summary>
    public double? PH { get; init; }

    /// <summary>An analysis from a laboratory's or a kit's report.</summary>
    /// <param name="values">Each quantity with its number and unit as reported.</param>
    /// <exception cref="ArgumentOutOfRangeException">A unit does not fit its quantity. Numbers are not judged here.</exception>
    public static WaterAnalysis Of(params IEnumerable<ReportedValue> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        var measured = new Dictionary<Constituent, double>();
        var analysis = new WaterAnalysis();
        foreach (var value in values)
        {
            switch (value.Quantity)
            {
                case ReportedQuantity.Alkalinity:
                    analysis = analysis with { Alkalinity = value.Value };
                    break;
                case ReportedQuantity.Hardness:
                    analysis = analysis with { Hardness = value.Value };
                    break;
                case ReportedQuantity.Conductivity:
                    analysis = analysis with { Conductivity = value.Value };
                    break;
                case ReportedQuantity.PH:
                    analysis = analysis with { PH = value.Value };
                    break;
                default:
                    measured[value.Constituent] = value.Value;
                    break;
            }
        }
        return analysis with { Measured = measured };
    }
}
