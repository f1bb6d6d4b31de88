using System.Globalization;
using System.Text;
using Dripwright.Engine;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Printed;
using Dripwright.Engine.Proposing;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;
using Dripwright.Language;
using Dripwright.Language.Report;
using Dripwright.Pack;
using Dripwright.Sheets;
using Dripwright.Sheets.Screen;
using Dripwright.Sheets.Writing;
using Dripwright.Store;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Dripwright.Workbench.Http;

/// <summary>All that is computed from a rig: of the file that comes with the request, or of a rig of the garden.</summary>
internal static class PlanAddresses
{
    private const string Json = "application/json";

    /// <summary>How sheets are printed.</summary>
    /// <param name="Paper">a4 or letter; left out, letter for a rig in US units and a4 for one in metric.</param>
    /// <param name="Date">Date for the title blocks, such as 2026-03-01; none where it is left out.</param>
    /// <param name="Draws">false leaves out the draws of uneven and clogged emitters.</param>
    internal readonly record struct Printing(string? Paper, DateOnly? Date, bool? Draws)
    {
        public BuildPackOptions Options(Rig rig, RigText file) =>
            new()
            {
                Paper = (Paper ?? (rig.Units == UnitSystem.Us ? "letter" : "a4")) switch
                {
                    "letter" => Sheets.Model.Paper.Letter,
                    "a4" => Sheets.Model.Paper.A4,
                    _ => throw new Refused(400, "paper: expected a4 or letter."),
                },
                Revision = file.Revision,
                Date = Date,
            };
    }

