using System.Globalization;
using Dripwright.Engine.Files;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Units;

namespace Dripwright.Language;

/// <summary>A fault of a file in words, in one language.</summary>
/// <param name="File">Name of the file.</param>
/// <param name="Path">Path of the field, such as <c>rows[0].spacing</c>; empty for the file as a whole.</param>
/// <param name="Line">Line, counted from 1.</param>
/// <param name="Column">Character in the line, counted from 1.</param>
/// <param name="Found">What stands there.</param>
/// <param name="Expected">What is allowed there.</param>
/// <param name="Nearest">What was most likely meant; null where nothing is near.</param>
/// <param name="IsNearestBare">True where what was meant is a number, which a file writes without quotes.</param>
public sealed record ToldFault(
    string File,
    string Path,
    int Line,
    int Column,
    string Found,
    string Expected,
    string? Nearest,
    bool IsNearestBare
)
{
    /// <summary>What was found and what is expected, for a page that shows the place beside it and offers what was meant.</summary>
    public string Problem() => Words.Of("form.fault", Found, Expected);

    /// <summary>The same with what was most likely meant.</summary>
    public string Sentence() =>
        Nearest is null
            ? Problem()
            : $"{Problem()} {Words.Of(IsNearestBare ? "form.nearest-number" : "form.nearest", Nearest)}";

    /// <summary>The fault in one line, such as <c>school.rig.json:14:17 rows[0].spacing: found "1 foots"; expected a length such as "1 ft" or "30 cm"; did you mean "1 ft"?</c></summary>
    public override string ToString()
    {
        var place = string.Create(CultureInfo.InvariantCulture, $"{File}:{Line}:{Column}");
        var line =
            Path.Length == 0
                ? Words.Of("fault.line-of-file", place, Found, Expected)
                : Words.Of("fault.line", place, Path, Found, Expected);
        return Nearest is null ? line : Words.Of(IsNearestBare ? "fault.nearest-bare" : "fault.nearest", line, Nearest);
    }
}

/// <summary>Makes words of faults, in the language of the reader at hand.</summary>
public static class FaultTelling
{
    // A fault's amounts are those of its file or of chemistry: the reader's units change none.
    private static readonly PlanWords s_words = new(UnitSystem.Metric);

    /// <summary>A fault in words.</summary>
    /// <param name="fault">The fault.</param>
    public static ToldFault Told(this Fault fault)
    {
        ArgumentNullException.ThrowIfNull(fault);
        return new ToldFault(
            fault.File,
            fault.Path,
            fault.Line,
            fault.Column,
            s_words.Of(fault.Found),
            s_words.Of(fault.Expected),
            fault.Nearest,
            fault.IsNearestBare
        );
    }

    /// <summary>Faults in words, in their order.</summary>
    /// <param name="faults">The faults.</param>
    public static IReadOnlyList<ToldFault> Told(this IEnumerable<Fault> faults) => [.. faults.Select(Told)];

    /// <summary>What was done to a file of an older format, in words, step by step.</summary>
    /// <param name="steps">What was done.</param>
    public static IReadOnlyList<string> Told(this IEnumerable<Phrase> steps) => [.. steps.Select(s_words.Of)];
}
