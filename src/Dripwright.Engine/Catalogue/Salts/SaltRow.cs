using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Files;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Catalogue.Salts;

/// <summary>A fertiliser, acid or base as a file words it; <see cref="Salt"/> is what that means.</summary>
internal sealed record SaltRow : CatalogueRow
{
    /// <summary>How it is handled.</summary>
    [Choice(""), Says("How it is handled.")]
    public required SaltKind Kind { get; init; }

    /// <summary>How sure the figures are.</summary>
    [Choice("published"), Says("How sure the figures are.")]
    public Sureness Sure { get; init; }

    /// <summary>The compound.</summary>
    [Text(120), FoundByPlan("the label says what it brings"), Says("The compound, such as \"MgSO4*7H2O\".")]
    public string? Formula { get; init; }

    /// <summary>[-] Share of the compound in the product.</summary>
    [
        Quantity(Dimension.Share, "0.1 %", "100 %", Us = "100 %"),
        Formerly("purityPercent"),
        Says("Share of the compound in the product, or strength of an acid.")
    ]
    public double Purity { get; init; } = 1;

    /// <summary>[%] The label's guaranteed analysis by the names of <see cref="LabelForms"/>.</summary>
    [
        Amounts(100, LabelForms.AllNames),
        Says("The label's guaranteed analysis, in percent of mass. It goes before the formula.")
    ]
    public IReadOnlyDictionary<string, double> Label { get; init; } = new Dictionary<string, double>();

    /// <summary>[mol/kg] Acid that a kilogram sets free; negative for a base.</summary>
    [
        Number(-50, 50),
        FoundByPlan("by the formula; none where there is only a label"),
        Says("Acid that a kilogram sets free, in mol; negative for a base.")
    ]
    public double? AcidEquivalentsPerKilogram { get; init; }

    /// <summary>[kg] Mass of a litre of a liquid.</summary>
    [
        Quantity(Dimension.Mass, "0.5 kg", "3 kg"),
        Formerly("kilogramsPerLitre"),
        FoundByPlan("it is no liquid"),
        Says("What one litre of a liquid weighs at 20 °C.")
    ]
    public double? MassOfLitre { get; init; }

    /// <summary>In which concentrate it may stand.</summary>
    [FoundByPlan("by what it brings"), Says("In which stock tank it may stand.")]
    public StockPart? Part { get; init; }

    /// <summary>[kg] Content of one pack.</summary>
    [
        Quantity(Dimension.Mass, "1 g", "2000 kg"),
        Formerly("packKilograms"),
        FoundByPlan("not known"),
        Says("Content of one pack.")
    ]
    public double? Pack { get; init; }

    /// <summary>[money] Price of one pack.</summary>
    [Price, FoundByPlan("not known"), Says("Price of one pack, in your currency.")]
    public decimal? Price { get; init; }

    /// <summary>What it can do to people, stores and water.</summary>
    [Items(0, 12), Says("What it can do to people, stores and water.")]
    public IReadOnlyList<Hazard> Hazards { get; init; } = [];

    /// <summary>[-] Least pH at which a chelate holds its metal.</summary>
    [Ph(0, 14), FoundByPlan("no bound"), Says("Least pH at which a chelate holds its metal.")]
    public double? PhFrom { get; init; }

    /// <summary>[-] Greatest pH at which it does.</summary>
    [Ph(0, 14), FoundByPlan("no bound"), Says("Greatest pH at which it does.")]
    public double? PhTo { get; init; }

    /// <summary>Formula for which the solubility is stated.</summary>
    [
        Text(120),
        FoundByPlan("the formula above"),
        Says("Formula for which the solubility is stated, where it is another.")
    ]
    public string? SolubilityOf { get; init; }

    /// <summary>What dissolves.</summary>
    [Items(0, 20), Says("What dissolves, at temperatures that rise.")]
    public IReadOnlyList<Dissolved> Solubility { get; init; } = [];

    /// <inheritdoc/>
    internal override CatalogueRow StartOf(Func<string, bool> gives)
    {
        var start = this;
        // A new formula or strength does away with the label that the row starts from.
        if ((gives("formula") || gives("purity")) && !gives("label"))
        {
            start = start with { Label = new Dictionary<string, double>() };
        }
        // What dissolves was stated for the old formula; what is stated anew is stated for the new one.
        return gives("solubility") ? start with { SolubilityOf = null }
            : gives("formula") ? start with { SolubilityOf = SolubilityOf ?? Formula }
            : start;
    }

    /// <summary>What the row means; null with what is wrong where it cannot be.</summary>
    public (Salt? Salt, IReadOnlyList<Misfit> Misfits) Read()
    {
        var misfits = new List<Misfit>();
        var content = SaltContent.Of(this, misfits);
        var solubility = SaltContent.SolubilityOf(this, content?.Formula, misfits);
        if (PhFrom is null != PhTo is null)
        {
            misfits.Add(new(PhFrom is null ? nameof(PhTo) : nameof(PhFrom), Phrase.Of("fault.salt.ph-both")));
        }
        else if (PhFrom >= PhTo)
        {
            misfits.Add(new(nameof(PhTo), Phrase.Of("fault.salt.ph-to")));
        }
        if (misfits.Count > 0)
        {
            return (null, misfits);
        }
        var salt = new Salt
        {
            Key = Key,
            Name = Name,
            Kind = Kind,
            Formula = content!.Formula,
            Purity = Purity,
            Label = [.. Label.Select(one => (one.Key, one.Value))],
            Brings = content.Brings,
            AcidEquivalents = content.AcidEquivalents,
            Density = MassOfLitre * 1000,
            PHRange = PhFrom is { } least && PhTo is { } most ? (least, most) : null,
            Solubility = solubility,
            Part = Part ?? Natural(content.Brings),
            Pack = Pack,
            Price = Price,
            Hazards = Hazards,
            Source = Source,
            Sure = Sure,
            Row = this,
        };
        return (salt, misfits);
    }

    // The concentrate in which a product stands by what it brings.
    internal static StockPart Natural(Composition brings)
    {
        var calcium = brings[Constituent.Calcium] > 0;
        var other = brings[Constituent.Sulfur] > 0 || brings[Constituent.Phosphorus] > 0;
        return (calcium, other) switch
        {
            (true, true) => StockPart.Neither,
            (true, false) => StockPart.A,
            (false, true) => StockPart.B,
            _ => StockPart.Either,
        };
    }
}

/// <summary>One point of what dissolves.</summary>
/// <param name="Temperature">[K] Temperature of the water.</param>
/// <param name="Dissolves">[kg] What dissolves in a kilogram of it.</param>
internal readonly record struct Dissolved(
    [property:
        Quantity(Dimension.Temperature, "-10 C", "100 C"),
        Formerly("celsius"),
        Says("Temperature of the water.")
    ]
        double Temperature,
    [property:
        Quantity(Dimension.Mass, "0.01 g", "20 kg"),
        Formerly("gramsPerKilogramWater"),
        Says("What dissolves in a kilogram of it.")
    ]
        double Dissolves
);
