using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;
using Dripwright.Language;

namespace Dripwright.Workbench.Encryption;

/// <summary>Names of a machine that a certificate of the garden's own may have.</summary>
internal static partial class HostName
{
    /// <summary>The name by which every machine calls itself.</summary>
    public const string Own = "localhost";

    /// <summary>Most letters of a name (RFC 1035, section 2.3.4, less the root's dot).</summary>
    private const int Longest = 253;

    /// <summary>A name as certificates write it: small letters, in ASCII.</summary>
    /// <param name="text">What somebody wrote.</param>
    /// <exception cref="EncryptionException">
    /// It is no full name. A single word is refused because permission for a name is permission for all names under it: an authority for
    /// "app" could sign for every site that ends in .app.
    /// </exception>
    public static string Read(string text)
    {
        var plain = text.Trim().ToLowerInvariant();
        if (plain == Own)
        {
            return Own;
        }

        try
        {
            plain = new IdnMapping { UseStd3AsciiRules = true }.GetAscii(plain);
        }
        catch (ArgumentException)
        {
            throw Refused(text);
        }

        return plain.Length <= Longest && FullName().IsMatch(plain) && !IPAddress.TryParse(plain, out _)
            ? plain
            : throw Refused(text);
    }

    /// <summary>The name that this machine has in the house network, as its own announcements (mDNS) give it.</summary>
    /// <param name="machine">What the machine calls itself.</param>
    /// <returns>Null where its name fits into no certificate.</returns>
    public static string? OfMachine(string machine)
    {
        try
        {
            return Read(machine.Contains('.', StringComparison.Ordinal) ? machine : machine + ".local");
        }
        catch (EncryptionException)
        {
            return null;
        }
    }

    /// <summary>Whether a name is one of those permitted, or lies under one (RFC 5280, section 4.2.1.10).</summary>
    public static bool IsWithin(string name, IEnumerable<string> permitted) =>
        permitted.Any(one => name == one || name.EndsWith("." + one, StringComparison.Ordinal));

    private static EncryptionException Refused(string text) => new(Words.Of("encryption.name.refused", text));

    [GeneratedRegex(
        @"^[a-z0-9]([a-z0-9-]{0,61}[a-z0-9])?(\.[a-z0-9]([a-z0-9-]{0,61}[a-z0-9])?)+$",
        RegexOptions.ExplicitCapture,
        1000
    )]
    private static partial Regex FullName();
}
