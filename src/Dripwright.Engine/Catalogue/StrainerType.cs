using Dripwright.Engine.Files;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Catalogue;

/// <summary>A strainer or filter in the feed.</summary>
public sealed record StrainerType : CatalogueEntry
{
    /// <summary>[m] Opening of the mesh.</summary>
    [Quantity(Dimension.Length, "0.005 mm", "5 mm"), Says("Opening of the mesh.")]
    public required double Opening { get; init; }

    /// <summary>[-] Loss coefficient on the header's velocity when clean; zero for a bag round the pump.</summary>
    [Number(0, 1000, Assumed = 0), Says("Loss coefficient when clean, on the header's velocity.")]
    public double Loss { get; init; }
}
