using Dripwright.Sheets.Screen;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Dripwright.Workbench.Hosting;

/// <summary>The drawings' own style sheet and the font, which the sheets bring.</summary>
internal static class Styles
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        var sheet = ScreenView.Styles();
        routes.MapGet(
            "/styles/sheet.css",
            (HttpContext context) => Answer(context, () => Results.Text(sheet, "text/css"))
        );
        routes.MapGet(
            "/styles/{weight:regex(^(regular|bold)$)}.ttf",
            (HttpContext context, string weight) =>
                Answer(
                    context,
                    () =>
                        Results.Bytes(
                            Sheets.Model.Typeface.File(
                                weight == "bold" ? Sheets.Model.Weight.Bold : Sheets.Model.Weight.Regular
                            ),
                            "font/ttf"
                        )
                )
        );
    }

    private static IResult Answer(HttpContext context, Func<IResult> make)
    {
        context.Response.Headers.CacheControl = "public, max-age=3600";
        return make();
    }
}
