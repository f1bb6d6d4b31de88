namespace Dripwright.Engine.Files;

/// <summary>PartGroup of the catalogue in which a key must stand.</summary>
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

    /// <summary>Strainers; "none" is allowed.</summary>
    Strainers,

    /// <summary>Pumps; "none" is allowed.</summary>
    Pumps,

    /// <summary>Pot outlets.</summary>
    Outlets,

    /// <summary>Crop wires; "none" is allowed.</summary>
    Wires,

    /// <summary>Fertiliser salts.</summary>
    Salts,

    /// <summary>Acids; "none" is allowed.</summary>
    Acids,

    /// <summary>What feeds should hold; "usual" is allowed.</summary>
    Targets,

    /// <summary>Crops; "none" is allowed.</summary>
    Crops,

    /// <summary>Any entry of any shelf.</summary>
    Any,
}
