using Dripwright.Engine.Findings;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Stands.Checks;

/// <summary>What was tried to cure a stand.</summary>
public enum CureKind
{
    /// <summary>The next stiffer tube of the catalogue.</summary>
    ThickerTube,

    /// <summary>One more frame within every module.</summary>
    ExtraFrame,

    /// <summary>Slanting tubes along the back and across the frames.</summary>
    Brace,

    /// <summary>One more frame in every module and braces, tried where neither alone is enough.</summary>
    FrameAndBrace,
}

/// <summary>A cure of a stand that was tried: the rig was changed, laid out anew and its stand computed as the first one was.</summary>
/// <param name="Kind">What was changed.</param>
/// <param name="What">What was changed, as a thing: "a 1 1/4 in tube".</param>
/// <param name="Cure">The change of the rig file.</param>
/// <param name="Utilisation">[-] Of the tube or joint used up most; null where a combination still brings it down.</param>
/// <param name="Buckling">[-] Lowest multiple of the loads at which it buckles; null where it does not buckle or does not stand.</param>
/// <param name="LowestSlope">[-] Lowest slope of the drain in any combination; null without one.</param>
/// <param name="Enough">True where every limit is then kept.</param>
public sealed record StandTrial(
    CureKind Kind,
    Phrase What,
    Cure Cure,
    double? Utilisation,
    double? Buckling,
    double? LowestSlope,
    bool Enough
);
