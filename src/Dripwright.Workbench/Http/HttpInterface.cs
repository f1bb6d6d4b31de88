using System.Text.Encodings.Web;
using System.Text.Json.Serialization;
using Dripwright.Workbench.Failing;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Timeouts;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.OpenApi;

namespace Dripwright.Workbench.Http;

/// <summary>The verbs of the command line for other programs. Handbook page: docs/handbook/http.md</summary>
internal static class HttpInterface
{
    public static void Add(IServiceCollection services)
    {
        services.AddRequestTimeouts();
        services.ConfigureHttpJsonOptions(json =>
        {
            json.SerializerOptions.Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping;
            json.SerializerOptions.Converters.Add(
                new JsonStringEnumConverter(System.Text.Json.JsonNamingPolicy.CamelCase)
            );
        });
        services.AddOpenApi(
            "v1",
            open =>
            {
                open.OpenApiVersion = OpenApiSpecVersion.OpenApi3_1;
                open.ShouldInclude = route => route.RelativePath?.StartsWith("api/", StringComparison.Ordinal) == true;
                open.AddDocumentTransformer(
                    (document, _, _) =>
                    {
                        document.Info = new OpenApiInfo
                        {
                            Title = "Dripwright",
                            Version = "1",
                            Description =
                                "Check, plan and draw rigs, and keep them in the garden. Errors are RFC 9457 problems with a number that stands in the log. See the handbook: http.md",
                        };
                        // Where it stands is for each machine to say.
                        document.Servers = [];
                        return Task.CompletedTask;
                    }
                );
            }
        );
    }

    /// <summary>What the answers of the interface have in common.</summary>
    public static void Use(WebApplication app)
    {
        app.UseWhen(
            Problems.AreFor,
            api =>
            {
                api.UseStatusCodePages(told =>
                    Problems.Of(told.HttpContext, told.HttpContext.Response.StatusCode).ExecuteAsync(told.HttpContext)
                );
                api.Use(
                    (context, next) =>
                    {
                        context.Response.Headers.CacheControl = "no-store";
                        return next(context);
                    }
                );
            }
        );
        app.UseRequestTimeouts();
    }

    public static void Map(WebApplication app)
    {
        var api = app.MapGroup(Problems.Root)
            .AddEndpointFilter(Problems.Filter)
            .WithMetadata(new RequestTimeoutAttribute((int)TimeSpan.FromMinutes(2).TotalMilliseconds))
            .ProducesProblem(400)
            .ProducesProblem(401)
            .ProducesProblem(403)
            .ProducesProblem(429)
            .ProducesProblem(500);
        PlanAddresses.Map(api);
        PackAddresses.Map(api);
        SuggestAddresses.Map(api);
        CureAddresses.Map(api);
        NutrientAddresses.Map(api);
        StartAddresses.Map(api);
        CompareAddresses.Map(api);
        RigAddresses.Map(api);
        DocumentAddresses.Map(api);
        GardenAddresses.Map(api);
        CatalogueAddresses.Map(api);
        PeopleAddresses.Map(api);
        app.MapOpenApi("/api/{documentName}/openapi.json");
    }
}
