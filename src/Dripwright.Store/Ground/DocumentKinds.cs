namespace Dripwright.Store.Ground;

/// <summary>Kinds of document that a garden keeps. Later rooms add theirs: any short word will do.</summary>
public static class DocumentKinds
{
    /// <summary>A rig file.</summary>
    public const string Rig = "rig";

    /// <summary>The user's own catalogue; a garden has exactly one.</summary>
    public const string Catalogue = "catalogue";

    /// <summary>Parts on hand, in the shape of a rig file's <c>onHand</c>; a garden has exactly one.</summary>
    public const string OnHand = "on-hand";

    /// <summary>Whether it is a word that can name a kind.</summary>
    /// <param name="kind">The word.</param>
    public static bool IsKind(string? kind) =>
        kind is { Length: > 0 and <= 40 } && kind.All(letter => letter is (>= 'a' and <= 'z') or '-');

    /// <summary>Whether a garden has exactly one document of the kind.</summary>
    /// <param name="kind">The kind.</param>
    public static bool IsSingle(string kind) => kind is Catalogue or OnHand;
}
