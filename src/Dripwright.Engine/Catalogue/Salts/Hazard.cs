using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Catalogue.Salts;

/// <summary>What a fertiliser can do to people, stores and water.</summary>
public enum Hazard
{
    /// <summary>Makes a fire worse.</summary>
    Oxidizer,

    /// <summary>Burns skin and eyes.</summary>
    Corrosive,

    /// <summary>Harms the eyes badly.</summary>
    EyeDamage,

    /// <summary>Harmful if swallowed.</summary>
    HarmfulSwallowed,

    /// <summary>May harm fertility or the unborn child.</summary>
    Reproduction,

    /// <summary>Poisonous to water life.</summary>
    WaterLife,

    /// <summary>Eats metals.</summary>
    MetalCorrosive,

    /// <summary>Becomes hot when it meets water.</summary>
    HeatsInWater,

    /// <summary>Not sold to everyone everywhere: explosives law in the EU and the US names it.</summary>
    Restricted,
}

/// <summary>What to do about a hazard, in plain words for a label or a mixing sheet.</summary>
/// <param name="Hazard">The hazard.</param>
/// <param name="Statement">The statement of the United Nations' hazard system where there is one, else empty.</param>
/// <param name="What">What it does.</param>
/// <param name="Do">What to do.</param>
public sealed record Caution(Hazard Hazard, string Statement, Phrase What, Phrase Do)
{
    private static readonly Caution[] s_all =
    [
        Of(Hazard.Oxidizer, "H272", "salt.hazard.oxidizer"),
        Of(Hazard.Corrosive, "H314", "salt.hazard.corrosive"),
        Of(Hazard.EyeDamage, "H318", "salt.hazard.eye-damage"),
        Of(Hazard.HarmfulSwallowed, "H302", "salt.hazard.harmful-swallowed"),
        Of(Hazard.Reproduction, "H360", "salt.hazard.reproduction"),
        Of(Hazard.WaterLife, "H410", "salt.hazard.water-life"),
        Of(Hazard.MetalCorrosive, "H290", "salt.hazard.metal-corrosive"),
        Of(Hazard.HeatsInWater, "", "salt.hazard.heats-in-water"),
        // Regulation (EU) 2019/1148 and 6 CFR 27 (from memory): ammonium nitrate, nitric and sulfuric acid over a strength.
        Of(Hazard.Restricted, "", "salt.hazard.restricted"),
    ];

    /// <summary>All cautions, one for each hazard. Sources: safety data sheets of nitric and phosphoric acid; the rest from memory.</summary>
    public static IReadOnlyList<Caution> All => s_all;

    /// <summary>The caution for a hazard.</summary>
    /// <param name="hazard">The hazard.</param>
    public static Caution For(Hazard hazard) => Array.Find(s_all, caution => caution.Hazard == hazard)!;

    private static Caution Of(Hazard hazard, string statement, string key) =>
        new(hazard, statement, Phrase.Of($"{key}.what"), Phrase.Of($"{key}.do"));
}
