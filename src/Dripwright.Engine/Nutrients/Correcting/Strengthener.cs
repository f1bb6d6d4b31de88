using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Phrases;

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
    public virtual IReadOnlyList<Phrase> Cautions => [];

    /// <summary>Whether an amount is enough to be weighed or measured out.</summary>
    /// <param name="units">[-] How much.</param>
    internal abstract bool CanGive(double units);

    /// <summary>The steps that give an amount that can be given.</summary>
    /// <param name="units">[-] How much.</param>
    /// <param name="isPart">Whether it is two thirds of the amount, and the rest follows after a reading.</param>
    internal abstract IEnumerable<TankStep> Give(double units, bool isPart);

    /// <summary>Strength of a tank after some units.</summary>
    internal double Mixed(double volume, double ec, double units) =>
        ((volume * ec) + (units * Strength)) / (volume + (units * Bulk));
}

/// <summary>A salt and how much of it to weigh.</summary>
/// <param name="Name">Name of the salt.</param>
/// <param name="Mass">[kg] What is wanted.</param>
/// <param name="Weighed">[kg] The same, rounded to the scale; nought where the scale cannot weigh it.</param>
/// <param name="Measured">[m³] What to measure out of a liquid; null for a solid.</param>
/// <param name="Step">[kg] Smallest step of the scale.</param>
public sealed record WeighedSalt(string Name, double Mass, double Weighed, double? Measured, double Step)
{
    /// <summary>[mol] What the amount told brings.</summary>
    public Composition Brings { get; init; } = Composition.Nothing;

    /// <summary>The bottle it is taken from; null where it is weighed or measured by itself.</summary>
    public MixedBottle? Bottle { get; init; }

    /// <summary>Its place in the order of mixing.</summary>
    public int Order { get; init; }

    /// <summary>The salt to weigh or measure out, "12.3 g of magnesium sulfate".</summary>
    public Phrase Text =>
        Bottle is { } bottle
            ? Phrase.Of("tank.bottle.dose", Phrases.Measured.MeasuredOut(bottle.Take), Name)
            : Phrase.Of(
                "tank.weigh",
                Measured is { } volume ? Phrases.Measured.MeasuredOut(volume) : Phrases.Measured.Weighed(Weighed, Step),
                Name
            );

    /// <summary>How the bottles of some salts are made; nothing where none comes out of a bottle.</summary>
    /// <param name="salts">The salts.</param>
    public static IEnumerable<Phrase> Bottles(IEnumerable<WeighedSalt> salts) =>
        salts.Select(salt => salt.Bottle?.Text).OfType<Phrase>().Distinct();
}
