using Microsoft.JSInterop;

namespace Dripwright.Workbench.Shared;

/// <summary>Brings a piece of the page into focus, also where it only comes in a moment.</summary>
/// <param name="js">The browser.</param>
internal sealed class Focus(IJSRuntime js)
{
    /// <summary>Brings it into focus.</summary>
    /// <param name="id">Its id.</param>
    public async Task On(string id)
    {
        await using var module = await js.InvokeAsync<IJSObjectReference>(
            "import",
            "/_content/Dripwright.Workbench/focus.js"
        );
        await module.InvokeVoidAsync("focusOn", id);
    }
}
