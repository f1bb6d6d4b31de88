using System.Security.Cryptography;

namespace Dripwright.Workbench.Files;

/// <summary>Files that were made for pages and wait to be fetched, for a while and up to a bound. Each garden fetches only its own.</summary>
/// <param name="time">The clock; the system's where null.</param>
internal sealed class WaitingFiles(TimeProvider? time = null)
{
    private const long MostBytes = 256L << 20;

    private static readonly TimeSpan s_kept = TimeSpan.FromMinutes(15);

    private readonly Lock _turn = new();
    private readonly TimeProvider _time = time ?? TimeProvider.System;
    private readonly Dictionary<(string Garden, string Key), WaitingFile> _all = [];

    /// <summary>Takes a file of a garden in and gives the key under which it can be fetched. Nobody can guess it.</summary>
    public string Add(string garden, string name, string type, byte[] bytes)
    {
        var key = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(16));
        lock (_turn)
        {
            _all[(garden, key)] = new WaitingFile(name, type, bytes, _time.GetUtcNow());
            Forget();
        }

        return key;
    }

    /// <summary>The file of a garden with that key; null where there is none, or no longer.</summary>
    public WaitingFile? Find(string garden, string key)
    {
        lock (_turn)
        {
            Forget();
            return _all.GetValueOrDefault((garden, key));
        }
    }

    private void Forget()
    {
        var now = _time.GetUtcNow();
        foreach (var (key, _) in _all.Where(at => now - at.Value.Since > s_kept).ToList())
        {
            _all.Remove(key);
        }

        while (_all.Count > 1 && _all.Values.Sum(file => (long)file.Bytes.Length) > MostBytes)
        {
            // The garden that holds most gives up its oldest, so that no garden drives out another's.
            var (largest, _) = _all.GroupBy(at => at.Key.Garden, at => (long)at.Value.Bytes.Length)
                .Select(garden => (garden.Key, garden.Sum()))
                .MaxBy(garden => garden.Item2);
            _all.Remove(_all.Where(at => at.Key.Garden == largest).MinBy(at => at.Value.Since).Key);
        }
    }
}

/// <summary>A file that waits to be fetched.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Type">Its kind, as HTTP says it.</param>
/// <param name="Bytes">What is in it.</param>
/// <param name="Since">Since when it waits.</param>
internal sealed record WaitingFile(string Name, string Type, byte[] Bytes, DateTimeOffset Since);
