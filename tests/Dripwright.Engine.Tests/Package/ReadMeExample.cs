using Dripwright.Engine;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Rigs;

namespace Dripwright.Tests.Package;

/// <summary>The example of the package's README, as it stands there: compiled here, run by <see cref="Dripwright.Engine.Tests.Package.ReadMeTests"/>.</summary>
internal static class ReadMeExample
{
    /// <param name="Console">Takes what the example prints.</param>
    public static void Run(TextWriter Console)
    {
        const string rig = """
            {
              "name": "Bench by the window",
              "rows": [{ "pots": 6, "moduleLength": "6 ft", "planting": [{ "pots": "1-6", "crop": "tomato" }] }],
              "feed": { "header": { "pipe": "hose-1/2" } },
              "reservoir": { "tank": "tank-box-20-gal" },
              "pump": { "model": "pump-400gph" }
            }
            """;

        var reading = RigReader.Read(rig, "window.rig.json", PartsCatalogue.Default);
        foreach (var fault in reading.Faults)
        {
            Console.WriteLine(fault); // every fault at once: line, column and what is wrong
        }

        var plan = Planner.Of(reading.Resolved!, reading.Assumed, new PlanOptions());
        var feed = plan.Feed;
        Console.WriteLine($"every pot gets at least {feed.Weakest!.Flow * 3.6e6:0.00} L/h while the pump runs");

        var graver = plan.Findings.Where(finding => finding.Level != FindingLevel.Note);
        Console.WriteLine($"{graver.Count()} findings to mend, such as {graver.First().Rule}");
    }
}
