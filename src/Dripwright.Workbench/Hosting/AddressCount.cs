using System.Collections.Concurrent;

namespace Dripwright.Workbench.Hosting;

/// <summary>How many of something each address holds open just now.</summary>
internal sealed class AddressCount(int most)
{
    private readonly ConcurrentDictionary<string, int> _open = new(StringComparer.Ordinal);

    /// <summary>Counts one more; false where there are too many. Each is to be let go again, those too.</summary>
    public bool Take(string address) => _open.AddOrUpdate(address, 1, (_, count) => count + 1) <= most;

    /// <summary>One less.</summary>
    public void LetGo(string address)
    {
        if (_open.AddOrUpdate(address, 0, (_, count) => count - 1) <= 0)
        {
            // Only where it is still none: another may have come meanwhile.
            _open.TryRemove(new KeyValuePair<string, int>(address, 0));
        }
    }
}
