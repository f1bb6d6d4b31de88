using System.Globalization;
using System.Net;
using Dripwright.Language;

namespace Dripwright.Workbench.Encryption;

/// <summary>Something about the certificate that its owner must hear, best before anybody is shut out.</summary>
/// <param name="Key">Key of its text.</param>
/// <param name="Values">What stands in the text.</param>
/// <param name="ShutsOut">Whether browsers refuse the workbench already.</param>
internal sealed record Concern(string Key, object[] Values, bool ShutsOut)
{
    // What renews a certificate that was given has done so by then: it comes a third of 90 days ahead as a rule.
    private static readonly TimeSpan s_given = TimeSpan.FromDays(21);
    private static readonly TimeSpan s_own = TimeSpan.FromDays(30);

    // Every phone must trust a new authority: that takes a while.
    private static readonly TimeSpan s_discarded = TimeSpan.FromDays(60);

    /// <summary>In the reader's words.</summary>
    public string Text => Words.Of(Key, Values);

    /// <summary>All there is to say of a certificate.</summary>
    /// <param name="certificate">The certificate.</param>
    /// <param name="own">The garden's own, where it is that one; else null.</param>
    /// <param name="knownAs">Names that the grower said the machine has.</param>
    /// <param name="addresses">Addresses that it has now.</param>
    /// <param name="now">The time, UTC.</param>
    public static IReadOnlyList<Concern> Of(
        ServerCertificate certificate,
        OwnCertificate? own,
        IEnumerable<string> knownAs,
        IEnumerable<IPAddress> addresses,
        DateTime now
    )
    {
        List<Concern> all = [];
        var left = certificate.Until - now;
        var how =
            own is null ? "given"
            : own.CanRenew ? "own"
            : "discarded";
        if (left <= TimeSpan.Zero)
        {
            all.Add(new($"encryption.concern.ended.{how}", [Day(certificate.Until)], true));
        }
        else if (
            left
            < (
                own is null ? s_given
                : own.CanRenew ? s_own
                : s_discarded
            )
        )
        {
            all.Add(new($"encryption.concern.ends.{how}", [Day(certificate.Until), (int)left.TotalDays], false));
        }

        if (certificate.From > now)
        {
            all.Add(new("encryption.concern.early", [Day(certificate.From)], true));
        }

        string[] names = [.. knownAs.Where(name => !certificate.Covers(name))];
        if (names.Length > 0)
        {
            all.Add(
                new($"encryption.concern.names.{(own is null ? "given" : "own")}", [string.Join(", ", names)], false)
            );
        }

        // A certificate that was given is for names as a rule, and then nobody calls the machine by its address.
        IPAddress[] moved = own is null ? [] : [.. addresses.Except(certificate.Addresses)];
        if (moved.Length > 0)
        {
            all.Add(new("encryption.concern.moved", [string.Join(", ", moved.AsEnumerable())], false));
        }

        return all;
    }

    private static string Day(DateTime at) => at.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
