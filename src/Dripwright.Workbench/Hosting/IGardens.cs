using Microsoft.AspNetCore.Http;

namespace Dripwright.Workbench.Hosting;

/// <summary>The gardens that this server opens.</summary>
internal interface IGardens : IAsyncDisposable
{
    /// <summary>All of them.</summary>
    IReadOnlyList<ServedGarden> All { get; }

    /// <summary>The garden that a request is about; null where there is none for it.</summary>
    /// <param name="context">The request.</param>
    ServedGarden? Of(HttpContext context);
}

/// <summary>One garden for every request: that of the grower who opened the workbench.</summary>
internal sealed class OneGarden(ServedGarden garden) : IGardens
{
    public IReadOnlyList<ServedGarden> All { get; } = [garden];

    public ServedGarden? Of(HttpContext context) => garden;

    public ValueTask DisposeAsync() => garden.DisposeAsync();
}
