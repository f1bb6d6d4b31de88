using Microsoft.AspNetCore.Components;

namespace Dripwright.Workbench.Shared;

/// <summary>Drawings as pieces of a page.</summary>
internal static class Drawn
{
    /// <summary>An SVG of ours as markup.</summary>
    public static MarkupString Inline(string svg) => new(svg);
}
