using Dripwright.Engine.Files;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Catalogue;

/// <summary>One kind of piece that a medium is bought in.</summary>
public sealed record MediumBag
{
    /// <summary>Key of the piece.</summary>
    [PartKey(PartGroup.Sundries), Says("Key of the bag, block or slab under \"sundries\".")]
    public string Part { get; init; } = "";

    /// <summary>[m³] Volume of pots that one fills, of a mix with its share of the other piece.</summary>
    [Quantity(Dimension.Volume, "0.1 L", "1000 L"), Says("Volume of pots that one of them fills.")]
    public double Fills { get; init; }
}

/// <summary>What a pot is filled with.</summary>
/// <remarks>Shares are of the pot's volume, drained under its own weight. Method page: docs/methods/dose.md</remarks>
public sealed record MediumType : CatalogueRow
{
    /// <summary>[-] Air after draining: what water fills and leaves freely.</summary>
    [Number(0, 1), Says("Share of its volume that is air once it has drained.")]
    public required double Air { get; init; }

    /// <summary>[-] Water held after draining.</summary>
    [Number(0, 1), Says("Share of its volume that is water once it has drained.")]
    public required double Water { get; init; }

    /// <summary>[-] Water that roots take easily.</summary>
    [Number(0, 1), Says("Share of its volume that is water which roots take easily.")]
    public required double EasyWater { get; init; }

    /// <summary>[s] Least rest between two waterings, so that air comes back; 0 where it may be dripped round the clock.</summary>
    [
        Quantity(Dimension.Duration, "0 s", "24 h", Us = "0 s"),
        Says("Least rest between two waterings; 0 where none is needed.")
    ]
    public double Rest { get; init; }

    /// <summary>[-] Share of coir in it: what is washed and buffered when it is raw.</summary>
    [Number(0, 1, Assumed = 0), Says("Share of coir in it.")]
    public double Coir { get; init; }

    /// <summary>How it is made ready.</summary>
    [Text(300), Says("How it is made ready before it goes into the pots.")]
    public string Rinse { get; init; } = "";

    /// <summary>What it is bought in.</summary>
    [Items(0, 5), Says("What it is bought in.")]
    public IReadOnlyList<MediumBag> Bags { get; init; } = [];
}