    public static void Map(RouteGroupBuilder api)
    {
        var given = api.MapGroup("").WithTags("A rig file in, the answer out");
        Given(given.MapPost("/check", (HttpContext c, Plans p, Garden g) => Check(c, p, g, null, null)), "Check")
            .WithSummary("All faults of a rig file with path, line and column, then what would fail")
            .Produces<CheckAnswer>();
        Given(
                given.MapPost(
                    "/plan",
                    (HttpContext c, Plans p, Garden g, bool? draws) => Plan(c, p, g, null, null, draws)
                ),
                "Plan"
            )
            .WithSummary("Everything computed from a rig file, as plan.json")
            .Produces<object>();
        Given(
                given.MapPost(
                    "/summary",
                    (HttpContext c, Plans p, Garden g, bool? draws) => Summary(c, p, g, null, null, draws)
                ),
                "Summary"
            )
            .WithSummary("The key figures in the rig's units, and the findings")
            .Produces<SummaryAnswer>();
        Given(
                given.MapPost(
                    "/sheets",
                    (HttpContext c, Plans p, Garden g, [AsParameters] Printing print) =>
                        List(c, p, g, null, null, print)
                ),
                "Sheets"
            )
            .WithSummary("The sheets of the build pack, numbered")
            .Produces<IReadOnlyList<SheetLine>>();
        Given(
                given.MapPost(
                    "/sheets/{number:int}",
                    (HttpContext c, Plans p, Garden g, int number, [AsParameters] Printing print) =>
                        Drawing(c, p, g, null, null, number, print)
                ),
                "Sheet"
            )
            .WithSummary("One sheet as SVG")
            .Produces<string>(200, "image/svg+xml");
        Given(
                given.MapPost(
                    "/pack.pdf",
                    (HttpContext c, Plans p, Garden g, [AsParameters] Printing print) =>
                        Pack(c, p, g, null, null, "pdf", print)
                ),
                "PackPdf"
            )
            .WithSummary("The build pack as one PDF")
            .Produces<byte[]>(200, "application/pdf");
        Given(
                given.MapPost(
                    "/pack.zip",
                    (HttpContext c, Plans p, Garden g, [AsParameters] Printing print) =>
                        Pack(c, p, g, null, null, "zip", print)
                ),
                "PackZip"
            )
            .WithSummary(
                "The whole build pack as a zip: drawings, lists, forms, printed parts, plan.json and the rig file"
            )
            .Produces<byte[]>(200, "application/zip");
        Given(
                given.MapPost("/print-parts.zip", (HttpContext c, Plans p, Garden g) => Print(c, p, g, null, null)),
                "PrintParts"
            )
            .WithSummary("The rig's printed parts as a zip: a 3MF, an STL and a picture of each, and a list")
            .Produces<byte[]>(200, "application/zip");
        Given(given.MapPost("/suggest", Suggest), "Suggest")
            .WithSummary("Rigs for a brief, cheapest first; gives the best so far when the seconds are over")
            .Produces<object>();

        var kept = api.MapGroup("/rigs/{id:int}").WithTags("Computed from a rig of the garden");
        Kept(
                kept.MapGet(
                    "/check",
                    (HttpContext c, Plans p, Garden g, int id, int? revision) => Check(c, p, g, id, revision)
                ),
                "CheckRig"
            )
            .WithSummary("All faults of the rig, then what would fail")
            .Produces<CheckAnswer>();
        Kept(
                kept.MapGet(
                    "/plan",
                    (HttpContext c, Plans p, Garden g, int id, int? revision, bool? draws) =>
                        Plan(c, p, g, id, revision, draws)
                ),
                "PlanRig"
            )
            .WithSummary("Everything computed from the rig, as plan.json")
            .Produces<object>();
        Kept(
                kept.MapGet(
                    "/summary",
                    (HttpContext c, Plans p, Garden g, int id, int? revision, bool? draws) =>
                        Summary(c, p, g, id, revision, draws)
                ),
                "SummaryOfRig"
            )
            .WithSummary("The key figures in the rig's units, and the findings")
            .Produces<SummaryAnswer>();
        Kept(
                kept.MapGet(
                    "/sheets",
                    (HttpContext c, Plans p, Garden g, int id, int? revision, [AsParameters] Printing print) =>
                        List(c, p, g, id, revision, print)
                ),
                "SheetsOfRig"
            )
            .WithSummary("The sheets of the build pack, numbered")
            .Produces<IReadOnlyList<SheetLine>>();
        Kept(
                kept.MapGet(
                    "/sheets/{number:int}",
                    (
                        HttpContext c,
                        Plans p,
                        Garden g,
                        int id,
                        int number,
                        int? revision,
                        [AsParameters] Printing print
                    ) => Drawing(c, p, g, id, revision, number, print)
                ),
                "SheetOfRig"
            )
            .WithSummary("One sheet as SVG")
            .Produces<string>(200, "image/svg+xml");
        Kept(
                kept.MapGet(
                    "/pack.pdf",
                    (HttpContext c, Plans p, Garden g, int id, int? revision, [AsParameters] Printing print) =>
                        Pack(c, p, g, id, revision, "pdf", print)
                ),
                "PackPdfOfRig"
            )
            .WithSummary("The build pack as one PDF")
            .Produces<byte[]>(200, "application/pdf");
        Kept(
                kept.MapGet(
                    "/pack.zip",
                    (HttpContext c, Plans p, Garden g, int id, int? revision, [AsParameters] Printing print) =>
                        Pack(c, p, g, id, revision, "zip", print)
                ),
                "PackZipOfRig"
            )
            .WithSummary("The whole build pack as a zip")
            .Produces<byte[]>(200, "application/zip");
        Kept(
                kept.MapGet(
                    "/print-parts.zip",
                    (HttpContext c, Plans p, Garden g, int id, int? revision) => Print(c, p, g, id, revision)
                ),
                "PrintPartsOfRig"
            )
            .WithSummary("The rig's printed parts as a zip")
            .Produces<byte[]>(200, "application/zip");
        Kept(
                kept.MapGet(
                    "/plots",
                    (HttpContext c, Plans p, Garden g, int id, int? revision, bool? draws) =>
                        Plots(c, p, g, id, revision, draws)
                ),
                "PlotsOfRig"
            )
            .WithSummary("The plots of how the water runs, each with its key numbers")
            .Produces<IReadOnlyList<PlotLine>>();
        Kept(
                kept.MapGet(
                    "/plots/{key}.{kind:regex(^(svg|png|csv)$)}",
                    (HttpContext c, Plans p, Garden g, int id, string key, string kind, int? revision, bool? draws) =>
                        Plotted(c, p, g, id, revision, draws, key, kind)
                ),
                "PlotOfRig"
            )
            .WithSummary("One plot as a picture (svg, png), or the numbers behind it (csv)")
            .Produces<byte[]>(200, "image/svg+xml", "image/png", "text/csv");
    }

    internal static RouteHandlerBuilder Given(RouteHandlerBuilder route, string name) =>
        route.Takes(Json, Limits.TextBytes).WithName(name).ProducesProblem(422).ProducesProblem(503);

