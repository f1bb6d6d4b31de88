using Microsoft.AspNetCore.Components.Server.Circuits;

namespace Dripwright.Workbench.Hosting;

/// <summary>The number of an open page: the beginning of the id under which the log tells of a page that broke down.</summary>
internal sealed class PageNumber : CircuitHandler
{
    private const int Letters = 10;

    /// <summary>Long enough not to come twice; empty before the page is open.</summary>
    public string Value { get; private set; } = "";

    public override Task OnCircuitOpenedAsync(Circuit circuit, CancellationToken cancellationToken)
    {
        Value = circuit.Id[..Letters];
        return Task.CompletedTask;
    }
}
