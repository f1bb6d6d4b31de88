using System.Buffers;

namespace Dripwright.Engine.Files;

/// <summary>The keys under which rows stand.</summary>
internal static class KeyText
{
    /// <summary>The word for going without a part.</summary>
    public const string None = "none";

    /// <summary>The word for what is published for crop and stage.</summary>
    public const string Usual = "usual";

    private static readonly SearchValues<char> s_letters = SearchValues.Create(
        "abcdefghijklmnopqrstuvwxyz0123456789-./"
    );

    /// <summary>True for a good key. The words that a file writes instead of a key are none.</summary>
    public static bool IsGood(string key) =>
        key is not ("" or None or Usual) && !key.AsSpan().ContainsAnyExcept(s_letters);
}
