using System.Globalization;

namespace Dripwright.Language;

/// <summary>The languages there are texts of, and which of them a reader is told in.</summary>
public static class Languages
{
    /// <summary>Names of the languages there are texts of, as an HTML document names them.</summary>
    public static IReadOnlyList<string> All { get; } = Texts.Languages();

    /// <summary>The culture of a language there are texts of; null where there are none.</summary>
    /// <param name="name">Name of a language, with or without a country: <c>en</c>, <c>en-GB</c> or <c>en_GB.UTF-8</c>.</param>
    public static CultureInfo? Find(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        var plain = name.Split('.', '@')[0].Replace('_', '-').Trim();
        var isKnown =
            plain.Equals(Pseudo.Culture, StringComparison.OrdinalIgnoreCase)
            || All.Contains(plain.Split('-')[0], StringComparer.OrdinalIgnoreCase);
        try
        {
            return isKnown ? CultureInfo.GetCultureInfo(plain) : null;
        }
        catch (CultureNotFoundException)
        {
            // A name that no system would give.
            return null;
        }
    }

    /// <summary>The language that the environment of a program asks for; English where it asks for none there is.</summary>
    /// <param name="variable">Gives a variable of the environment by its name, or null.</param>
    /// <remarks>In the order of POSIX: <c>LC_ALL</c>, <c>LC_MESSAGES</c>, <c>LANG</c>; the first that is set counts.</remarks>
    public static CultureInfo OfEnvironment(Func<string, string?> variable)
    {
        ArgumentNullException.ThrowIfNull(variable);
        string[] names = ["LC_ALL", "LC_MESSAGES", "LANG"];
        var asked = names.Select(variable).FirstOrDefault(text => !string.IsNullOrEmpty(text));
        return (asked is null ? null : Find(asked)) ?? English;
    }

    /// <summary>The language that a browser asks for; English where it asks for none there is.</summary>
    /// <param name="acceptLanguage">The header <c>Accept-Language</c> (RFC 9110, section 12.5.4), or null.</param>
    public static CultureInfo OfRequest(string? acceptLanguage) =>
        (acceptLanguage ?? "")
            .Split(',', MostAsked + 1, StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
            .Take(MostAsked)
            .Select(text => (Name: text.Split(';')[0].Trim(), Weight: Weight(text)))
            .Where(asked => asked.Weight > 0)
            .OrderByDescending(asked => asked.Weight)
            .Select(asked => Find(asked.Name))
            .FirstOrDefault(culture => culture is not null)
        ?? English;

    // Nobody reads more languages than that.
    private const int MostAsked = 20;

    private static CultureInfo English => CultureInfo.GetCultureInfo("en");

    private static double Weight(string asked)
    {
        var at = asked.IndexOf("q=", StringComparison.OrdinalIgnoreCase);
        return at < 0 ? 1
            : double.TryParse(
                asked.AsSpan(at + 2),
                NumberStyles.AllowDecimalPoint,
                CultureInfo.InvariantCulture,
                out var weight
            )
                ? weight
            : 0;
    }
}
