using Dripwright.Store;
using Dripwright.Store.Keeping;
using Dripwright.Workbench.Household;

namespace Dripwright.Workbench.Hosting;

/// <summary>A garden as it is served, with what belongs to it alone.</summary>
/// <param name="id">What tells it from the others: it is part of every key under which the server keeps anything of it.</param>
/// <param name="garden">The garden.</param>
/// <param name="people">Who may come in; asked for only where somebody must sign in.</param>
/// <param name="backups">Its daily backups.</param>
internal sealed class ServedGarden(string id, Garden garden, Func<People> people, BackupFolder backups)
    : IAsyncDisposable
{
    /// <summary>Id of a garden that is alone on its server.</summary>
    public const string Only = "garden";

    private readonly Lazy<People> _people = new(people);

    /// <summary>What tells it from the others.</summary>
    public string Id => id;

    /// <summary>The garden.</summary>
    public Garden Garden => garden;

    /// <summary>Its daily backups.</summary>
    public BackupFolder Backups => backups;

    /// <summary>Who may come in.</summary>
    public People People => _people.Value;

    public ValueTask DisposeAsync()
    {
        if (_people.IsValueCreated)
        {
            _people.Value.Dispose();
        }

        return garden.DisposeAsync();
    }
}
