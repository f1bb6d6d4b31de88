using System.Text.Json.Nodes;

namespace Dripwright.Workbench.Tests.Http;

public sealed class DescriptionTests
{
    /// <summary>To write it anew: DRIPWRIGHT_WRITE_OPENAPI=1 and run this test.</summary>
    [Fact]
    public async Task The_description_in_the_docs_is_the_one_that_is_served()
    {
        await using var caller = await Caller.Open();
        var served = JsonNode.Parse((await caller.Get("openapi.json")).Text)!;
        var path = Path.Combine(Repository(), "docs", "openapi.json");
        if (Environment.GetEnvironmentVariable("DRIPWRIGHT_WRITE_OPENAPI") == "1")
        {
            var options = new System.Text.Json.JsonSerializerOptions { WriteIndented = true, NewLine = "\n" };
            await File.WriteAllTextAsync(
                path,
                served.ToJsonString(options) + "\n",
                TestContext.Current.CancellationToken
            );
        }

        var kept = JsonNode.Parse(await File.ReadAllTextAsync(path, TestContext.Current.CancellationToken));
        Assert.True(JsonNode.DeepEquals(kept, served), "docs/openapi.json is not what the workbench serves.");
    }

    [Fact]
    public async Task The_description_is_whole()
    {
        await using var caller = await Caller.Open();
        using var stream = new MemoryStream((await caller.Get("openapi.json")).Bytes);
        var (document, diagnostic) = await Microsoft.OpenApi.OpenApiDocument.LoadAsync(
            stream,
            "json",
            null,
            TestContext.Current.CancellationToken
        );
        Assert.Empty(diagnostic!.Errors);
        var operations = document!.Paths.SelectMany(path => path.Value.Operations!.Values).ToList();
        Assert.True(operations.Count > 30);
        Assert.All(operations, operation => Assert.NotEmpty(operation.Summary!));
        Assert.Equal(operations.Count, operations.Select(operation => operation.OperationId).Distinct().Count());
    }

    private static string Repository()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "Dripwright.slnx")))
        {
            folder = Path.GetDirectoryName(folder)!;
        }

        return folder;
    }
}
