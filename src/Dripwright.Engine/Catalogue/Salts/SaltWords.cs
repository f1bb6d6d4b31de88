namespace Dripwright.Engine.Catalogue.Salts;

/// <summary>What a fertiliser is, by the way it is handled.</summary>
public enum SaltKind
{
    /// <summary>A plain salt.</summary>
    Salt,

    /// <summary>A metal held in a chelate; keep it in its pH range and away from acid.</summary>
    Chelate,

    /// <summary>An acid: into water, never water into it.</summary>
    Acid,

    /// <summary>A base, to raise the pH.</summary>
    Base,
}

/// <summary>In which of two concentrates a fertiliser may stand.</summary>
public enum StockPart
{
    /// <summary>With calcium: never with sulfate or phosphate.</summary>
    A,

    /// <summary>With sulfate or phosphate: never with calcium.</summary>
    B,

    /// <summary>In either.</summary>
    Either,

    /// <summary>In no concentrate: it brings calcium and sulfate or phosphate together.</summary>
    Neither,
}

/// <summary>How sure a figure is.</summary>
public enum Sureness
{
    /// <summary>Read in the source named.</summary>
    Published,

    /// <summary>Read where someone quotes the source named.</summary>
    SecondHand,

    /// <summary>From memory of the source named, not looked up again.</summary>
    Memory,

    /// <summary>What growers commonly do; nobody in particular says it.</summary>
    Practice,
}
