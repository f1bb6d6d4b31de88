using System.Text;
using Dripwright.Language;

namespace Dripwright.Store.Ground;

/// <summary>How much a garden keeps of one thing.</summary>
public static class Limits
{
    /// <summary>Most bytes of a document's text in UTF-8, as of a rig file.</summary>
    public const int TextBytes = 1 << 20;

    /// <summary>Steps of undo kept for one document, and up to 15 more; the oldest are forgotten first.</summary>
    public const int Steps = 500;

    /// <summary>Letters kept of all steps of one document together, and up to 1 Mi more; the oldest are forgotten first.</summary>
    public const int StepLetters = 16 << 20;

    /// <summary>Most letters of a name.</summary>
    public const int NameLetters = 200;

    /// <summary>Most letters of a note.</summary>
    public const int NoteLetters = 2000;

    /// <summary>Greatest number that a document, a step or a version of a draft has. A version that comes to it begins anew at 1.</summary>
    public const int Number = 1_000_000_000;

    /// <summary>Most bytes of a garden file that is exported or imported.</summary>
    public const long GardenFileBytes = 256L << 20;

    /// <summary>Why a document's text cannot be kept; null where it can.</summary>
    internal static string? TextFault(string text) =>
        Encoding.UTF8.GetByteCount(text) > TextBytes ? Words.Of("store.limit.text") : LettersFault(text);

    /// <summary>Why a name cannot be kept; null where it can.</summary>
    internal static string? NameFault(string name) =>
        string.IsNullOrWhiteSpace(name) ? Words.Of("store.limit.no-name")
        : name.Any(char.IsControl) ? Words.Of("store.limit.control")
        : Long(name, NameLetters, "store.limit.name");

    /// <summary>Why a note, a person's name or what a change was cannot be kept; null where it can.</summary>
    internal static string? NoteFault(string note) => Long(note, NoteLetters, "store.limit.note");

    private static string? Long(string text, int most, string what) =>
        text.Length > most ? Words.Of(what, text.Length, most) : LettersFault(text);

    // Not every database can give these back as they were, so none takes them.
    private static string? LettersFault(string text) =>
        text.Contains('\0', StringComparison.Ordinal) || HasLoneSurrogate(text)
            ? Words.Of("store.limit.character")
            : null;

    private static bool HasLoneSurrogate(string text)
    {
        for (var at = 0; at < text.Length; at++)
        {
            if (char.IsSurrogatePair(text, at))
            {
                at++;
            }
            else if (char.IsSurrogate(text[at]))
            {
                return true;
            }
        }

        return false;
    }
}
