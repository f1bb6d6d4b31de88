using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Chemistry.Solutions;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Tending;

namespace Dripwright.Language;

/// <summary>What there is to say of nutrients, in words.</summary>
public static class NutrientTelling
{
    /// <summary>Why there is no answer, and what would help.</summary>
    /// <param name="words">The reader's words.</param>
    /// <param name="refusal">The reason.</param>
    public static string Of(this PlanWords words, Unanswerable refusal)
    {
        ArgumentNullException.ThrowIfNull(refusal);
        return Sentences(words, [refusal.What, refusal.Remedy]);
    }

    /// <summary>What to drain, and why.</summary>
    /// <param name="words">The reader's words.</param>
    /// <param name="renewal">The advice.</param>
    public static string Of(this PlanWords words, TankRenewal renewal)
    {
        ArgumentNullException.ThrowIfNull(renewal);
        return Sentences(words, renewal.Text);
    }

    /// <summary>What to beware of in a salt; empty for a harmless one.</summary>
    /// <param name="words">The reader's words.</param>
    /// <param name="salt">The salt.</param>
    public static string Cautions(this PlanWords words, Salt salt)
    {
        ArgumentNullException.ThrowIfNull(salt);
        return Sentences(
            words,
            salt.Hazards.Select(Caution.For).SelectMany(caution => new[] { caution.What, caution.Do })
        );
    }

    /// <summary>Phrases, one sentence after the other.</summary>
    /// <param name="words">The reader's words.</param>
    /// <param name="phrases">The phrases.</param>
    public static string Sentences(this PlanWords words, IEnumerable<Phrase> phrases)
    {
        ArgumentNullException.ThrowIfNull(words);
        ArgumentNullException.ThrowIfNull(phrases);
        return string.Join(' ', phrases.Select(words.Of));
    }
}
