using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Microsoft.AspNetCore.Identity;

namespace Dripwright.Workbench.SignIn;

/// <summary>Who may come in from the house network, kept in one small file of the data folder.</summary>
/// <remarks>
/// Passphrases are kept as PBKDF2 hashes, keys as SHA-256 of 256 random bits. Codes that let a new person in are used once,
/// hold for a day, and live only as long as the program.
/// </remarks>
internal sealed class People : IDisposable
{
    public const string FileName = "people.json";
    public const int LeastLetters = 10;
    public const int MostLetters = 200;

    private const int MostPeople = 200;
    private const int MostKeys = 20;
    private const int TriesBeforeRest = 5;
    private const string CodeLetters = "ABCDEFGHJKMNPQRSTUVWXYZ23456789";

    private static readonly JsonSerializerOptions s_json = new() { WriteIndented = true };
    private static readonly TimeSpan s_rest = TimeSpan.FromMinutes(5);
    private static readonly TimeSpan s_codeHolds = TimeSpan.FromDays(1);

    // Hashing is slow on purpose; more than two at once would take the machine from the others.
    private readonly SemaphoreSlim _hashing = new(2, 2);
    private readonly PasswordHasher<string> _hasher = new();
    private readonly string _nobody;
    private readonly string _path;
    private readonly TimeProvider _time;
    private readonly Lock _turn = new();
    private readonly Dictionary<string, DateTimeOffset> _codes = new(StringComparer.Ordinal);
    private readonly Dictionary<string, (int Wrong, DateTimeOffset Until)> _tries = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _shown = new(StringComparer.Ordinal);
    private List<Person> _all;

    public People(string folder, TimeProvider time)
    {
        _path = Path.Combine(folder, FileName);
        _time = time;
        _nobody = _hasher.HashPassword("", Random(16));
        _all = File.Exists(_path) ? JsonSerializer.Deserialize<List<Person>>(File.ReadAllText(_path)) ?? [] : [];
    }

    /// <summary>Whether anybody can sign in yet.</summary>
    public bool IsEmpty
    {
        get
        {
            lock (_turn)
            {
                return _all.Count == 0;
            }
        }
    }

    /// <summary>A code that lets one new person in.</summary>
    public string NewCode()
    {
        var letters = RandomNumberGenerator.GetString(CodeLetters, 12);
        lock (_turn)
        {
            foreach (var old in _codes.Where(code => code.Value < _time.GetUtcNow()).Select(code => code.Key).ToList())
            {
                _codes.Remove(old);
            }

            _codes[letters] = _time.GetUtcNow() + s_codeHolds;
        }

        return $"{letters[..4]}-{letters[4..8]}-{letters[8..]}";
    }

    /// <summary>Lets a new person in. Gives the key of what to say where it does not; null where it does.</summary>
    public async Task<string?> Join(string name, string code, string passphrase, CancellationToken stop)
    {
        name = name.Trim();
        if (name.Length is 0 or > 60 || name.Any(char.IsControl))
        {
            return "name";
        }

        if (passphrase.Length is < LeastLetters or > MostLetters)
        {
            return "short";
        }

        var hash = await Hashing(() => _hasher.HashPassword(name, passphrase), stop);
        lock (_turn)
        {
            var plain = new string([.. code.ToUpperInvariant().Where(char.IsAsciiLetterOrDigit)]);
            if (!_codes.TryGetValue(plain, out var until) || until < _time.GetUtcNow())
            {
                return "code";
            }

            if (_all.Count >= MostPeople || Find(name) is not null)
            {
                return "taken";
            }

            Keep([.. _all, new Person(name, hash, Random(16), [])]);
            _codes.Remove(plain);
            return null;
        }
    }

    /// <summary>The person of a name and passphrase; null where they do not fit, or after too many wrong ones.</summary>
    public async Task<Person?> Enter(string name, string passphrase, CancellationToken stop)
    {
        name = name.Trim();
        var folded = Folded(name);
        Person? person;
        lock (_turn)
        {
            if (_tries.TryGetValue(folded, out var tries) && tries.Wrong >= TriesBeforeRest)
            {
                if (tries.Until > _time.GetUtcNow())
                {
                    return null;
                }

                _tries.Remove(folded);
            }

            person = Find(name);
        }

        if (passphrase.Length > MostLetters)
        {
            return null;
        }

        // Somebody unknown takes as long as somebody known, so that names cannot be tried out.
        var fits = await Hashing(
            () =>
                _hasher.VerifyHashedPassword(name, person?.Hash ?? _nobody, passphrase)
                != PasswordVerificationResult.Failed,
            stop
        );
        lock (_turn)
        {
            if (fits && person is not null)
            {
                _tries.Remove(folded);
                return person;
            }

            if (person is not null)
            {
                var wrong = _tries.GetValueOrDefault(folded).Wrong + 1;
                _tries[folded] = (wrong, _time.GetUtcNow() + s_rest);
            }

            return null;
        }
    }

