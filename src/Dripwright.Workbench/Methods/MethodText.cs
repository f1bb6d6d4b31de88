using System.Collections.Concurrent;
using Dripwright.Workbench.Hosting;
using Markdig;

namespace Dripwright.Workbench.Methods;

/// <summary>The pages that say how numbers are computed, from the handbook's own files.</summary>
internal static class MethodText
{
    private static readonly ConcurrentDictionary<string, string?> s_made = new();

    // Raw HTML in a page would be shown as text, not obeyed.
    private static readonly MarkdownPipeline s_way = new MarkdownPipelineBuilder()
        .UsePipeTables()
        .UseAutoIdentifiers()
        .DisableHtml()
        .Build();

    /// <summary>Names and headings of all methods.</summary>
    public static IReadOnlyList<(string Name, string Title)> All { get; } =
    [
        .. Resource
            .Names("methods/")
            .Select(name => (name["methods/".Length..^".md".Length], TitleOf(Resource.Text(name)))),
    ];

    /// <summary>The heading of a page.</summary>
    public static string TitleOf(string markdown) => markdown.Split('\n')[0].TrimStart('#', ' ').Trim();

    /// <summary>The page as HTML; null where there is none of that name.</summary>
    public static string? Html(string name) =>
        All.Any(method => method.Name == name)
            ? s_made.GetOrAdd(name, _ => Links(Markdown.ToHtml(Resource.Text($"methods/{name}.md"), s_way)))
            : null;

    // Between methods the files link as "pump.md"; here that is another page.
    private static string Links(string html)
    {
        foreach (var (name, _) in All)
        {
            html = html.Replace($"href=\"{name}.md", $"href=\"/methods/{name}", StringComparison.Ordinal);
        }

        return html;
    }
}