    internal static RouteHandlerBuilder Kept(RouteHandlerBuilder route, string name) =>
        route.WithName(name).ProducesProblem(404).ProducesProblem(422).ProducesProblem(503);

    private static async Task<IResult> Check(HttpContext context, Plans plans, Garden garden, int? id, int? revision)
    {
        var file = await File(context, garden, id, revision);
        var catalogue = (await garden.CatalogueAsync(context.RequestAborted)).Catalogue;
        var reading = await plans.Read(file, catalogue, context.RequestAborted);
        IReadOnlyList<ToldFinding> findings = reading.Rig is null
            ? []
            : await plans.Of(
                reading,
                catalogue,
                false,
                plan => new PlanWords(plan.Rig.Units).Of(plan.Findings),
                context.RequestAborted
            );
        return Results.Ok(
            new CheckAnswer(
                reading.Faults.Count == 0,
                findings.Any(finding => finding.Level == FindingLevel.Stop),
                reading.Faults,
                findings,
                reading.Assumed,
                reading.Upgraded
            )
        );
    }

    private static async Task<IResult> Plan(
        HttpContext context,
        Plans plans,
        Garden garden,
        int? id,
        int? revision,
        bool? draws
    ) =>
        Results.Bytes(await Make(context, plans, garden, id, revision, draws, (plan, _) => PlanJson.Write(plan)), Json);

    private static async Task<IResult> Summary(
        HttpContext context,
        Plans plans,
        Garden garden,
        int? id,
        int? revision,
        bool? draws
    )
    {
        var sum = await Make(context, plans, garden, id, revision, draws, (plan, _) => PlanSummary.Of(plan));
        return Results.Ok(new SummaryAnswer(sum.Title, sum.Sentence, sum.Groups, sum.Findings, sum.Assumed));
    }

    private static async Task<IResult> List(
        HttpContext context,
        Plans plans,
        Garden garden,
        int? id,
        int? revision,
        Printing print
    ) =>
        Results.Ok(
            await Make(
                context,
                plans,
                garden,
                id,
                revision,
                print.Draws,
                (plan, file) =>
                    WholePack
                        .Sheets(plan, print.Options(plan.Rig, file))
                        .Select((sheet, i) => new SheetLine(i + 1, sheet.Title, sheet.Description))
                        .ToList()
            )
        );

    private static async Task<IResult> Drawing(
        HttpContext context,
        Plans plans,
        Garden garden,
        int? id,
        int? revision,
        int number,
        Printing print
    )
    {
        var svg = await Make(
            context,
            plans,
            garden,
            id,
            revision,
            print.Draws,
            (plan, file) =>
            {
                var sheets = WholePack.Sheets(plan, print.Options(plan.Rig, file));
                return number > 0 && number <= sheets.Count
                    ? SvgWriter.Write(sheets[number - 1], SvgOptions.File)
                    : throw Refused.NotThere(
                        string.Create(CultureInfo.InvariantCulture, $"sheet {number}: there are {sheets.Count}")
                    );
            }
        );
        return Results.Text(svg, "image/svg+xml", Encoding.UTF8);
    }

    private static async Task<IResult> Pack(
        HttpContext context,
        Plans plans,
        Garden garden,
        int? id,
        int? revision,
        string kind,
        Printing print
    )
    {
        var (name, bytes) = await Make(
            context,
            plans,
            garden,
            id,
            revision,
            print.Draws,
            (plan, file) =>
            {
                var files =
                    kind == "pdf"
                        ? WholePack.WithoutFittings(plan, file.Text, print.Options(plan.Rig, file))
                        : WholePack.Write(plan, file.Text, print.Options(plan.Rig, file));
                return (Bundle.Name(plan.Rig.Name), kind == "pdf" ? files["build-pack.pdf"] : Bundle.Zip(files));
            }
        );
        return Results.File(bytes, $"application/{kind}", $"{name}.{kind}");
    }

    private static async Task<IResult> Print(HttpContext context, Plans plans, Garden garden, int? id, int? revision)
    {
        var (name, zip) = await Make(
            context,
            plans,
            garden,
            id,
            revision,
            draws: false,
            (plan, _) =>
            {
                PrintedParts parts = plan.Printed;
                if (parts.Parts.Count == 0)
                {
                    throw new Refused(
                        422,
                        $"There is nothing to print: {(parts.Refused.Count > 0 ? string.Join(" ", parts.Refused) : "no row has a stand, and printing.smallParts asks for nothing.")}"
                    );
                }

                var files = new Dictionary<string, byte[]>(WholePack.Fittings(parts), StringComparer.Ordinal);
                if (parts.Refused.Count > 0)
                {
                    files["cannot-be-printed.txt"] = Encoding.UTF8.GetBytes(string.Join("\n", parts.Refused) + "\n");
                }

                return (BuildPack.FileNameOf(plan.Rig.Name), Bundle.Zip(files));
            }
        );
        return Results.File(zip, "application/zip", $"{name}-print-parts.zip");
    }

