using System.Text;

namespace Dripwright.Workbench.Household;

/// <summary>Which passphrases are taken: long ones that are not among the first anybody would try.</summary>
/// <remarks>
/// NIST SP 800-63B-4, 3.1.1.2: at least 15 letters where a passphrase is all there is, no rules on kinds of letters, and a list of
/// common ones refused. At that length the published lists are mostly padded, doubled or run-on short ones, so it is those that are
/// refused, made from a short list of our own of the commonest (from memory).
/// </remarks>
internal static class PassphraseRule
{
    public const int LeastLetters = 15;
    public const int MostLetters = 200;

    private const int LeastKinds = 5;

    // Runs of a keyboard and of counting, forwards; they are looked for backwards too.
    private static readonly string[] s_runs =
    [
        "01234567890123456789012345678901234567890",
        "abcdefghijklmnopqrstuvwxyzabcdefghijklmnopqrstuvwxyz",
        "qwertyuiopasdfghjklzxcvbnmqwertyuiopasdfghjklzxcvbnm",
        "qwertzuiopasdfghjklyxcvbnmqwertzuiopasdfghjklyxcvbnm",
        "1qaz2wsx3edc4rfv5tgb6yhn7ujm8ik9ol0p",
        "1q2w3e4r5t6y7u8i9o0p",
    ];

    // Whole sentences that everybody knows, without their spaces.
    private static readonly HashSet<string> s_known = new(StringComparer.Ordinal)
    {
        "correcthorsebatterystaple",
        "thequickbrownfoxjumpsoverthelazydog",
        "thequickbrownfox",
        "tobeornottobe",
        "maytheforcebewithyou",
        "letmeinletmein",
        "iloveyouiloveyou",
    };

    private static readonly string[] s_common =
    [
        "password",
        "passphrase",
        "passwort",
        "passw0rd",
        "p@ssword",
        "p@ssw0rd",
        "changeme",
        "welcome",
        "letmein",
        "iloveyou",
        "administrator",
        "admin",
        "default",
        "qwerty",
        "qwertz",
        "azerty",
        "dragon",
        "monkey",
        "sunshine",
        "princess",
        "football",
        "baseball",
        "superman",
        "batman",
        "master",
        "shadow",
        "secret",
        "login",
        "guest",
        "hello",
        "test",
        "summer",
        "winter",
        "spring",
        "autumn",
        "garden",
        "greenhouse",
        "grower",
        "tomato",
        "tomatoes",
        "dripwright",
    ];

    /// <summary>Why a passphrase is not taken, as the end of a text's key: short, long or common. Null where it is.</summary>
    /// <param name="passphrase">The passphrase.</param>
    /// <param name="name">Whose it would be.</param>
    public static string? Fault(string passphrase, string name)
    {
        var letters = passphrase.EnumerateRunes().Count();
        return letters < LeastLetters ? "short"
            : passphrase.Length > MostLetters ? "long"
            : IsCommon(passphrase, name) ? "common"
            : null;
    }

    private static bool IsCommon(string passphrase, string name)
    {
        var plain = Plain(passphrase);
        if (plain.Distinct().Count() < LeastKinds || s_known.Contains(plain) || s_runs.Any(run => IsRun(plain, run)))
        {
            return true;
        }

        // Taken apart into common words, the name, runs and digits: where nothing of its own is left it is one of the first to be tried.
        var own = plain;
        foreach (
            var word in s_common
                .Append(Plain(name))
                .Where(word => word.Length > 2)
                .OrderByDescending(word => word.Length)
        )
        {
            own = own.Replace(word, " ", StringComparison.Ordinal);
        }

        return own.Count(char.IsLetter) < LeastKinds;
    }

    private static bool IsRun(string plain, string run)
    {
        var backwards = new string([.. run.Reverse()]);
        return run.Contains(plain, StringComparison.Ordinal)
            || backwards.Contains(plain, StringComparison.Ordinal)
            // Most of it is one run, say with a year behind it.
            || Enumerable
                .Range(0, Math.Max(0, plain.Length - (plain.Length * 2 / 3) + 1))
                .Select(start => plain.Substring(start, plain.Length * 2 / 3))
                .Any(part =>
                    part.Length > 7
                    && (
                        run.Contains(part, StringComparison.Ordinal)
                        || backwards.Contains(part, StringComparison.Ordinal)
                    )
                );
    }

    private static string Plain(string text)
    {
        var plain = new StringBuilder();
        foreach (var letter in text.ToLowerInvariant())
        {
            if (char.IsLetterOrDigit(letter) || letter == '@')
            {
                plain.Append(letter);
            }
        }

        return plain.ToString();
    }
}