    /// <summary>Whether a session that began with this stamp still holds.</summary>
    public bool Holds(string name, string stamp)
    {
        lock (_turn)
        {
            return Find(name)?.Stamp == stamp;
        }
    }

    /// <summary>Makes a key for programs; it is told only now. Null where the person has enough of them.</summary>
    public string? MakeKey(string name, string label)
    {
        label = label.Trim();
        if (label.Length is 0 or > 60 || label.Any(char.IsControl))
        {
            label = "key";
        }

        var key = "drip_" + Random(32);
        lock (_turn)
        {
            if (Find(name) is not { } person || person.Keys.Count >= MostKeys)
            {
                return null;
            }

            var made = new Key(Random(6), label, HashOf(key), _time.GetUtcNow());
            Keep(person with { Keys = [.. person.Keys, made] });
            return key;
        }
    }

    /// <summary>Takes a key back.</summary>
    public void DropKey(string name, string id)
    {
        lock (_turn)
        {
            if (Find(name) is { } person)
            {
                Keep(person with { Keys = [.. person.Keys.Where(key => key.Id != id)] });
            }
        }
    }

    /// <summary>Ends all sessions of a person, on every machine.</summary>
    public void EndSessions(string name)
    {
        lock (_turn)
        {
            if (Find(name) is { } person)
            {
                Keep(person with { Stamp = Random(16) });
            }
        }
    }

    /// <summary>Whose key it is; null where it is nobody's.</summary>
    public string? OfKey(string key)
    {
        var hash = HashOf(key);
        lock (_turn)
        {
            return _all.FirstOrDefault(person => person.Keys.Any(at => at.Hash == hash))?.Name;
        }
    }

    /// <summary>The names, and the keys of one person.</summary>
    public (IReadOnlyList<string> Names, IReadOnlyList<Key> Keys) Look(string name)
    {
        lock (_turn)
        {
            return ([.. _all.Select(person => person.Name)], Find(name)?.Keys ?? []);
        }
    }

    /// <summary>Leaves something for a person to be shown once.</summary>
    public void Show(string name, string what)
    {
        lock (_turn)
        {
            _shown[name] = what;
        }
    }

    /// <summary>What was left to be shown; then it is gone.</summary>
    public string? Shown(string name)
    {
        lock (_turn)
        {
            return _shown.Remove(name, out var what) ? what : null;
        }
    }

    public void Dispose() => _hashing.Dispose();

    private Person? Find(string name) => _all.Find(person => Folded(person.Name) == Folded(name));

    private void Keep(Person changed) =>
        Keep([.. _all.Select(person => person.Name == changed.Name ? changed : person)]);

    private void Keep(List<Person> all)
    {
        var options = new FileStreamOptions { Mode = FileMode.Create, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        }

        using (var file = new FileStream(_path + ".new", options))
        {
            JsonSerializer.Serialize(file, all, s_json);
            file.Flush(flushToDisk: true);
        }

        File.Move(_path + ".new", _path, overwrite: true);
        _all = all;
    }

    private async Task<T> Hashing<T>(Func<T> hash, CancellationToken stop)
    {
        await _hashing.WaitAsync(stop);
        try
        {
            return await Task.Run(hash, stop);
        }
        finally
        {
            _hashing.Release();
        }
    }

    private static string Folded(string name) => name.ToUpperInvariant();

    private static string HashOf(string key) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(key)));

    private static string Random(int bytes) => Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(bytes));

    /// <summary>Somebody who may come in.</summary>
    internal sealed record Person(string Name, string Hash, string Stamp, IReadOnlyList<Key> Keys);

    /// <summary>A key for programs.</summary>
    internal sealed record Key(string Id, string Label, string Hash, DateTimeOffset MadeAt);
}
