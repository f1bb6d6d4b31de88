using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Chemistry.Solutions;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Nutrients.Correcting;

/// <summary>Two stock solutions that are always given in equal volumes, and how strong they make a tank.</summary>
public sealed record StockPair : Strengthener
{
    /// <summary>A pair whose effect is known from the label or from a test mix.</summary>
    /// <param name="decisiemensPerMetre">[dS/m] What the dose adds to clean water.</param>
    /// <param name="doseOfEach">[-] Volume of each stock per volume of finished solution: 10 mL/L is 0.01. Under a third.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is not positive, or the dose is too large.</exception>
    public StockPair(double decisiemensPerMetre, double doseOfEach)
    {
        Guard.Positive(decisiemensPerMetre);
        Guard.Between(Guard.Positive(doseOfEach), 0, 1.0 / 3);
        Strength = decisiemensPerMetre / (2 * doseOfEach);
    }

    /// <summary>
    /// [dS/m] What equal parts of A and B count for in a tank, per volume of the two together. A straight line through the
    /// dose: no meter reads this in the concentrate.
    /// </summary>
    public override double Strength { get; }

    /// <inheritdoc/>
    public override double Bulk => 1;

    /// <inheritdoc/>
    public override Composition? Brings => Both;

    /// <summary>The dose of the label: in plain proportion, the stock's own volume not counted.</summary>
    /// <remarks>Some per cent less than a correction asks for, which counts it.</remarks>
    /// <param name="volume">[m³] Volume in the tank.</param>
    /// <param name="decisiemensPerMetre">[dS/m] Rise wanted.</param>
    /// <returns>[m³] Of stock A, and the same of stock B.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is negative.</exception>
    public double LabelDose(double volume, double decisiemensPerMetre) =>
        Guard.NotNegative(volume) * Guard.NotNegative(decisiemensPerMetre) / Strength / 2;

    /// <summary>[mol/m³] What stock A holds; null where it is not known.</summary>
    public Composition? A { get; init; }

    /// <summary>[mol/m³] What stock B holds; null where it is not known.</summary>
    public Composition? B { get; init; }

    /// <summary>[mol/m³] What equal parts of both hold together; null where one is not known.</summary>
    public Composition? Both => A is { } a && B is { } b ? (a + b) * 0.5 : null;

    /// <summary>A pair by what it is made of; its effect is computed for the dose given, at which it is exact.</summary>
    /// <param name="a">[mol/m³] What stock A holds.</param>
    /// <param name="b">[mol/m³] What stock B holds.</param>
    /// <param name="doseOfEach">[-] Usual volume of each stock per volume of finished solution.</param>
    /// <param name="ph">[-] pH of the finished solution, 4 to 9.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range, or the stocks hold nothing.</exception>
    public static StockPair Of(Composition a, Composition b, double doseOfEach, double ph = 5.8)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        Guard.Between(Guard.Positive(doseOfEach), 0, 1.0 / 3);
        Guard.Between(ph, 4, 9);
        var dose = Conductivity.Of((a + b) * doseOfEach, ph, SolutionConditions.Closed);
        return new StockPair(dose.DecisiemensPerMetre, doseOfEach) { A = a, B = b };
    }

    internal override bool CanGive(double units) => units / 2 >= TankCorrection.LeastDose;

    internal override IEnumerable<TankStep> Give(double units, bool isPart)
    {
        var each = units / 2;
        yield return new TankStep(
            TankStepKind.StockA,
            each,
            Phrase.Of(isPart ? "tank.step.stock-a.part" : "tank.step.stock-a", Measured.MeasuredOut(each))
        );
        yield return new TankStep(
            TankStepKind.StockB,
            each,
            Phrase.Of(isPart ? "tank.step.stock-b.part" : "tank.step.stock-b", Measured.MeasuredOut(each))
        );
    }
}
