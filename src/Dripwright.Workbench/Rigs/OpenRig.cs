using Dripwright.Engine;
using Dripwright.Language.Report;
using Dripwright.Store;
using Dripwright.Workbench.Editing;
using Dripwright.Workbench.Failing;
using Microsoft.Extensions.Logging;

namespace Dripwright.Workbench.Rigs;

/// <summary>A rig that a page has open: its desk, its plan in words, and an ear for what other pages do to it.</summary>
internal sealed class OpenRig : IAsyncDisposable
{
    private readonly Func<Func<Task>, Task> _onPage;
    private readonly Action _changed;
    private IDisposable? _watch;
    private Plan? _judged;

    private OpenRig(RigDesk desk, Func<Func<Task>, Task> onPage, Action changed)
    {
        (Desk, _onPage, _changed) = (desk, onPage, changed);
        desk.Changed += Show;
    }

    /// <summary>The rig being edited.</summary>
    public RigDesk Desk { get; }

    /// <summary>Its plan in words; null until there is one.</summary>
    public PlanSummary? Summary { get; private set; }

    /// <summary>Opens a rig; null where there is none of that number.</summary>
    /// <param name="garden">The garden that keeps it.</param>
    /// <param name="open">Opens its desk; given is what to do when its work in the background fails.</param>
    /// <param name="log">Where the log tells of such a failure.</param>
    /// <param name="onPage">Does something on the page's own thread, and shows where that fails.</param>
    /// <param name="changed">Told when something to show has changed.</param>
    public static async Task<OpenRig?> Of(
        Garden garden,
        Func<Func<Exception, string>, Task<RigDesk?>> open,
        ILogger log,
        Func<Func<Task>, Task> onPage,
        Action changed
    )
    {
        if (await open(why => Number(log, why)) is not { } desk)
        {
            return null;
        }

        var rig = new OpenRig(desk, onPage, changed);
        rig._watch = garden.Watch(change => _ = onPage(() => desk.Heard(change)));
        return rig;
    }

    /// <summary>Keeps what is not kept yet, and listens no more.</summary>
    public async ValueTask DisposeAsync()
    {
        _watch?.Dispose();
        Desk.Changed -= Show;
        await Desk.DisposeAsync();
    }

    private static string Number(ILogger log, Exception why)
    {
        var number = Trouble.Number();
        Trouble.Tell(log, number, "page", why);
        return number;
    }

    private void Show(object? sender, EventArgs e) =>
        _ = _onPage(() =>
        {
            if (Desk.Plan is { } plan && !ReferenceEquals(_judged, plan))
            {
                (_judged, Summary) = (plan, PlanSummary.Of(plan));
            }

            _changed();
            return Task.CompletedTask;
        });
}
