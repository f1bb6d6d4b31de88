using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Nutrients.Correcting;

/// <summary>What makes a tank stronger: two stocks, or the salts themselves.</summary>
public abstract record Strengthener
{
    /// <summary>[dS/m] What one unit counts for in a cubic metre of tank.</summary>
    public abstract double Strength { get; }

    /// <summary>[m³] Volume of one unit; nought for dry salts, whose own volume is left out.</summary>
    public abstract double Bulk { get; }

    /// <summary>[mol] What one unit brings; null where it is not known.</summary>
    public abstract Composition? Brings { get; }

    /// <summary>What to mind when it is given.</summary>
    public virtual IReadOnlyList<string> Cautions => [];

    /// <summary>The steps that give an amount.</summary>
    /// <param name="units">[-] How much.</param>
    /// <param name="again">What is said after the amount: that it is a part only.</param>
    internal abstract IEnumerable<TankStep> Give(double units, string again);

    /// <summary>Strength of a tank after some units.</summary>
    internal double Mixed(double volume, double ec, double units) =>
        ((volume * ec) + (units * Strength)) / (volume + (units * Bulk));
}

/// <summary>A salt and how much of it to weigh.</summary>
/// <param name="Name">Name of the salt.</param>
/// <param name="Mass">[kg] What is wanted.</param>
/// <param name="Weighed">[kg] The same, rounded to the scale; nought where the scale cannot weigh it.</param>
/// <param name="Measured">[m³] What to measure out of a liquid; null for a solid.</param>
public sealed record WeighedSalt(string Name, double Mass, double Weighed, double? Measured)
{
    /// <summary>The salt in words, "12.3 g of magnesium sulfate".</summary>
    public string Text =>
        Measured is { } volume
            ? $"{QuantityWords.Number(volume * 1e6, "0.0")} mL of {Name}"
            : $"{QuantityWords.Number(Weighed * 1000, "0.0##")} g of {Name}";
}
