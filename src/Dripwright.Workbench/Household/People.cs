using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Identity;

namespace Dripwright.Workbench.Household;

/// <summary>Who did something at the door, and from where.</summary>
/// <param name="Name">Who; empty where nobody has signed in.</param>
/// <param name="From">From which address.</param>
/// <param name="Device">What kind of browser and machine.</param>
internal sealed record Visitor(string Name, string? From = null, string? Device = null);

/// <summary>Who may come in, as what, and where they are signed in.</summary>
/// <remarks>What is refused is told by the end of a text's key: <c>people.said.…</c>; null is well.</remarks>
internal sealed partial class People : IDisposable
{
    private const int MostPeople = 200;
    private const int MostNameLetters = 60;
    private const string CodeLetters = "ABCDEFGHJKMNPQRSTUVWXYZ23456789";

    private static readonly TimeSpan s_codeHolds = TimeSpan.FromDays(1);

    private readonly PeopleFile _file;
    private readonly TimeProvider _time;
    private readonly Tries _tries;
    private readonly Lock _turn = new();
    private readonly Dictionary<string, (DateTimeOffset Until, Role Role)> _codes = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _shown = new(StringComparer.Ordinal);

    /// <summary>Reads who there is.</summary>
    /// <exception cref="Store.Ground.GardenException">The file is spoilt.</exception>
    public People(string folder, TimeProvider time)
    {
        (_file, _time) = (new PeopleFile(folder, time), time);
        _tries = new Tries(time);
        Log = new SignInLog(folder);
    }

    /// <summary>Hashes and compares.</summary>
    public Passphrases Passphrases { get; } = new();

    /// <summary>What happened at the door.</summary>
    public SignInLog Log { get; }

    /// <summary>Whether anybody can sign in yet.</summary>
    public bool IsEmpty => _file.All.Count == 0;

    /// <summary>Everybody, by name.</summary>
    public IReadOnlyList<Person> All => [.. _file.All.OrderBy(person => person.Name, StringComparer.OrdinalIgnoreCase)];

    /// <summary>Names are alike whatever the case of their letters.</summary>
    public static string Folded(string name) => name.Trim().Normalize().ToUpperInvariant();

    /// <summary>Why a name cannot be taken; null where it can.</summary>
    public static string? NameFault(string? name) =>
        name is null
        || name.Trim().Length is 0 or > MostNameLetters
        || name.Any(c => char.IsControl(c) || char.IsSurrogate(c))
            ? "name"
            : null;

    public static string NewId() => Random(6);

    /// <summary>A number for somebody of a file that gave none; the same name has the same.</summary>
    public static string IdOf(string name) => HashOf(name)[..12];

    /// <summary>Somebody by number or name.</summary>
    public Person? Find(string idOrName) =>
        _file.All.FirstOrDefault(person => person.Id == idOrName)
        ?? (
            NameFault(idOrName) is null
                ? _file.All.FirstOrDefault(person => Folded(person.Name) == Folded(idOrName))
                : null
        );

    /// <summary>A code that lets one new person in.</summary>
    public string NewCode(Role role, Visitor by)
    {
        var letters = RandomNumberGenerator.GetString(CodeLetters, 12);
        lock (_turn)
        {
            var now = _time.GetUtcNow();
            foreach (var old in _codes.Where(code => code.Value.Until < now).Select(code => code.Key).ToList())
            {
                _codes.Remove(old);
            }

            _codes[letters] = (now + s_codeHolds, role);
        }

        Note(DoorEvent.Code, "", by, $"{role}");
        return $"{letters[..4]}-{letters[4..8]}-{letters[8..]}";
    }

    /// <summary>Lets a new person in with a code.</summary>
    public async Task<string?> Join(string name, string code, string passphrase, Visitor by, CancellationToken stop)
    {
        if (Fault(name, passphrase) is { } fault)
        {
            return fault;
        }

        var plain = new string([.. code.ToUpperInvariant().Where(char.IsAsciiLetterOrDigit)]);
        lock (_turn)
        {
            if (!_codes.TryGetValue(plain, out var known) || known.Until < _time.GetUtcNow())
            {
                Note(DoorEvent.WrongCode, "", by);
                return "code";
            }
        }

        var hash = await Passphrases.Hash(passphrase, stop).ConfigureAwait(false);
        lock (_turn)
        {
            // Of two that come with the same code at once the second finds it used.
            if (!_codes.TryGetValue(plain, out var known))
            {
                return "code";
            }

            var why = Put(name, known.Role, hash, by);
            if (why is null)
            {
                _codes.Remove(plain);
            }

            return why;
        }
    }

    /// <summary>Adds somebody with a first passphrase.</summary>
    public async Task<string?> Add(string name, Role role, string passphrase, Visitor by, CancellationToken stop) =>
        Fault(name, passphrase) ?? Put(name, role, await Passphrases.Hash(passphrase, stop).ConfigureAwait(false), by);

    /// <summary>Gives somebody another role. The last owner stays one.</summary>
    public string? ChangeRole(string id, Role role, Visitor by) =>
        Change(
            id,
            DoorEvent.Role,
            by,
            (all, person) => IsLastOwner(all, person) && role != Role.Owner ? "last-owner" : null,
            person => person with { Role = role },
            $"{role}"
        );

