using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Nutrients.Recipe;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Nutrients.Correcting;

/// <summary>Salts that a scale cannot weigh for one dose, dissolved together once and taken by the syringe.</summary>
/// <remarks>
/// Each salt in it weighs ten steps of the scale or more, so that rounding stays within a twentieth; all stand in the recipe's
/// proportions. Chelates have a bottle of their own, as do main elements. Common practice.
/// Method page: docs/methods/tank-correction.md
/// </remarks>
/// <param name="Salts">What is weighed for the whole bottle.</param>
/// <param name="Into">[m³] Water to which the bottle is filled up.</param>
/// <param name="Take">[m³] What one dose takes of it.</param>
public sealed record MixedBottle(IReadOnlyList<WeighedSalt> Salts, double Into, double Take)
{
    // [m³] A litre bottle is what everyone has; larger ones come in whole litres.
    private const double Litre = 0.001;

    /// <summary>How it is made, and that it is shaken and kept dark.</summary>
    public Phrase Text =>
        Phrase.Of("tank.bottle.made", new Several([.. Salts.Select(salt => salt.Text)]), Measured.MeasuredOut(Into));

    /// <summary>[m³] Rounded to the mark of a syringe: 0.1 mL under 10 mL, else 1 mL.</summary>
    /// <param name="volume">[m³] Exact.</param>
    public static double Syringe(double volume) => RecipePlanner.Rounded(volume, volume < 1e-5 ? 1e-7 : 1e-6);

    /// <summary>A bottle and the dose of it, as one thing to measure out.</summary>
    /// <param name="lines">Lines of the recipe that go into it.</param>
    /// <param name="units">[m³] Volume of full-strength feed that the dose is for.</param>
    /// <param name="scale">What can be weighed.</param>
    internal static WeighedSalt Dose(IReadOnlyList<RecipeLine> lines, double units, WeighingScale scale)
    {
        var least = scale.Step / 2 / RuleBook.Limit("scale-coarse");
        var serves = lines.Max(line => least / line.Concentration);
        List<(RecipeLine Line, double Weighed)> weighed =
        [
            .. lines.Select(line => (line, RecipePlanner.Rounded(line.Concentration * serves, scale.Step))),
        ];
        // A tenth more than rounding asks for keeps whole litres from hanging on the last digit.
        var needed = weighed.Max(one => one.Weighed / CoarseScale.Strongest(one.Line.Salt));
        var into = Litre * Math.Max(1, Math.Ceiling((needed / Litre) - 0.1));
        var take = Syringe(units / serves * into);
        var bottle = new MixedBottle(
            [.. weighed.Select(one => new WeighedSalt(one.Line.Salt.Name, one.Weighed, one.Weighed, null, scale.Step))],
            into,
            take
        );
        var brings = weighed.Aggregate(
            Composition.Nothing,
            (sum, one) => sum + (one.Line.Salt.Brings * (one.Weighed * take / into))
        );
        return new WeighedSalt(
            string.Join(", ", lines.Select(line => line.Salt.Name)),
            lines.Sum(line => line.Concentration) * units,
            weighed.Sum(one => one.Weighed) * take / into,
            take,
            scale.Step
        )
        {
            Bottle = bottle,
            Brings = brings,
            Order = lines.Min(line => MixingOrder.Of(line.Salt)),
        };
    }
}
