using Dripwright.Engine.Rigs;
using Microsoft.JSInterop;

namespace Dripwright.Workbench.Shared;

/// <summary>What this browser has chosen for itself: it is kept there, not in the garden.</summary>
/// <param name="js">The browser.</param>
public sealed class Viewer(IJSRuntime js)
{
    private const string UnitsKey = "dripwright-units";
    private const string NameKey = "dripwright-who";

    private bool _isRead;

    /// <summary>Units to show; those of each rig where null.</summary>
    public UnitSystem? Units { get; private set; }

    /// <summary>Who saves revisions from here.</summary>
    public string Who { get; private set; } = "";

    /// <summary>Asks the browser what was chosen before.</summary>
    public async Task Read()
    {
        if (_isRead)
        {
            return;
        }

        _isRead = true;
        Units = Enum.TryParse<UnitSystem>(
            await js.InvokeAsync<string?>("localStorage.getItem", UnitsKey),
            out var units
        )
            ? units
            : null;
        Who = await js.InvokeAsync<string?>("localStorage.getItem", NameKey) ?? "";
    }

    /// <summary>Chooses units.</summary>
    /// <param name="units">Units to show.</param>
    public async Task Choose(UnitSystem units)
    {
        Units = units;
        await js.InvokeVoidAsync("localStorage.setItem", UnitsKey, units.ToString());
    }

    /// <summary>Remembers who saves from here.</summary>
    /// <param name="who">A name.</param>
    public async Task Name(string who)
    {
        Who = who;
        await js.InvokeVoidAsync("localStorage.setItem", NameKey, who);
    }
}
