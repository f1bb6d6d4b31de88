namespace Dripwright.Store;

/// <summary>What kind of thing happened in a garden.</summary>
public enum GardenEvent
{
    /// <summary>A draft changed: typed, undone, redone or gone back to.</summary>
    Draft,

    /// <summary>A revision was saved.</summary>
    Revision,

    /// <summary>Documents came, went or got another name.</summary>
    List,

    /// <summary>The settings changed.</summary>
    Settings,

    /// <summary>Everything may be different: a backup was restored, or a garden file imported.</summary>
    All,
}

/// <summary>Told to the other pages of the same process after something was kept.</summary>
/// <param name="Event">What happened.</param>
/// <param name="DocumentId">The document; 0 where it is the garden as a whole.</param>
/// <param name="Version">The draft's version now; a page that shows it already need not read again.</param>
public sealed record GardenChange(GardenEvent Event, int DocumentId, int Version);
