namespace Dripwright.Engine.Chemistry.Formulas;

/// <summary>Groups of atoms by which a formula tells in what form an element stands.</summary>
internal enum AtomGroup
{
    /// <summary>NO3</summary>
    Nitrate,

    /// <summary>NH4 or NH3</summary>
    Ammonium,

    /// <summary>PO4 with any hydrogen before it</summary>
    Phosphate,

    /// <summary>SO4</summary>
    Sulfate,

    /// <summary>CO3</summary>
    Carbonate,
}
