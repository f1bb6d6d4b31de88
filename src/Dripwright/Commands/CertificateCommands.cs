using System.CommandLine;
using System.Globalization;
using System.Net;
using Dripwright.Language;
using Dripwright.Store.Ground;
using Dripwright.Terminal;
using Dripwright.Workbench.Encryption;

namespace Dripwright.Commands;

/// <summary><c>make-certificate</c>, <c>renew-certificate</c> and <c>certificate</c>: a certificate of the garden's own.</summary>
internal static class CertificateCommands
{
    /// <summary>Where the certificate, the log and the keys lie, wherever the garden is kept.</summary>
    public static string DataFolder(Surroundings around) =>
        around.Variable("DRIPWRIGHT_DATA") is { Length: > 0 } given
            ? Path.GetFullPath(given)
            : Path.GetDirectoryName(GardenPlace.Usual().Path)!;

    public static Command Make(Surroundings around)
    {
        var (knownAs, at) = (KnownAs(), At());
        var discard = new Option<bool>("--discard-key") { Description = Words.Of("program.certificate.discard") };
        var replace = new Option<bool>("--replace") { Description = Words.Of("program.certificate.replace") };
        var command = new Command("make-certificate", Words.Of("program.make-certificate"))
        {
            knownAs,
            at,
            discard,
            replace,
        };
        command.SetAction(call =>
        {
            var own = new OwnCertificate(DataFolder(around));
            if (own.Exists && !call.GetValue(replace))
            {
                throw new Refusal(Exit.NotWritten, Wrong.Told(Words.Of("program.certificate.there")));
            }

            return Done(
                around,
                own,
                () =>
                    own.Make(
                        OwnCertificate.UsualNames().Concat(call.GetValue(knownAs) ?? []),
                        Addresses(call.GetValue(at)) ?? OwnCertificate.UsualAddresses(),
                        call.GetValue(discard)
                    )
            );
        });
        return command;
    }

    public static Command Renew(Surroundings around)
    {
        var (knownAs, at) = (KnownAs(), At());
        var command = new Command("renew-certificate", Words.Of("program.renew-certificate")) { knownAs, at };
        command.SetAction(call =>
        {
            var own = new OwnCertificate(DataFolder(around));
            return Done(
                around,
                own,
                () => own.Renew(call.GetValue(knownAs), Addresses(call.GetValue(at)) ?? OwnCertificate.UsualAddresses())
            );
        });
        return command;
    }

    public static Command Tell(Surroundings around)
    {
        var command = new Command("certificate", Words.Of("program.certificate"));
        command.SetAction(_ => Tell(around, new OwnCertificate(DataFolder(around))));
        return command;
    }

    private static int Done(Surroundings around, OwnCertificate own, Action work)
    {
        EncryptionOptions.Told(
            () =>
            {
                work();
                return true;
            },
            Exit.NotWritten
        );
        return Tell(around, own);
    }

    private static int Tell(Surroundings around, OwnCertificate own)
    {
        var told = EncryptionOptions.Told(own.Tell, Exit.FaultyFile);
        if (told is null)
        {
            around.Out.WriteLine(Words.Of("encryption.own.none"));
            return Exit.Good;
        }

        around.Out.WriteLine(
            Words.Of(
                "program.certificate.is",
                string.Join(", ", told.Names.Concat(told.Addresses.Select(one => one.ToString()))),
                Day(told.Until)
            )
        );
        around.Out.WriteLine(Words.Of(own.CanRenew ? "program.certificate.renews" : "program.certificate.discarded"));
        around.Out.WriteLine(Words.Of("program.certificate.authority", own.AuthorityFile, Day(told.AuthorityUntil)));
        around.Out.WriteLine(Words.Of("program.certificate.fingerprint"));
        around.Out.WriteLine("  " + told.Fingerprint);
        foreach (var concern in told.Concerns)
        {
            around.Out.WriteLine(Words.Of("program.certificate.concern", concern));
        }

        around.Out.WriteLine(Words.Of("program.certificate.next"));
        return Exit.Good;
    }

    private static Option<string[]> KnownAs() =>
        new("--known-as")
        {
            Description = Words.Of("program.certificate.known-as"),
            HelpName = Words.Of("program.name.name"),
        };

    private static Option<string[]> At()
    {
        var at = new Option<string[]>("--at")
        {
            Description = Words.Of("program.certificate.at"),
            HelpName = Words.Of("program.name.address"),
        };
        at.Validators.Add(result =>
        {
            foreach (var token in result.Tokens.Where(token => !IPAddress.TryParse(token.Value, out _)))
            {
                result.Refuse(
                    Words.Of("program.option.wrong", "--at", token.Value, Words.Of("program.certificate.at.expected"))
                );
            }
        });
        return at;
    }

    private static IReadOnlyList<IPAddress>? Addresses(string[]? said) =>
        said is { Length: > 0 } ? [.. said.Select(IPAddress.Parse)] : null;

    private static string Day(DateTime at) => at.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
