using Dripwright.Engine.Units;
using Dripwright.Workbench.Hosting;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.JSInterop;

namespace Dripwright.Workbench.Shared;

/// <summary>What this browser has chosen for itself: it is kept there, not in the garden.</summary>
/// <param name="js">The browser.</param>
/// <param name="signedIn">Who has signed in, where that is needed.</param>
/// <param name="here">The garden: what was chosen for one is not chosen for another.</param>
internal sealed class Viewer(IJSRuntime js, AuthenticationStateProvider signedIn, GardenOfRequest here)
{
    private bool _isRead;
    private bool _isSignedIn;

    /// <summary>Units to show; those of each rig where null.</summary>
    public UnitSystem? Units { get; private set; }

    /// <summary>What the meter shows, by its short name; empty where it was never said.</summary>
    public string Meter { get; private set; } = "";

    /// <summary>Who saves revisions from here.</summary>
    public string Who { get; private set; } = "";

    private string UnitsKey => $"dripwright-{here.Id}-units";

    private string MeterKey => $"dripwright-{here.Id}-meter";

    private string NameKey => $"dripwright-{here.Id}-who";

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
        Meter = await js.InvokeAsync<string?>("localStorage.getItem", MeterKey) ?? "";
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

    /// <summary>Remembers what the meter shows.</summary>
    /// <param name="meter">Its short name.</param>
    public async Task ChooseMeter(string meter)
    {
        Meter = meter;
        await js.InvokeVoidAsync("localStorage.setItem", MeterKey, meter);
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
