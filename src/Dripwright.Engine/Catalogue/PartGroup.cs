namespace Dripwright.Engine.Catalogue;

/// <summary>Groups of the catalogue from which a field takes its key.</summary>
public enum PartGroup
{
    /// <summary>Pipes and hoses.</summary>
    Pipes,

    /// <summary>Stand tubes.</summary>
    Tubes,

    /// <summary>Pots.</summary>
    Pots,

    /// <summary>Reservoirs.</summary>
    Tanks,

    /// <summary>Emitters.</summary>
    Emitters,

    /// <summary>Strainers.</summary>
    Strainers,

    /// <summary>Pumps.</summary>
    Pumps,

    /// <summary>Pot outlets.</summary>
    Outlets,

    /// <summary>Crop wires.</summary>
    Wires,

    /// <summary>Small parts and tools, pieces of other parts among them.</summary>
    Sundries,

    /// <summary>Fertiliser salts, bases among them; no acids.</summary>
    Salts,

    /// <summary>Acids.</summary>
    Acids,

    /// <summary>What nutrient solutions should hold.</summary>
    Targets,

    /// <summary>Crops.</summary>
    Crops,

    /// <summary>What pots are filled with.</summary>
    Media,

    /// <summary>Any part of any group.</summary>
    Any,
}
