using Dripwright.Language;
using Dripwright.Store.Ground;

namespace Dripwright.Store;

/// <summary>What somebody does to a garden, where not everybody may do everything.</summary>
public enum GardenAct
{
    /// <summary>Counts the parts on hand.</summary>
    Count,

    /// <summary>Writes a brief and has setups suggested.</summary>
    Suggest,

    /// <summary>Changes rigs, the own catalogue and the settings; imports; puts into the bin and takes out of it.</summary>
    Edit,

    /// <summary>Takes the whole garden away: an export or a backup.</summary>
    TakeAway,

    /// <summary>Puts a backup in the place of the garden.</summary>
    Restore,

    /// <summary>Deletes for good what lies in the bin.</summary>
    EmptyBin,
}

/// <summary>Whose hand it is that changes a garden, and what that may do. See <see cref="Garden.As"/>.</summary>
/// <param name="who">The name that steps and revisions carry; empty where nobody says who they are.</param>
/// <param name="may">Whether it may do something just now. It is asked each time, so that a right that is taken away ends at once.</param>
public sealed class GardenHand(string who, Func<GardenAct, bool> may)
{
    /// <summary>The kind of document under which a garden keeps its briefs.</summary>
    public const string Brief = "brief";

    /// <summary>The hand of this machine's own grower: it has no name and may do everything.</summary>
    public static GardenHand Any { get; } = new("", _ => true);

    /// <summary>The name that steps and revisions carry; empty where nobody says who they are.</summary>
    public string Who => who;

    /// <summary>What changing a document of a kind is.</summary>
    /// <param name="kind">The kind; see <see cref="DocumentKinds"/>.</param>
    public static GardenAct ActOn(string kind) =>
        kind switch
        {
            DocumentKinds.OnHand => GardenAct.Count,
            Brief => GardenAct.Suggest,
            _ => GardenAct.Edit,
        };

    /// <summary>Why it may not do something; null where it may.</summary>
    internal string? Refusal(GardenAct act) => may(act) ? null : Words.Of("store.not-allowed");

    /// <summary>Goes on only where it may.</summary>
    /// <exception cref="GardenException">It may not; nothing was done.</exception>
    internal void Need(GardenAct act)
    {
        if (Refusal(act) is { } why)
        {
            throw new GardenException(TroubleKind.NotAllowed, why);
        }
    }
}
