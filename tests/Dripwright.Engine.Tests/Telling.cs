using Dripwright.Engine.Findings;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Units;
using Dripwright.Language;

namespace Dripwright.Engine.Tests;

/// <summary>What the engine has to say, in words: so that a test can ask for a sentence.</summary>
internal static class Telling
{
    public static string Told(this Phrase phrase, UnitSystem units = UnitSystem.Us) => new PlanWords(units).Of(phrase);

    public static ToldFinding Told(this Finding finding, UnitSystem units = UnitSystem.Us) =>
        new PlanWords(units).Of(finding);
}
