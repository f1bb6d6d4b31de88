using System.Security.Cryptography;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Dripwright.Workbench.Pack;

/// <summary>Files that were made for a page and wait to be fetched, for a while and up to a bound.</summary>
/// <param name="time">The clock.</param>
internal sealed class Downloads(TimeProvider? time = null)
{
    private const long MostBytes = 256L << 20;

    private static readonly TimeSpan s_kept = TimeSpan.FromMinutes(15);

    private readonly Lock _turn = new();
    private readonly TimeProvider _time = time ?? TimeProvider.System;
    private readonly Dictionary<string, Waiting> _all = [];

    /// <summary>Takes a file in and gives the address at which it can be fetched. Nobody can guess it.</summary>
    public string Add(string name, string type, byte[] bytes)
    {
        var key = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(16));
        lock (_turn)
        {
            Forget();
            _all[key] = new Waiting(name, type, bytes, _time.GetUtcNow());
        }

        return $"/downloads/{key}/{Uri.EscapeDataString(name)}";
    }

    public void Map(IEndpointRouteBuilder routes) =>
        routes.MapGet(
            "/downloads/{key}/{name}",
            (string key) =>
            {
                lock (_turn)
                {
                    Forget();
                    return _all.TryGetValue(key, out var file)
                        ? Results.File(file.Bytes, file.Type, file.Name)
                        : Results.NotFound();
                }
            }
        );

    private void Forget()
    {
        var now = _time.GetUtcNow();
        var sum = 0L;
        foreach (var (key, file) in _all.OrderByDescending(at => at.Value.Since).ToList())
        {
            sum += file.Bytes.Length;
            if (now - file.Since > s_kept || sum > MostBytes)
            {
                _all.Remove(key);
            }
        }
    }

    private sealed record Waiting(string Name, string Type, byte[] Bytes, DateTimeOffset Since);
}
