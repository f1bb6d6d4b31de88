namespace Dripwright.Engine.Water;

/// <summary>All measures of a row's uniformity with their classes. Fractions; 1 is perfectly even.</summary>
/// <param name="DesignEmission">[-] Design emission uniformity: least over mean emitter flow, with manufacture.</param>
/// <param name="DesignEmissionClass">Its class.</param>
/// <param name="LowQuarter">[-] Distribution uniformity of the low quarter of the flows.</param>
/// <param name="LowQuarterClass">Its class.</param>
/// <param name="Christiansen">[-] Christiansen's coefficient of the flows.</param>
/// <param name="ChristiansenClass">Its class, by the low quarter a normal law would have.</param>
/// <param name="Statistical">[-] Statistical uniformity of the flows; null for a single flow.</param>
/// <param name="StatisticalClass">Its class; null for a single flow.</param>
/// <param name="Manufacture">Class of the maker's coefficient of variation, emitters placed one by one.</param>
public sealed record RowUniformity(
    double DesignEmission,
    UniformityClass DesignEmissionClass,
    double LowQuarter,
    UniformityClass LowQuarterClass,
    double Christiansen,
    UniformityClass ChristiansenClass,
    double? Statistical,
    UniformityClass? StatisticalClass,
    ManufactureClass Manufacture
)
{
    /// <summary>Takes all measures of one set of flows.</summary>
    /// <remarks>
    /// The last three see only what the flows given show: solved flows carry pressure and height, not manufacture; caught
    /// flows carry everything. Method page: docs/methods/uniformity.md
    /// </remarks>
    /// <param name="flows">[m³/s] Flow of each emitter, 0 or more, not all 0.</param>
    /// <param name="coefficientOfVariation">[-] Maker's coefficient of variation, 0 to 0.5.</param>
    /// <param name="emittersPerPlant">Emitters that share one plant, 1 or more.</param>
    /// <returns>The measures.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside the range above.</exception>
    public static RowUniformity Of(IReadOnlyList<double> flows, double coefficientOfVariation, int emittersPerPlant)
    {
        var quarter = Uniformity.OfLowQuarter(flows);
        var christiansen = Uniformity.Christiansen(flows);
        double? statistical = flows.Count > 1 ? Uniformity.Statistical(flows) : null;
        var design = Uniformity.OfDesign(
            coefficientOfVariation,
            emittersPerPlant,
            flows.Min(),
            flows.Sum() / flows.Count
        );
        return new RowUniformity(
            design,
            UniformityClasses.OfLowQuarter(design),
            quarter,
            UniformityClasses.OfLowQuarter(quarter),
            christiansen,
            UniformityClasses.OfChristiansen(christiansen),
            statistical,
            statistical is { } value ? UniformityClasses.OfStatistical(value) : null,
            UniformityClasses.OfEmitters(coefficientOfVariation)
        );
    }
}
