using System.Collections.Concurrent;
using System.Globalization;
using System.Net;
using System.Security.Cryptography;
using System.Text;
using Dripwright.Language;

namespace Dripwright.Workbench.Household;

/// <summary>
/// On a machine with several accounts every one of them reaches a loopback address. So a page in a file that only its owner can read
/// carries a token that opens the workbench once; each use writes the next one.
/// </summary>
/// <remarks>The token is in no address, no argument of a program and no log: the browser gets the file's name and posts what it finds in it.</remarks>
internal sealed class LocalPass : IDisposable
{
    /// <summary>Where the page posts its token.</summary>
    public const string Address = "/sign-in/token";

    private const string FileName = "open.html";

    private readonly Lock _turn = new();
    private readonly string _path;
    private readonly ConcurrentDictionary<string, string> _sessions = new(StringComparer.Ordinal);
    private string? _address;
    private string? _token;

    public LocalPass(string folder) => _path = Path.Combine(folder, FileName);

    /// <summary>Writes the page, once the workbench is open.</summary>
    /// <param name="address">Where it is open.</param>
    /// <returns>The page's file.</returns>
    public string Open(string address)
    {
        lock (_turn)
        {
            _address = address;
            Write();
            return _path;
        }
    }

    /// <summary>Takes the token for a session. Each token is good once.</summary>
    /// <returns>Number and secret of the session; null where it is not the token.</returns>
    public (string Id, string Secret)? Take(string token)
    {
        lock (_turn)
        {
            var fits =
                _token is { } right
                && CryptographicOperations.FixedTimeEquals(
                    Encoding.UTF8.GetBytes(right),
                    Encoding.UTF8.GetBytes(token)
                );
            if (!fits)
            {
                return null;
            }

            Write();
        }

        var (id, secret) = (People.NewId(), Random());
        _sessions[Hash(secret)] = id;
        return (id, secret);
    }

    /// <summary>The session of a cookie's secret; it lives as long as the program, or until it is ended.</summary>
    public string? OfSession(string secret) => _sessions.GetValueOrDefault(Hash(secret));

    /// <summary>Whoever opened the page is this machine's own grower.</summary>
    public Role? RoleOf(string session) => _sessions.Values.Contains(session) ? Role.Owner : null;

    /// <summary>Ends a session.</summary>
    public void End(string session)
    {
        foreach (var one in _sessions.Where(one => one.Value == session).ToList())
        {
            _sessions.TryRemove(one);
        }
    }

    public void Dispose()
    {
        lock (_turn)
        {
            _token = null;
            File.Delete(_path);
        }
    }

    private static string Random() => Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(32));

    private static string Hash(string secret) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(secret)));

    private void Write()
    {
        _token = Random();
        var label = WebUtility.HtmlEncode(Words.Of("signin.local.open"));
        // A file of its own each time: whoever may have held the old one open reads nothing new.
        OwnFile.Replace(
            _path,
            string.Create(
                CultureInfo.InvariantCulture,
                $"""
                <!DOCTYPE html><html lang="{Words.Language}"><head><meta charset="utf-8"><meta name="referrer" content="no-referrer"><title>Dripwright</title></head>
                <body><form method="post" action="{WebUtility.HtmlEncode(
                    _address + Address
                )}"><input type="hidden" name="token" value="{_token}"><button>{label}</button></form>
                <script>document.forms[0].submit()</script></body></html>
                """
            )
        );
    }
}
