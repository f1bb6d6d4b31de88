using System.CommandLine;
using Dripwright.Language;
using Dripwright.Terminal;
using Dripwright.Workbench.Encryption;
using Dripwright.Workbench.Setup;

namespace Dripwright.Commands;

/// <summary>Options of <c>open</c> about who encrypts: a certificate, or a proxy before the workbench.</summary>
/// <param name="around">Gives the environment's variables: what the call does not say, they may.</param>
internal sealed class EncryptionOptions(Surroundings around)
{
    private const string CertificateVariable = "DRIPWRIGHT_CERTIFICATE";
    private const string KeyVariable = "DRIPWRIGHT_CERTIFICATE_KEY";
    private const string ProxyVariable = "DRIPWRIGHT_TRUSTED_PROXY";

    private readonly Option<string?> _certificate = new("--certificate")
    {
        Description = Words.Of("program.open.certificate", CertificateVariable),
        HelpName = Words.Of("program.name.file"),
    };

    private readonly Option<string?> _key = new("--certificate-key")
    {
        Description = Words.Of("program.open.certificate-key", KeyVariable),
        HelpName = Words.Of("program.name.file"),
    };

    private readonly Option<string[]> _proxies = new("--trusted-proxy")
    {
        Description = Words.Of("program.open.trusted-proxy", ProxyVariable),
        HelpName = Words.Of("program.name.address"),
    };

    public IEnumerable<Option> All => [_certificate, _key, _proxies];

    /// <summary>The proxies that are believed.</summary>
    /// <param name="call">The call.</param>
    /// <param name="isOpen">Whether everybody signs in: who comes through a proxy looks as if they sat at this machine.</param>
    public IReadOnlyList<System.Net.IPNetwork> Proxies(ParseResult call, bool isOpen)
    {
        var said = call.GetValue(_proxies) is { Length: > 0 } given
            ? given
            : (around.Variable(ProxyVariable) ?? "").Split(
                [',', ' '],
                StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries
            );
        if (said.Length > 0 && !isOpen)
        {
            throw new Refusal(Exit.WrongCall, Wrong.Told(Words.Of("program.open.proxy-alone")));
        }

        return Told(() => TrustedProxies.Read(said), Exit.WrongCall);
    }

    /// <summary>
    /// Where the certificate lies: as the call says, or the environment; else the garden's own where the workbench opens to the network by
    /// itself. Null for none.
    /// </summary>
    public CertificatePlace? Certificate(ParseResult call, string dataFolder, bool isOpen, bool isBehindProxy)
    {
        var file = call.GetValue(_certificate) ?? around.Variable(CertificateVariable);
        var key = call.GetValue(_key) ?? around.Variable(KeyVariable);
        if (!string.IsNullOrWhiteSpace(file))
        {
            return new CertificatePlace(
                file,
                string.IsNullOrWhiteSpace(key) ? null : key,
                around.Variable("DRIPWRIGHT_CERTIFICATE_PASSPHRASE")
            );
        }

        if (!string.IsNullOrWhiteSpace(key))
        {
            throw new Refusal(Exit.WrongCall, Wrong.Told(Words.Of("program.open.key-alone")));
        }

        var own = new OwnCertificate(dataFolder);
        return isOpen && !isBehindProxy && own.Exists ? own.Place : null;
    }

    /// <summary>Does something with certificates; what is wrong with them is a refusal in one line.</summary>
    public static T Told<T>(Func<T> work, int exit)
    {
        try
        {
            return work();
        }
        catch (EncryptionException wrong)
        {
            throw new Refusal(exit, Wrong.Told(wrong.Message));
        }
    }
}
