using Dripwright.Engine.Units;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.JSInterop;

namespace Dripwright.Workbench.Shared;

/// <summary>What this browser has chosen for itself: it is kept there, not in the garden.</summary>
/// <param name="js">The browser.</param>
/// <param name="signedIn">Who has signed in, where that is needed.</param>
public sealed class Viewer(IJSRuntime js, AuthenticationStateProvider signedIn)
{
    private const string UnitsKey = "dripwright-units";
    private const string PenKey = "dripwright-pen";
    private const string NameKey = "dripwright-who";

    private bool _isRead;
    private bool _isSignedIn;

    /// <summary>Units to show; those of each rig where null.</summary>
    public UnitSystem? Units { get; private set; }

    /// <summary>What the pen shows, by its short name; empty where it was never said.</summary>
    public string Pen { get; private set; } = "";

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
        Pen = await js.InvokeAsync<string?>("localStorage.getItem", PenKey) ?? "";
        var person = (await signedIn.GetAuthenticationStateAsync()).User.Identity;
        _isSignedIn = person?.IsAuthenticated == true;
        Who = _isSignedIn ? person!.Name ?? "" : await js.InvokeAsync<string?>("localStorage.getItem", NameKey) ?? "";
    }

    /// <summary>Chooses units.</summary>
    /// <param name="units">Units to show.</param>
    public async Task Choose(UnitSystem units)
    {
        Units = units;
        await js.InvokeVoidAsync("localStorage.setItem", UnitsKey, units.ToString());
    }

    /// <summary>Remembers what the pen shows.</summary>
    /// <param name="pen">Its short name.</param>
    public async Task ChoosePen(string pen)
    {
        Pen = pen;
        await js.InvokeVoidAsync("localStorage.setItem", PenKey, pen);
    }

    /// <summary>Remembers who saves from here.</summary>
    /// <param name="who">A name.</param>
    public async Task Name(string who)
    {
        // Who has signed in cannot save in another's name.
        if (_isSignedIn)
        {
            return;
        }

        Who = who;
        await js.InvokeVoidAsync("localStorage.setItem", NameKey, who);
    }
}
