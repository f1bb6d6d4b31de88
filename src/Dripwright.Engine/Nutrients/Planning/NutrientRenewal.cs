using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Chemistry.Solutions;
using Dripwright.Engine.Nutrients.Correcting;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Nutrients.Planning;

/// <summary>What else is known of a tank, beside its reading.</summary>
/// <param name="Days">[d] Since it was last mixed fresh; null where nobody knows.</param>
/// <param name="Sodium">[mol/m³] Sodium, from a laboratory or a test; null where it was not measured.</param>
public sealed record TankPast(int? Days = null, double? Sodium = null);

/// <summary>How much to let out and refill for one reason.</summary>
/// <param name="Share">[-] Share of the tank, 0 where nothing needs letting out.</param>
/// <param name="Volume">[m³] That share.</param>
/// <param name="Because">What asks for it; null where nothing does.</param>
/// <param name="Text">The advice in words.</param>
public sealed record TankRenewal(double Share, double Volume, Constituent? Because, string Text);

/// <summary>What adding cannot cure: sodium, and a feed whose ions have drifted apart.</summary>
/// <remarks>
/// What the tank holds is that of the loop after so many days with its EC held, brought to the EC read; measured sodium takes
/// the place of the reckoned. The refill is a fresh feed. Method page: docs/methods/tank-correction.md
/// </remarks>
public static class NutrientRenewal
{
    /// <summary>[-] How far a main element may be off a fresh feed before it is worth letting feed out. Common practice.</summary>
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
        NutrientPlan feed = plan.Nutrients ?? throw new ArgumentException("The plan has no feed.", nameof(plan));
        Composition? reckoned = Reckoned(feed, reading, past.Days);
        var words = new QuantityWords(plan.Rig.Units);
        List<TankRenewal> advice = [];
        if (past.Sodium is { } measured)
        {
            advice.Add(
                Salt(
                    plan,
                    feed,
                    reading,
                    (reckoned ?? feed.Recipe.Composition).With(Constituent.Sodium, measured),
                    words
                )
            );
        }
        else if (reckoned is not null)
        {
            advice.Add(Salt(plan, feed, reading, reckoned, words));
        }

        if (reckoned is not null)
        {
            advice.Add(Balance(feed, reading, reckoned, words));
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

    private static TankRenewal Salt(
        Plan plan,
        NutrientPlan feed,
        TankReading reading,
        Composition tank,
        QuantityWords words
    )
    {
        double limit = NutrientOutlooks.LimitOf(plan.Rig.Nutrients.Crop).Classic;
        Answer<RenewalShare> share = Renewal.Below(
            tank,
            feed.Recipe.Composition,
            new Dictionary<Constituent, double> { [Constituent.Sodium] = limit }
        );
        string holds = Milligrams(Constituent.Sodium, tank[Constituent.Sodium]);
        string most = Milligrams(Constituent.Sodium, limit);
        if (!share.Found)
        {
            return new TankRenewal(
                1,
                reading.Volume,
                Constituent.Sodium,
                $"{share.Refusals[0].What} {share.Refusals[0].Remedy}"
            );
        }

        return share.Value.Share <= 0
            ? new TankRenewal(
                0,
                0,
                null,
                $"Sodium: about {holds} mg/L in the tank, and the crop stands {most} mg/L. Nothing needs letting out for it."
            )
            : Advice(
                share.Value,
                reading,
                words,
                $"Sodium: about {holds} mg/L in the tank, and the crop stands {most} mg/L."
            );
    }

    private static TankRenewal Balance(NutrientPlan feed, TankReading reading, Composition tank, QuantityWords words)
    {
        Composition fresh = feed.Recipe.Composition;
        Composition main = NutrientWords.Main.Aggregate(fresh, (sum, one) => sum.With(one, tank[one]));
        RenewalShare share = Renewal.Balanced(main, fresh, Tolerance);
        string within = QuantityWords.Percent(Tolerance);
        return share is { Because: { } one, Share: > 0 }
            ? Advice(
                share,
                reading,
                words,
                $"Balance: {Forms.ShortName(one)} is reckoned at {Milligrams(one, tank[one])} mg/L, where a fresh feed has {Milligrams(one, fresh[one])}; to bring every main element within {within} of it:"
            )
            : new TankRenewal(
                0,
                0,
                null,
                $"Balance: every main element is reckoned within {within} of a fresh feed. Nothing needs letting out for it."
            );
    }

    private static TankRenewal Advice(RenewalShare share, TankReading reading, QuantityWords words, string why)
    {
        double volume = share.Share * reading.Volume;
        string what =
            share.Share > WholeTank
                ? "Let the whole tank out and mix it new."
                : $"Let out {words.Volume(volume)} ({QuantityWords.Percent(share.Share)}) and refill with fresh feed.";
        return new TankRenewal(share.Share, volume, share.Because, $"{why} {what}");
    }

    private static TankRenewal Unknown(NutrientPlan feed) =>
        new(
            0,
            0,
            null,
            feed.Outlook?.SodiumDay is { } day
                ? $"EC does not show sodium, nor which element runs short. By the forecast sodium passes the crop's limit on day {QuantityWords.Count(day)} after a fresh mix: say how many days it has been."
                : "EC does not show which element runs short. Say how many days it has been since the tank was mixed fresh, or what sodium was measured."
        );

    private static string Milligrams(Constituent constituent, double amount) =>
        QuantityWords.Number(Forms.ToMilligramsPerLitre(constituent, amount), amount >= 0.01 ? "0" : "0.00");
}