    /// <summary>Removes somebody with all sessions and keys. The last owner stays.</summary>
    public string? Remove(string id, Visitor by) =>
        Change(id, DoorEvent.Removed, by, (all, person) => IsLastOwner(all, person) ? "last-owner" : null, _ => null);

    /// <summary>Gives somebody a new passphrase; all their sessions end.</summary>
    public async Task<string?> SetPassphrase(string id, string passphrase, Visitor by, CancellationToken stop)
    {
        if (Find(id) is not { } known)
        {
            return "nobody";
        }

        if (PassphraseRule.Fault(passphrase, known.Name) is { } fault)
        {
            return fault;
        }

        var hash = await Passphrases.Hash(passphrase, stop).ConfigureAwait(false);
        var why = Change(
            id,
            DoorEvent.Passphrase,
            by,
            (_, _) => null,
            person => person with { Passphrase = hash, Sessions = [] }
        );
        if (why is null)
        {
            // Who forgot theirs must not wait for the rest after their own wrong tries.
            _tries.Right(Folded(known.Name));
        }

        return why;
    }

    /// <summary>Changes one's own passphrase; one's sessions elsewhere end.</summary>
    /// <param name="id">Who.</param>
    /// <param name="current">The passphrase that holds now.</param>
    /// <param name="passphrase">The new one.</param>
    /// <param name="session">The session that stays; none where null.</param>
    /// <param name="by">Who asks.</param>
    /// <param name="stop">Asks to stop.</param>
    public async Task<string?> ChangeOwn(
        string id,
        string current,
        string passphrase,
        string? session,
        Visitor by,
        CancellationToken stop
    )
    {
        if (Find(id) is not { } known)
        {
            return "nobody";
        }

        // Whoever sits at somebody else's open page must not try passphrases here without end.
        var folded = Folded(known.Name);
        var isResting = _tries.IsResting(folded);
        var fits =
            await Passphrases.Compare(known.Passphrase, Short(current), stop).ConfigureAwait(false)
            != PasswordVerificationResult.Failed;
        if (isResting || !fits)
        {
            _tries.Wrong(folded);
            Note(isResting ? DoorEvent.Resting : DoorEvent.Wrong, known.Name, by);
            return "current";
        }

        if (PassphraseRule.Fault(passphrase, known.Name) is { } fault)
        {
            return fault;
        }

        var hash = await Passphrases.Hash(passphrase, stop).ConfigureAwait(false);
        return Change(
            id,
            DoorEvent.Passphrase,
            by,
            (_, _) => null,
            person => person with { Passphrase = hash, Sessions = [.. person.Sessions.Where(one => one.Id == session)] }
        );
    }

    /// <summary>Leaves something for a session to be shown once.</summary>
    public void Show(string session, string what)
    {
        lock (_turn)
        {
            _shown[session] = what;
        }
    }

    /// <summary>What was left to be shown; then it is gone.</summary>
    public string? Shown(string session)
    {
        lock (_turn)
        {
            return _shown.Remove(session, out var what) ? what : null;
        }
    }

    public void Dispose() => Passphrases.Dispose();

    private static bool IsLastOwner(IReadOnlyList<Person> all, Person person) =>
        person.Role == Role.Owner && all.Count(other => other.Role == Role.Owner) == 1;

    private static string? Fault(string name, string passphrase) =>
        NameFault(name) ?? PassphraseRule.Fault(passphrase, name);

    // Longer than any that is taken: only the beginning is compared, so that it costs no more than another.
    private static string Short(string passphrase) =>
        passphrase.Length > PassphraseRule.MostLetters ? passphrase[..PassphraseRule.MostLetters] + "…" : passphrase;

    private static string HashOf(string secret) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(secret)));

    private static string Random(int bytes) => Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(bytes));

    private string? Put(string name, Role role, string hash, Visitor by)
    {
        string? why = null;
        name = name.Trim();
        _file.Change(all =>
        {
            why =
                all.Any(other => Folded(other.Name) == Folded(name)) ? "taken"
                : all.Count >= MostPeople ? "full"
                // Somebody must answer for the garden from the beginning.
                : all.Count == 0 && role != Role.Owner ? "first"
                : null;
            return why is null ? [.. all, new Person(NewId(), name, role, hash, _time.GetUtcNow(), [], [])] : null;
        });
        if (why is null)
        {
            Note(DoorEvent.Added, name, by, $"{role}");
        }

        return why;
    }

    private string? Change(
        string id,
        DoorEvent what,
        Visitor by,
        Func<IReadOnlyList<Person>, Person, string?> refusal,
        Func<Person, Person?> change,
        string? detail = null
    )
    {
        var why = (string?)"nobody";
        var name = "";
        _file.Change(all =>
        {
            if (all.FirstOrDefault(person => person.Id == id) is not { } person)
            {
                return null;
            }

            name = person.Name;
            why = refusal(all, person);
            return why is not null ? null
                : change(person) is { } changed ? [.. all.Select(one => one.Id == id ? changed : one)]
                : [.. all.Where(one => one.Id != id)];
        });
        if (why is null)
        {
            Note(what, name, by, detail);
            Tell();
        }

        return why;
    }

    private void Note(DoorEvent what, string name, Visitor by, string? detail = null) =>
        Log.Add(
            new DoorLine(
                _time.GetUtcNow(),
                what,
                name,
                by.Name.Length > 0 && by.Name != name ? by.Name : null,
                by.From,
                string.IsNullOrEmpty(by.Device) ? null : by.Device,
                detail
            )
        );
}
