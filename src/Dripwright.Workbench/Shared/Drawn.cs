using Microsoft.AspNetCore.Components;

namespace Dripwright.Workbench.Shared;

/// <summary>Drawings as pieces of a page.</summary>
internal static class Drawn
{
    /// <summary>An SVG of ours as markup.</summary>
    /// <remarks>
    /// Hatches are named in style attributes, which the content policy does not let through; the page's script sets them
    /// from <c>data-fill</c>, which it may.
    /// </remarks>
    public static MarkupString Inline(string svg) =>
        new(svg.Replace(" style=\"fill:", " data-fill=\"", StringComparison.Ordinal));
}
