using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Nutrients.Correcting;
using Dripwright.Engine.Nutrients.Planning;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Tending;

/// <summary>What else is known of a tank, beside its reading.</summary>
/// <param name="Days">[d] Since it was last mixed fresh; null where nobody knows.</param>
/// <param name="Sodium">[mol/m³] Sodium, from a laboratory or a test; null where it was not measured.</param>
public sealed record TankPast(int? Days = null, double? Sodium = null);

/// <summary>How much to drain and refill for one reason.</summary>
/// <param name="Share">[-] Share of the tank, 0 where none needs draining.</param>
/// <param name="Volume">[m³] That share.</param>
/// <param name="Because">What asks for it; null where nothing does.</param>
/// <param name="Text">What to say of it, sentence by sentence.</param>
public sealed record TankRenewal(double Share, double Volume, Constituent? Because, IReadOnlyList<Phrase> Text);

/// <summary>What adding cannot cure: sodium, and a feed whose ions have drifted apart.</summary>
/// <remarks>
/// What the tank holds is that of the loop after so many days with its EC held, brought to the EC read; measured sodium takes
/// the place of the calculated. The refill is a fresh feed. Method page: docs/methods/tank-correction.md
/// </remarks>
public static class NutrientRenewal
{
    /// <summary>[-] How far a main element may be off a fresh feed before it is worth draining some. Common practice.</summary>
    public const double Tolerance = 0.25;

    private const double WholeTank = 0.8;

    /// <summary>The advice, sodium first.</summary>
    /// <param name="plan">A plan with a feed.</param>
    /// <param name="reading">A reading without faults.</param>
    /// <param name="past">What else is known.</param>
    /// <exception cref="ArgumentException">The plan has no feed.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Days or sodium are negative.</exception>
    public static IReadOnlyList<TankRenewal> Of(Plan plan, TankReading reading, TankPast past)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(reading);
        ArgumentNullException.ThrowIfNull(past);
        ArgumentOutOfRangeException.ThrowIfNegative(past.Days ?? 0, nameof(past));
        Guard.NotNegative(past.Sodium ?? 0, nameof(past));
        var feed = plan.Nutrients ?? throw new ArgumentException("The plan has no feed.", nameof(plan));
        var reckoned = Reckoned(feed, reading, past.Days);
        List<TankRenewal> advice = [];
        if (past.Sodium is { } measured)
        {
            advice.Add(
                Sodium(plan, feed, reading, (reckoned ?? feed.Recipe.Composition).With(Constituent.Sodium, measured))
            );
        }
        else if (reckoned is not null)
        {
            advice.Add(Sodium(plan, feed, reading, reckoned));
        }

        if (reckoned is not null)
        {
            advice.Add(Balance(feed, reading, reckoned));
        }

        return advice.Count > 0 ? advice : [Unknown(feed)];
    }

    private static Composition? Reckoned(NutrientPlan feed, TankReading reading, int? days)
    {
        if (days == 0)
        {
            return feed.Recipe.Composition * (reading.DecisiemensPerMetre / feed.Ec.DecisiemensPerMetre);
        }

        return days is { } day && feed.Outlook?.Held.Evenings is { Count: > 0 } evenings
            ? evenings[Math.Min(day, evenings.Count) - 1] is var evening
                ? evening.State.Reservoir
                    * (reading.DecisiemensPerMetre / Math.Max(0.05, evening.ReservoirEc.DecisiemensPerMetre))
                : null
            : null;
    }

    private static TankRenewal Sodium(Plan plan, NutrientPlan feed, TankReading reading, Composition tank)
    {
        var limit = feed.SodiumLimit.Classic;
        var share = Renewal.Below(
            tank,
            feed.Recipe.Composition,
            new Dictionary<Constituent, double> { [Constituent.Sodium] = limit }
        );
        if (!share.Found)
        {
            var refusal = share.Refusals[0];
            return new TankRenewal(1, reading.Volume, Constituent.Sodium, [refusal.What, refusal.Remedy]);
        }

        var holds = Phrase.Of(
            "tank.renewal.sodium",
            Elements.Amount(Constituent.Sodium, tank[Constituent.Sodium]),
            Elements.Amount(Constituent.Sodium, limit)
        );
        return share.Value.Share > 0 ? Advice(share.Value, reading, holds) : Nothing(holds);
    }

    private static TankRenewal Balance(NutrientPlan feed, TankReading reading, Composition tank)
    {
        var fresh = feed.Recipe.Composition;
        var main = NutrientWords.Main.Aggregate(fresh, (sum, one) => sum.With(one, tank[one]));
        var share = Renewal.Balanced(main, fresh, Tolerance);
        var within = Measured.Percent(Tolerance);
        return share is { Because: { } one, Share: > 0 }
            ? Advice(
                share,
                reading,
                Phrase.Of(
                    "tank.renewal.balance.off",
                    Elements.Name(one),
                    Elements.Amount(one, tank[one]),
                    Elements.Amount(one, fresh[one]),
                    within
                )
            )
            : Nothing(Phrase.Of("tank.renewal.balance", within));
    }

    private static TankRenewal Nothing(Phrase why) => new(0, 0, null, [why, Phrase.Of("tank.renewal.none")]);

    private static TankRenewal Advice(RenewalShare share, TankReading reading, Phrase why)
    {
        var volume = share.Share * reading.Volume;
        var what =
            share.Share > WholeTank
                ? Phrase.Of("tank.renewal.whole")
                : Phrase.Of("tank.renewal.part", Measured.Volume(volume), Measured.Percent(share.Share));
        return new TankRenewal(share.Share, volume, share.Because, [why, what]);
    }

    private static TankRenewal Unknown(NutrientPlan feed) =>
        new(
            0,
            0,
            null,
            [
                feed.Outlook?.SodiumDay is { } day
                    ? Phrase.Of("tank.renewal.unknown.sodium", day)
                    : Phrase.Of("tank.renewal.unknown"),
            ]
        );
}
