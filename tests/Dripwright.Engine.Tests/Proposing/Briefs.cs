using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Proposing;
using Dripwright.Language;
using Dripwright.Language.Report;

namespace Dripwright.Engine.Tests.Proposing;

/// <summary>Briefs from text, and a catalogue small enough to try everything in it.</summary>
internal static class Briefs
{
    /// <summary>Six plants in a room that holds one row of them.</summary>
    public const string Small = """
        { "site": { "roomLength": "14 ft", "roomWidth": "6 ft" },
          "crops": [{ "crop": "tomato", "plants": 6, "spacing": "12 in" }], "leastEmitters": 4 }
        """;

    /// <summary>The catalogue with a few pumps, emitters and tanks.</summary>
    public static PartsCatalogue Few { get; } =
        PartsCatalogue.Default with
        {
            Pumps = Only(PartsCatalogue.Default.Pumps, "pump-250gph", "pump-400gph", "pump-1500lph"),
            Emitters = Only(
                PartsCatalogue.Default.Emitters,
                "drip-turbulent-1gph",
                "drip-long-1gph",
                "drip-adjustable-10gph"
            ),
            Tanks = Only(PartsCatalogue.Default.Tanks, "tank-box-20-gal", "tank-box-35-gal"),
        };

    /// <summary>Of these the fewest that still leave a choice of each kind but the tank.</summary>
    public static PartsCatalogue Fewest { get; } =
        Few with
        {
            Pumps = Only(Few.Pumps, "pump-250gph", "pump-400gph"),
            Emitters = Only(Few.Emitters, "drip-turbulent-1gph", "drip-adjustable-10gph"),
            Tanks = Only(Few.Tanks, "tank-box-35-gal"),
        };

    public static Brief From(string json, PartsCatalogue? catalogue = null)
    {
        var reading = BriefReader.Read(json, "brief", catalogue ?? PartsCatalogue.Default);
        Assert.True(reading.Brief is not null, string.Join("\n", reading.Faults.Told()));
        return reading.Brief;
    }

    public static ProposalList Propose(string json, PartsCatalogue? catalogue = null) =>
        Proposer.Of(From(json, catalogue ?? Few), catalogue ?? Few, null, null, TestContext.Current.CancellationToken);

    /// <summary>All of an answer that a person reads, to compare answers.</summary>
    public static string Text(ProposalList answer) => ProposalJson.Write(answer);

    public static bool Passes(Plan plan) => plan.Findings.All(f => f.Level == FindingLevel.Note);

    private static Dictionary<string, T> Only<T>(IReadOnlyDictionary<string, T> shelf, params string[] keys) =>
        keys.ToDictionary(key => key, key => shelf[key], StringComparer.Ordinal);
}