    private static async Task<IResult> Plots(
        HttpContext context,
        Plans plans,
        Garden garden,
        int id,
        int? revision,
        bool? draws
    ) =>
        Results.Ok(
            await Make(
                context,
                plans,
                garden,
                id,
                revision,
                draws,
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

    private static async Task<IResult> Plotted(
        HttpContext context,
        Plans plans,
        Garden garden,
        int id,
        int? revision,
        bool? draws,
        string key,
        string kind
    )
    {
        var bytes = await Make(
            context,
            plans,
            garden,
            id,
            revision,
            draws,
            (plan, _) =>
            {
                var plot =
                    ScreenPlot.All(plan).FirstOrDefault(one => one.Key == key)
                    ?? throw Refused.NotThere("plot of that name");
                return kind switch
                {
                    "svg" => Encoding.UTF8.GetBytes(plot.SvgFile()),
                    "png" => plot.Png(),
                    _ => plot.Csv(),
                };
            }
        );
        var type = kind switch
        {
            "svg" => "image/svg+xml",
            "png" => "image/png",
            _ => "text/csv",
        };
        return Results.File(bytes, type, $"{key}.{kind}");
    }

    private static async Task<IResult> Suggest(HttpContext context, Plans plans, Garden garden, int? seconds)
    {
        if (seconds is < 1 or > 60)
        {
            throw new Refused(400, "seconds: expected a number from 1 to 60.");
        }

        var bytes = await Body.Bytes(context);
        var catalogue = (await garden.CatalogueAsync(context.RequestAborted)).Catalogue;
        var reading = BriefReader.Read(bytes, "brief", catalogue);
        if (reading.Brief is not { } brief)
        {
            throw new Refused(422, "The brief has faults.") { Faults = reading.Faults };
        }

        try
        {
            var answer = await plans.Search(
                stop =>
                {
                    // Unlike a plan, a search that is stopped has something to show.
                    using var over = CancellationTokenSource.CreateLinkedTokenSource(stop);
                    over.CancelAfter(TimeSpan.FromSeconds(seconds ?? 20));
                    return ProposalJson.Write(Proposer.Of(brief, catalogue, null, null, over.Token));
                },
                context.RequestAborted
            );
            return Results.Text(answer, Json, Encoding.UTF8);
        }
        catch (Exception lacking) when (lacking is KeyNotFoundException or InvalidOperationException)
        {
            // The user's own catalogue may have a pipe without its elbow or tee.
            throw new Refused(422, $"A rig cannot be planned: {lacking.Message}");
        }
    }

    internal static async Task<T> Make<T>(
        HttpContext context,
        Plans plans,
        Garden garden,
        int? id,
        int? revision,
        bool? draws,
        Func<Plan, RigText, T> make
    )
    {
        var file = await File(context, garden, id, revision);
        var catalogue = (await garden.CatalogueAsync(context.RequestAborted)).Catalogue;
        return await plans.Of(file, catalogue, draws ?? true, plan => make(plan, file), context.RequestAborted);
    }

    /// <summary>The rig file asked for: the one that came, or of a rig of the garden the draft or a saved revision.</summary>
    public static async Task<RigText> File(HttpContext context, Garden garden, int? id, int? revision)
    {
        if (id is not { } rig)
        {
            return new RigText("rig file", await Body.Text(context));
        }

        var draft = await RigAddresses.Rig(garden, rig, context.RequestAborted);
        var shelf = await garden.OnHandAsync(context.RequestAborted);
        if (revision is not { } number)
        {
            Versions.Show(context, draft);
            return new RigText(draft.Name, draft.Text, Shelf: shelf);
        }

        var saved =
            await garden.RevisionAsync(rig, number, context.RequestAborted)
            ?? throw Refused.NotThere("such revision of the rig");
        return new RigText(draft.Name, saved.Text, number.ToString(CultureInfo.InvariantCulture), shelf);
    }
}
