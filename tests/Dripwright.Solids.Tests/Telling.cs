using Dripwright.Engine.Phrases;
using Dripwright.Engine.Units;
using Dripwright.Language;

namespace Dripwright.Solids.Tests;

/// <summary>What a part has to say, in words.</summary>
internal static class Telling
{
    public static string Told(this Phrase phrase) => new PlanWords(UnitSystem.Metric).Of(phrase);
}
