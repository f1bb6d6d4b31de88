using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Chemistry.Solutions;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Nutrients.Correcting;

/// <summary>How much of a bottle to put into a tank, and what comes of it.</summary>
/// <param name="Bottle">The bottle.</param>
/// <param name="BottleVolume">[m³] How much of it.</param>
/// <param name="Before">The tank as it was, divided at its own pH.</param>
/// <param name="After">The tank with the bottle's share in it.</param>
/// <param name="Solution">[mol/m³] What the tank holds then.</param>
/// <param name="Added">[mol/m³] What of that came from the bottle: feed to be counted in.</param>
public sealed record PhDose(
    PhBottle Bottle,
    double BottleVolume,
    Speciation Before,
    Speciation After,
    Composition Solution,
    Composition Added
)
{
    /// <summary>[mL] How much of the bottle.</summary>
    public double Millilitres => BottleVolume * 1e6;

    /// <summary>What to mind, empty when nothing is to be added.</summary>
    public IReadOnlyList<Phrase> Cautions => BottleVolume > 0 ? Bottle.Cautions : [];
}

/// <summary>Acid or base for a tank: how much to reach a pH, and what pH a given amount leads to.</summary>
/// <remarks>
/// The charge of the mixed tank is balanced at the wanted pH, so phosphoric acid gives up as many protons as it does there
/// and no rule about "one or two" is needed. The volume of the bottle's share is counted. Method page:
/// docs/methods/solution-ph.md
/// </remarks>
public static class PhDosing
{
    /// <summary>[-] Largest share of the tank that a bottle may be; a weaker bottle is water with a little in it.</summary>
    public const double LargestShare = 0.1;

    /// <summary>How much of a bottle brings a tank to a pH.</summary>
    /// <param name="tank">[mol/m³] What is in the tank.</param>
    /// <param name="tankVolume">[m³] Volume in the tank.</param>
    /// <param name="target">[-] pH wanted, 4 to 9.</param>
    /// <param name="bottle">The bottle.</param>
    /// <param name="surroundings">Closed for what a beaker shows at once; open for what an aerated tank will have taken
    /// when it has come to rest.</param>
    /// <param name="gap">[mol/m³ of charge] See <see cref="SolutionPh.Gap"/>; from the measured pH where there is one.</param>
    /// <returns>The dose, or why this bottle does not help.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static Answer<PhDose> ToReach(
        Composition tank,
        double tankVolume,
        double target,
        PhBottle bottle,
        SolutionConditions surroundings,
        double gap = 0
    )
    {
        ArgumentNullException.ThrowIfNull(tank);
        ArgumentNullException.ThrowIfNull(bottle);
        Guard.Positive(tankVolume);
        Guard.Between(target, 4, 9);
        var now = SolutionPh.Of(tank, surroundings, gap);
        if (!now.Found)
        {
            return Answer<PhDose>.No(now.Refusals);
        }

        var left = new Left(tank, target, bottle, surroundings, gap);
        var open = left.At(0);
        var way = now.Value.PH - target;
        if (Math.Abs(way) < 1e-6)
        {
            return Answer<PhDose>.Of(new PhDose(bottle, 0, now.Value, now.Value, tank, Composition.Nothing));
        }

        if (way > 0 != bottle.IsAcid)
        {
            return Answer<PhDose>.No(
                Unanswerable.Of(
                    way > 0 ? "bottle-raises-ph" : "bottle-lowers-ph",
                    Measured.PH(now.Value.PH),
                    Measured.PH(target),
                    bottle.Name
                )
            );
        }

        if (Math.Sign(left.At(LargestShare)) == Math.Sign(open))
        {
            return Answer<PhDose>.No(Unanswerable.Of("bottle-too-weak", bottle.Name, Measured.PH(target)));
        }

        var share = Bracket.Root(left, 0, LargestShare);
        return After(tank, tankVolume, bottle, share * tankVolume / (1 - share), surroundings, gap);
    }

    /// <summary>What a given amount of a bottle does to a tank.</summary>
    /// <param name="tank">[mol/m³] What is in the tank.</param>
    /// <param name="tankVolume">[m³] Volume in the tank.</param>
    /// <param name="bottle">The bottle.</param>
    /// <param name="bottleVolume">[m³] How much of it is poured in; not negative.</param>
    /// <param name="surroundings">What the tank stands in.</param>
    /// <param name="gap">[mol/m³ of charge] See <see cref="SolutionPh.Gap"/>.</param>
    /// <returns>The tank afterwards, or why it has no pH.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static Answer<PhDose> After(
        Composition tank,
        double tankVolume,
        PhBottle bottle,
        double bottleVolume,
        SolutionConditions surroundings,
        double gap = 0
    )
    {
        ArgumentNullException.ThrowIfNull(tank);
        ArgumentNullException.ThrowIfNull(bottle);
        Guard.Positive(tankVolume);
        Guard.NotNegative(bottleVolume);
        var share = bottleVolume / (tankVolume + bottleVolume);
        var mixed = (tank * (1 - share)) + (bottle.Contents * share);
        var before = SolutionPh.Of(tank, surroundings, gap);
        var after = SolutionPh.Of(mixed, surroundings, gap * (1 - share));
        return before.Found && after.Found
            ? Answer<PhDose>.Of(
                new PhDose(bottle, bottleVolume, before.Value, after.Value, mixed, bottle.Contents * share)
            )
            : Answer<PhDose>.No([.. before.Refusals, .. after.Refusals]);
    }

    private readonly struct Left(
        Composition tank,
        double target,
        PhBottle bottle,
        SolutionConditions surroundings,
        double gap
    ) : IOneNumber
    {
        public double At(double x)
        {
            var mixed = (tank * (1 - x)) + (bottle.Contents * x);
            return Speciation.Within(mixed, target, surroundings).Charge + (gap * (1 - x));
        }
    }
}
