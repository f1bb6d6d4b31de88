using System.Formats.Asn1;
using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Dripwright.Workbench.Setup;

namespace Dripwright.Workbench.Encryption;

/// <summary>What an authority may sign for (RFC 5280, section 4.2.1.10). The platform reads and checks them, but has no class that writes them.</summary>
/// <remarks>
/// Once one name of a kind is permitted, all others of that kind are excluded. Mail addresses and URIs are shut by permitting only a name that
/// nobody can have (RFC 6761 keeps "invalid" for that): excluding "everything" has no spelling that all readers share.
/// </remarks>
internal static class NameConstraints
{
    private const string Id = "2.5.29.30";
    private const string Nobody = "none.invalid";

    // Kinds of GeneralName, and the permitted part.
    private static readonly Asn1Tag s_permitted = new(TagClass.ContextSpecific, 0);
    private static readonly Asn1Tag s_mail = new(TagClass.ContextSpecific, 1);
    private static readonly Asn1Tag s_dns = new(TagClass.ContextSpecific, 2);
    private static readonly Asn1Tag s_uri = new(TagClass.ContextSpecific, 6);
    private static readonly Asn1Tag s_address = new(TagClass.ContextSpecific, 7);

    /// <summary>The critical extension that permits these names with those under them, and private addresses.</summary>
    /// <param name="names">Names in ASCII.</param>
    public static X509Extension Of(IEnumerable<string> names)
    {
        var to = new AsnWriter(AsnEncodingRules.DER);
        using (to.PushSequence())
        using (to.PushSequence(s_permitted))
        {
            foreach (var name in names)
            {
                Text(to, s_dns, name);
            }

            foreach (var range in PrivateNetwork.Ranges)
            {
                using (to.PushSequence())
                {
                    to.WriteOctetString([.. range.BaseAddress.GetAddressBytes(), .. Mask(range)], s_address);
                }
            }

            Text(to, s_mail, Nobody);
            Text(to, s_uri, Nobody);
        }

        return new X509Extension(Id, to.Encode(), critical: true);
    }

    /// <summary>The names that an authority may sign for; none where it says nothing of them.</summary>
    public static IReadOnlyList<string> Names(X509Certificate2 authority)
    {
        if (authority.Extensions.FirstOrDefault(one => one.Oid?.Value == Id) is not { } found)
        {
            return [];
        }

        List<string> names = [];
        try
        {
            var permitted = new AsnReader(found.RawData, AsnEncodingRules.DER).ReadSequence().ReadSequence(s_permitted);
            while (permitted.HasData)
            {
                var subtree = permitted.ReadSequence();
                if (subtree.PeekTag() == s_dns)
                {
                    names.Add(subtree.ReadCharacterString(UniversalTagNumber.IA5String, s_dns));
                }
            }
        }
        catch (AsnContentException damaged)
        {
            throw new CryptographicException("The name constraints cannot be read.", damaged);
        }

        return names;
    }

    private static void Text(AsnWriter to, Asn1Tag kind, string text)
    {
        using (to.PushSequence())
        {
            to.WriteCharacterString(UniversalTagNumber.IA5String, text, kind);
        }
    }

    private static byte[] Mask(IPNetwork range)
    {
        var mask = new byte[range.BaseAddress.GetAddressBytes().Length];
        for (var bit = 0; bit < range.PrefixLength; bit++)
        {
            mask[bit / 8] |= (byte)(0x80 >> (bit % 8));
        }

        return mask;
    }
}
