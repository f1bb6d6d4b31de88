using Dripwright.Engine.Findings;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Parts;

/// <summary>One line of the parts list.</summary>
/// <param name="Part">Catalogue key.</param>
/// <param name="Name">What to call it in a shop.</param>
/// <param name="Section">Key of the section of the shop: plumbing, irrigation, hardware, electrical, tools, garden, nutrients, printed.</param>
/// <param name="Where">What it is for: "drain elbow of every pot".</param>
/// <param name="Needed">Pieces the rig takes; for things cut from stock, stock lengths.</param>
/// <param name="Spares">Pieces kept as spares.</param>
/// <param name="OnHand">Pieces the grower has and that are used.</param>
/// <param name="Buy">Pieces to buy, whole packs.</param>
/// <param name="Packs">Packs to buy.</param>
/// <param name="PackSize">Pieces in a pack.</param>
/// <param name="EachLength">[m] Length of each piece of stock or coil; 0 for pieces.</param>
/// <param name="Price">Price of all packs; null where unknown.</param>
/// <param name="InventedPrice">True where the price is a made-up typical one.</param>
/// <param name="Note">What to mind: "measure yours", "cut on site".</param>
/// <param name="Unit">What is counted: "g" or "mL" of a salt or acid, empty for pieces.</param>
public sealed record PartLine(
    string Part,
    Phrase Name,
    string Section,
    Phrase Where,
    int Needed,
    int Spares,
    int OnHand,
    int Buy,
    int Packs,
    int PackSize,
    double EachLength,
    decimal? Price,
    bool InventedPrice,
    Phrase Note,
    string Unit = ""
)
{
    /// <summary>What the section is called; a section of the grower's own catalogue by its own name.</summary>
    public Phrase SectionName => PartLines.NameOf(Section);
}

/// <summary>Something that is often forgotten, with whether this rig needs it.</summary>
/// <param name="Name">What.</param>
/// <param name="Why">What for, and how many or which size here.</param>
public sealed record OftenForgotten(Phrase Name, Phrase Why);

/// <summary>One hole to make, in one piece of pipe after cutting.</summary>
/// <param name="Piece">Label of the piece.</param>
/// <param name="Run">Label of the run.</param>
/// <param name="Number">Hole of the run, from 1 at the left end.</param>
/// <param name="FromEnd">[m] Along the pipe from the piece's left end to the hole's centre.</param>
/// <param name="Step">[m] From the last mark on this piece; from its end for the first.</param>
/// <param name="Diameter">[m] Diameter.</param>
/// <param name="Tool">Tool that makes it, with its size.</param>
/// <param name="Face">Where round the pipe.</param>
/// <param name="Pot">Pot of the row it serves; 0 for a siphon break.</param>
/// <param name="Row">Row; 0 in the header.</param>
public sealed record HoleMark(
    string Piece,
    string Run,
    int Number,
    double FromEnd,
    double Step,
    double Diameter,
    Phrase Tool,
    HoleFace Face,
    int Pot,
    int Row
)
{
    /// <summary>True where a hole saw makes it, which needs a pilot hole.</summary>
    public bool IsSawn => Tool.Key == HoleTool.Saw;
}

/// <summary>Holes in the pots themselves.</summary>
/// <param name="Pot">Kind of pot.</param>
/// <param name="Count">Pots to drill.</param>
/// <param name="Height">[m] Of the hole's centre over the pot's base.</param>
/// <param name="Diameter">[m] Diameter: the outside of the fitting or seal.</param>
/// <param name="Tool">Tool that makes it, with its size.</param>
public sealed record PotHole(string Pot, int Count, double Height, double Diameter, Phrase Tool);

/// <summary>Where round a pipe a hole is made.</summary>
public enum HoleFace
{
    /// <summary>On top.</summary>
    Top,

    /// <summary>Underneath.</summary>
    Underside,

    /// <summary>In the side, over the water.</summary>
    SideOverWater,
}

/// <summary>Something that cannot be cut, counted or marked.</summary>
/// <param name="Where">The piece, material or hole.</param>
/// <param name="What">What is wrong with it, as a sentence.</param>
public sealed record CutTrouble(Place Where, Phrase What);

/// <summary>What everything costs.</summary>
/// <param name="Known">Sum of the lines with a price.</param>
/// <param name="LinesPriced">Lines to buy that have a price.</param>
/// <param name="LinesUnpriced">Lines to buy that have none.</param>
/// <param name="AnyInvented">True when a made-up typical price is in the sum.</param>
public sealed record CostSum(decimal Known, int LinesPriced, int LinesUnpriced, bool AnyInvented);

/// <summary>Parts, cuts and holes.</summary>
/// <remarks>Method pages: docs/methods/parts.md, cutting.md, holes.md</remarks>
/// <param name="Lines">Everything to have, by section.</param>
/// <param name="Cuts">A cut plan for each material that is cut from stock.</param>
/// <param name="CutTroubles">What could not be cut or marked.</param>
/// <param name="Holes">Every hole in pipes.</param>
/// <param name="PotHoles">Holes in pots.</param>
/// <param name="Forgotten">The block of what is often forgotten.</param>
/// <param name="Cost">The sum, nutrients with it.</param>
/// <param name="NutrientsCost">The part of it that is for the salts and acid of the first fill.</param>
/// <param name="Currency">Three capital letters: the catalogue's currency, in which every price is.</param>
public sealed record PartsPlan(
    IReadOnlyList<PartLine> Lines,
    IReadOnlyList<CutPlan> Cuts,
    IReadOnlyList<CutTrouble> CutTroubles,
    IReadOnlyList<HoleMark> Holes,
    IReadOnlyList<PotHole> PotHoles,
    IReadOnlyList<OftenForgotten> Forgotten,
    CostSum Cost,
    CostSum NutrientsCost,
    string Currency
)
{
    /// <summary>The cuts as they were planned, for counting other parts anew; null in a plan that was put together by hand.</summary>
    internal CutList? Cutting { get; init; }
}
