using System.Collections.Concurrent;

namespace Dripwright.Store;

public sealed partial class Garden
{
    private readonly ConcurrentDictionary<Watcher, byte> _watchers = new();

    /// <summary>Calls back after something was kept through this object, on the thread that kept it.</summary>
    /// <param name="told">Called for each change. What it throws is dropped.</param>
    /// <returns>Dispose it to hear no more.</returns>
    public IDisposable Watch(Action<GardenChange> told)
    {
        ArgumentNullException.ThrowIfNull(told);
        var watcher = new Watcher(_root, told);
        _root._watchers.TryAdd(watcher, 0);
        return watcher;
    }

    private void Tell(GardenChange change)
    {
        foreach (var watcher in _root._watchers.Keys)
        {
            try
            {
                watcher.Told(change);
            }
#pragma warning disable CA1031 // A page that is just closing must not spoil the keeping of another.
            catch (Exception)
#pragma warning restore CA1031
            {
                // It is kept; who was to hear of it reads it later.
            }
        }
    }

    private sealed class Watcher(Garden garden, Action<GardenChange> told) : IDisposable
    {
        public Action<GardenChange> Told => told;

        public void Dispose() => garden._watchers.TryRemove(this, out _);
    }
}
