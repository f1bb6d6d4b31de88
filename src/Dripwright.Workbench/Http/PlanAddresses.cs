using System.Text;
using Dripwright.Engine.Findings;
using Dripwright.Language;
using Dripwright.Language.Report;
using Dripwright.Sheets.Screen;
using Dripwright.Workbench.Failing;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;

namespace Dripwright.Workbench.Http;

/// <summary>What is computed from a rig, as numbers and words: faults, plan, summary, plots.</summary>
internal static class PlanAddresses
{
    private const string Json = "application/json";

    /// <summary>How a rig is planned.</summary>
    /// <param name="Draws">false leaves out the draws of uneven and clogged emitters.</param>
    internal readonly record struct Planned([FromQuery(Name = "draws")] bool? Draws);

    /// <summary>One plot.</summary>
    /// <param name="Key">Its short name.</param>
    /// <param name="Kind">As which file.</param>
    /// <param name="Draws">false leaves out the draws of uneven and clogged emitters.</param>
    internal readonly record struct OnePlot(
        [FromRoute(Name = "key")] string Key,
        [FromRoute(Name = "kind")] string Kind,
        [FromQuery(Name = "draws")] bool? Draws
    );

    public static void Map(RouteGroupBuilder api)
    {
        var rig = new RigRoutes(api);
        rig.Add(
            "/check",
            "Check",
            "All faults of a rig file with path, line and column, then what would fail",
            Check,
            route => route.Produces<CheckAnswer>()
        );
        rig.Add<Planned>(
            "/plan",
            "Plan",
            "Everything computed from a rig, as plan.json",
            Plan,
            route => route.Produces<object>()
        );
        rig.Add<Planned>(
            "/summary",
            "Summary",
            "The key figures in the rig's units, and the findings",
            Summary,
            route => route.Produces<SummaryAnswer>()
        );
        rig.Add<Planned>(
            "/plots",
            "Plots",
            "The plots of how the water runs, each with its key numbers",
            Plots,
            route => route.Produces<IReadOnlyList<PlotLine>>()
        );
        rig.Add<OnePlot>(
            "/plots/{key}.{kind:regex(^(svg|png|csv)$)}",
            "Plot",
            "One plot as a picture (svg, png), or the numbers behind it (csv)",
            Plotted,
            route => route.Produces<byte[]>(200, "image/svg+xml", "image/png", "text/csv").ProducesProblem(404)
        );
    }

    private static async Task<IResult> Check(RigQuestion asked)
    {
        var file = await asked.File();
        var catalogue = await asked.Catalogue();
        var reading = await asked.Work.Read(file, catalogue, asked.Stop);
        var findings = reading.Rig is null
            ? []
            : await asked.Work.Of(reading, false, plan => new PlanWords(plan.Rig.Units).Of(plan.Findings), asked.Stop);
        return Results.Ok(
            new CheckAnswer(
                reading.Faults.Count == 0,
                findings.Any(finding => finding.Level == FindingLevel.Stop),
                reading.Faults.Told(),
                findings,
                reading.Assumed,
                reading.Upgraded.Told()
            )
        );
    }

    private static async Task<IResult> Plan(RigQuestion asked, Planned how) =>
        Results.Bytes(await asked.Of(how.Draws, (plan, _) => PlanJson.Write(plan)), Json);

    private static async Task<IResult> Summary(RigQuestion asked, Planned how)
    {
        var sum = await asked.Of(how.Draws, (plan, _) => PlanSummary.Of(plan));
        return Results.Ok(new SummaryAnswer(sum.Title, sum.Sentence, sum.Groups, sum.Findings, sum.Assumed));
    }

    private static async Task<IResult> Plots(RigQuestion asked, Planned how) =>
        Results.Ok(
            await asked.Of(
                how.Draws,
                (plan, _) =>
                    ScreenPlot
                        .All(plan)
                        .Select(plot => new PlotLine(
                            plot.Key,
                            plot.Title,
                            [.. plot.Numbers.Select(number => new PlotNumber(number.What, number.Value))]
                        ))
                        .ToList()
            )
        );

    private static async Task<IResult> Plotted(RigQuestion asked, OnePlot wanted)
    {
        var bytes = await asked.Of(
            wanted.Draws,
            (plan, _) =>
            {
                var plot =
                    ScreenPlot.All(plan).FirstOrDefault(one => one.Key == wanted.Key) ?? throw Refused.NotThere("plot");
                return wanted.Kind switch
                {
                    "svg" => Encoding.UTF8.GetBytes(plot.SvgFile()),
                    "png" => plot.Png(),
                    _ => plot.Csv(),
                };
            }
        );
        var type = wanted.Kind switch
        {
            "svg" => "image/svg+xml",
            "png" => "image/png",
            _ => "text/csv",
        };
        return Results.File(bytes, type, $"{wanted.Key}.{wanted.Kind}");
    }
}
