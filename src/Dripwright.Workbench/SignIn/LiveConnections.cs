using System.Collections.Concurrent;
using Dripwright.Workbench.Hosting;
using Dripwright.Workbench.Household;
using Dripwright.Workbench.Setup;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Hosting;

namespace Dripwright.Workbench.SignIn;

/// <summary>The channels of open pages. Each is cut as soon as whoever opened it may not come in any more.</summary>
internal sealed class LiveConnections(IGardens gardens, WorkbenchOptions options) : BackgroundService
{
    // People may also be changed by a command beside this program: so often it is looked.
    private static readonly TimeSpan s_every = TimeSpan.FromSeconds(2);

    private readonly ConcurrentDictionary<Tied, byte> _open = new();

    /// <summary>Holds a request open only as long as the actor has a role.</summary>
    public IDisposable Tie(HttpContext context, Actor actor)
    {
        var tied = new Tied(this, context, actor);
        _open.TryAdd(tied, 0);
        return tied;
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        if (!options.AsksWho)
        {
            return;
        }

        foreach (var garden in gardens.All)
        {
            garden.People.Changed += (_, _) => Sweep();
        }

        using var timer = new PeriodicTimer(s_every);
        while (await timer.WaitForNextTickAsync(stoppingToken).ConfigureAwait(false))
        {
            Sweep();
        }
    }

    private void Sweep()
    {
        foreach (var tied in _open.Keys)
        {
            tied.CutIfEnded();
        }
    }

    private sealed class Tied(LiveConnections all, HttpContext context, Actor actor) : IDisposable
    {
        public void CutIfEnded()
        {
            if (actor.Role is null)
            {
                context.Abort();
            }
        }

        public void Dispose() => all._open.TryRemove(this, out _);
    }
}
