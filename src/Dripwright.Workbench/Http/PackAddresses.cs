using System.Text;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;
using Dripwright.Language;
using Dripwright.Pack;
using Dripwright.Sheets;
using Dripwright.Sheets.Writing;
using Dripwright.Solids;
using Dripwright.Workbench.Failing;
using Dripwright.Workbench.Work;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;

namespace Dripwright.Workbench.Http;

/// <summary>What is taken to the bench and to the printer: sheets, the build pack, printed parts.</summary>
internal static class PackAddresses
{
    /// <summary>How sheets are printed.</summary>
    /// <param name="Paper">a4 or letter; left out, letter for a rig in US units and a4 for one in metric.</param>
    /// <param name="Date">Date for the title blocks, such as 2026-03-01; none where it is left out.</param>
    /// <param name="Draws">false leaves out the draws of uneven and clogged emitters.</param>
    internal readonly record struct Printing(
        [FromQuery(Name = "paper")] string? Paper,
        [FromQuery(Name = "date")] DateOnly? Date,
        [FromQuery(Name = "draws")] bool? Draws
    )
    {
        public BuildPackOptions Options(Rig rig, RigSource file) =>
            new()
            {
                Paper = (Paper ?? (rig.Units == UnitSystem.Us ? "letter" : "a4")) switch
                {
                    "letter" => Sheets.Model.Paper.Letter,
                    "a4" => Sheets.Model.Paper.A4,
                    _ => throw new Refused(400, Words.Of("http.paper")),
                },
                Revision = file.Revision,
                Date = Date,
            };
    }

    /// <summary>One sheet.</summary>
    /// <param name="Number">Its number, from 1.</param>
    /// <param name="Paper">a4 or letter; left out, letter for a rig in US units and a4 for one in metric.</param>
    /// <param name="Date">Date for the title block, such as 2026-03-01; none where it is left out.</param>
    /// <param name="Draws">false leaves out the draws of uneven and clogged emitters.</param>
    internal readonly record struct OneSheet(
        [FromRoute(Name = "number")] int Number,
        [FromQuery(Name = "paper")] string? Paper,
        [FromQuery(Name = "date")] DateOnly? Date,
        [FromQuery(Name = "draws")] bool? Draws
    )
    {
        public Printing Print => new(Paper, Date, Draws);
    }

    public static void Map(RouteGroupBuilder api)
    {
        var rig = new RigRoutes(api);
        rig.Add<Printing>(
            "/sheets",
            "Sheets",
            "The sheets of the build pack, numbered",
            List,
            route => route.Produces<IReadOnlyList<SheetLine>>()
        );
        rig.Add<OneSheet>(
            "/sheets/{number:int}",
            "Sheet",
            "One sheet as SVG",
            Drawing,
            route => route.Produces<string>(200, "image/svg+xml").ProducesProblem(404)
        );
        rig.Add<Printing>(
            "/pack.pdf",
            "PackPdf",
            "The build pack as one PDF",
            (asked, print) => Pack(asked, print, "pdf"),
            route => route.Produces<byte[]>(200, "application/pdf")
        );
        rig.Add<Printing>(
            "/pack.zip",
            "PackZip",
            "The whole build pack as a zip: drawings, lists, forms, printed parts, plan.json and the rig file",
            (asked, print) => Pack(asked, print, "zip"),
            route => route.Produces<byte[]>(200, "application/zip")
        );
        rig.Add(
            "/print-parts.zip",
            "PrintParts",
            "The rig's printed parts as a zip: a 3MF, an STL and a picture of each, and a list",
            Print,
            route => route.Produces<byte[]>(200, "application/zip")
        );
    }

    private static async Task<IResult> List(RigQuestion asked, Printing print) =>
        Results.Ok(
            await asked.Of(
                print.Draws,
                (plan, file) =>
                    WholePack
                        .Sheets(plan, print.Options(plan.Rig, file))
                        .Select((sheet, i) => new SheetLine(i + 1, sheet.Title, sheet.Description))
                        .ToList()
            )
        );

    private static async Task<IResult> Drawing(RigQuestion asked, OneSheet wanted)
    {
        var svg = await asked.Of(
            wanted.Draws,
            (plan, file) =>
            {
                var sheets = WholePack.Sheets(plan, wanted.Print.Options(plan.Rig, file));
                return wanted.Number > 0 && wanted.Number <= sheets.Count
                    ? SvgWriter.Write(sheets[wanted.Number - 1], SvgOptions.File)
                    : throw Refused.NotThere("sheet", wanted.Number, sheets.Count);
            }
        );
        return Results.Text(svg, "image/svg+xml", Encoding.UTF8);
    }

    private static async Task<IResult> Pack(RigQuestion asked, Printing print, string kind)
    {
        var (name, bytes) = await asked.Of(
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

    private static async Task<IResult> Print(RigQuestion asked)
    {
        var (name, zip) = await asked.Of(
            draws: false,
            (plan, _) =>
            {
                var parts = plan.Printed;
                var told = new PlanWords(plan.Rig.Units);
                var refused = parts.Refused.Select(one => told.Of(one.Sentence));
                if (parts.Parts.Count == 0)
                {
                    throw new Refused(
                        422,
                        parts.Refused.Count > 0
                            ? Words.Of("http.print.refused", string.Join(" ", refused))
                            : Words.Of("http.print.none")
                    );
                }

                Dictionary<string, byte[]> files;
                try
                {
                    files = new(WholePack.Fittings(parts, plan.Rig.Units), StringComparer.Ordinal);
                }
                catch (SolidsMissingException)
                {
                    throw new Refused(501, Words.Of("solids.missing"));
                }

                if (parts.Refused.Count > 0)
                {
                    files["cannot-be-printed.txt"] = Encoding.UTF8.GetBytes(string.Join("\n", refused) + "\n");
                }

                return (BuildPack.FileNameOf(plan.Rig.Name), Bundle.Zip(files));
            }
        );
        return Results.File(zip, "application/zip", $"{name}-print-parts.zip");
    }
}
