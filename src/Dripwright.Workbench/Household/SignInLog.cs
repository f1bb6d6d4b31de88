using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Dripwright.Workbench.Household;

/// <summary>What happened at the door.</summary>
public enum DoorEvent
{
    /// <summary>Somebody signed in.</summary>
    In,

    /// <summary>A name and passphrase that do not match.</summary>
    Wrong,

    /// <summary>A name that rests after too many wrong tries.</summary>
    Resting,

    /// <summary>A code for a new account that is not right.</summary>
    WrongCode,

    /// <summary>A key that opens nothing (any more).</summary>
    WrongKey,

    /// <summary>Somebody signed out, or a session was ended.</summary>
    Out,

    /// <summary>An account was made.</summary>
    Added,

    /// <summary>An account was removed.</summary>
    Removed,

    /// <summary>Somebody got another role.</summary>
    Role,

    /// <summary>A passphrase was changed.</summary>
    Passphrase,

    /// <summary>A code for a new account was made.</summary>
    Code,

    /// <summary>A key was made.</summary>
    Key,

    /// <summary>A key was ended.</summary>
    KeyEnded,
}

/// <summary>One line of what happened at the door.</summary>
/// <param name="At">When, UTC.</param>
/// <param name="What">What.</param>
/// <param name="Name">Whom it is about. Empty where nobody has the name that was typed: people type passphrases there.</param>
/// <param name="By">Who did it, where that is somebody else.</param>
/// <param name="From">From which address.</param>
/// <param name="Device">What kind of browser and machine.</param>
/// <param name="Detail">The new role, or what a key is for.</param>
public sealed record DoorLine(
    DateTimeOffset At,
    DoorEvent What,
    string Name,
    string? By = null,
    string? From = null,
    string? Device = null,
    string? Detail = null
);

/// <summary>Sign-ins, failures and changes of people, a line of JSON each, in a file that only its owner reads.</summary>
internal sealed class SignInLog(string folder)
{
    public const string FileName = "sign-ins.jsonl";

    /// <summary>Lines that are kept; up to as many again before the oldest go.</summary>
    public const int Lines = 2000;

    private static readonly JsonSerializerOptions s_json = new(JsonSerializerDefaults.Web)
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase) },
    };

    private readonly Lock _turn = new();
    private readonly string _path = Path.Combine(folder, FileName);
    private int _lines = -1;

    public void Add(DoorLine line)
    {
        lock (_turn)
        {
            try
            {
                _lines = _lines < 0 ? Raw().Length : _lines;
                if (_lines >= 2 * Lines)
                {
                    var kept = Raw()[^Lines..];
                    OwnFile.Replace(_path, string.Join('\n', kept) + "\n");
                    _lines = Lines;
                }

                OwnFile.Append(_path, JsonSerializer.Serialize(line, s_json) + "\n");
                _lines++;
            }
            catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
            {
                // A full disk must not keep anybody out, nor in.
            }
        }
    }

    /// <summary>The newest lines, the newest first.</summary>
    public IReadOnlyList<DoorLine> Newest(int most)
    {
        string[] raw;
        lock (_turn)
        {
            raw = Raw();
        }

        return [.. raw.Reverse().Select(Read).OfType<DoorLine>().Take(most)];
    }

    private string[] Raw() => File.Exists(_path) ? File.ReadAllLines(_path) : [];

    // A line that was cut off by a full disk is passed over.
    private static DoorLine? Read(string line)
    {
        try
        {
            return JsonSerializer.Deserialize<DoorLine>(line, s_json);
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
