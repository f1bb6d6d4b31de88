using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Chemistry.Solutions;

namespace Dripwright.Engine.Nutrients.Correcting;

/// <summary>How much of a tank must be drained and refilled.</summary>
/// <param name="Share">[-] Share of the tank, 0 to 1.</param>
/// <param name="Because">The constituent that asks for it; null when none does.</param>
/// <param name="After">[mol/m³] What the tank holds then.</param>
public sealed record RenewalShare(double Share, Constituent? Because, Composition After);

/// <summary>Drain and refill, for what adding cannot cure: too much sodium or chloride, or a solution out of balance.</summary>
public static class Renewal
{
    /// <summary>The least share that brings every named constituent under its limit.</summary>
    /// <param name="tank">[mol/m³] What the tank holds.</param>
    /// <param name="refill">[mol/m³] What it is refilled with.</param>
    /// <param name="limits">[mol/m³] Most of each constituent named.</param>
    /// <returns>The share, or which limit this refill cannot keep.</returns>
    public static Answer<RenewalShare> Below(
        Composition tank,
        Composition refill,
        IReadOnlyDictionary<Constituent, double> limits
    )
    {
        ArgumentNullException.ThrowIfNull(tank);
        ArgumentNullException.ThrowIfNull(refill);
        ArgumentNullException.ThrowIfNull(limits);
        double share = 0;
        Constituent? because = null;
        foreach ((var constituent, var limit) in limits.OrderBy(l => l.Key))
        {
            var over = tank[constituent] - Guard.NotNegative(limit, nameof(limits));
            if (over > 0 && refill[constituent] > limit)
            {
                return Answer<RenewalShare>.No(
                    Unanswerable.Of("refill-over-limit", Elements.Ion(constituent), Elements.Amount(constituent, limit))
                );
            }

            var part = Blend.RefillShare(tank[constituent], Math.Min(refill[constituent], limit), limit);
            if (part > share)
            {
                (share, because) = (part, constituent);
            }
        }

        return Answer<RenewalShare>.Of(new RenewalShare(share, because, (tank * (1 - share)) + (refill * share)));
    }

    /// <summary>The least share after which every constituent of the refill lies within a tolerance of it.</summary>
    /// <param name="tank">[mol/m³] What the tank holds.</param>
    /// <param name="refill">[mol/m³] What it is refilled with: the solution wanted.</param>
    /// <param name="tolerance">[-] How far each may be off, as a share of what is wanted, 0.02 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The tolerance is outside its range.</exception>
    public static RenewalShare Balanced(Composition tank, Composition refill, double tolerance = 0.2)
    {
        ArgumentNullException.ThrowIfNull(tank);
        ArgumentNullException.ThrowIfNull(refill);
        Guard.Between(tolerance, 0.02, 1);
        double share = 0;
        Constituent? because = null;
        foreach (var constituent in Composition.Constituents)
        {
            var off = Math.Abs(tank[constituent] - refill[constituent]);
            var allowed = tolerance * refill[constituent];
            if (refill[constituent] > 0 && off > allowed && 1 - (allowed / off) > share)
            {
                (share, because) = (1 - (allowed / off), constituent);
            }
        }

        return new RenewalShare(share, because, (tank * (1 - share)) + (refill * share));
    }
}
