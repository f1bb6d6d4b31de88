namespace Dripwright.Engine.Catalogue.Salts;

/// <summary>What a fertiliser can do to people, stores and water.</summary>
public enum Hazard
{
    /// <summary>Feeds a fire.</summary>
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
}

/// <summary>What to do about a hazard, in plain words for a label or a mixing sheet.</summary>
/// <param name="Hazard">The hazard.</param>
/// <param name="Statement">The statement of the United Nations' hazard system where there is one, else empty.</param>
/// <param name="What">What it does.</param>
/// <param name="Do">What to do.</param>
public sealed record Caution(Hazard Hazard, string Statement, string What, string Do)
{
    private static readonly Caution[] s_all =
    [
        new(
            Hazard.Oxidizer,
            "H272",
            "Feeds a fire.",
            "Keep it from fuel, wood, sawdust, paper, acid and heat; sweep up spills with water, not sawdust."
        ),
        new(
            Hazard.Corrosive,
            "H314",
            "Burns skin and eyes.",
            "Gloves, goggles and old clothes; rinse burns 15 minutes with water. Pour acid slowly into cold water, never water into acid."
        ),
        new(
            Hazard.EyeDamage,
            "H318",
            "Harms the eyes badly.",
            "Goggles when weighing and dissolving; rinse eyes 15 minutes with water."
        ),
        new(
            Hazard.HarmfulSwallowed,
            "H302",
            "Harmful if swallowed.",
            "Keep it locked away from children and food, in its own labelled can."
        ),
        new(
            Hazard.Reproduction,
            "H360",
            "May harm fertility or the unborn child.",
            "Gloves, raise no dust; pregnant people leave it to others."
        ),
        new(Hazard.WaterLife, "H410", "Very poisonous to water life.", "None of it into drains or ditches."),
        new(Hazard.MetalCorrosive, "H290", "Eats metals.", "Plastic measures and cans; never beside tools or pumps."),
        new(Hazard.HeatsInWater, "", "Becomes hot in water.", "Add it little by little to much cold water, stirring."),
    ];

    /// <summary>All cautions, one for each hazard. Sources: safety data sheets of nitric and phosphoric acid; the rest from memory.</summary>
    public static IReadOnlyList<Caution> All => s_all;

    /// <summary>The caution for a hazard.</summary>
    public static Caution For(Hazard hazard) => Array.Find(s_all, caution => caution.Hazard == hazard)!;
}
