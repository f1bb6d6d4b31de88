using Dripwright.Engine;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;
using Dripwright.Sheets.Screen;
using Dripwright.Workbench.Work;

namespace Dripwright.Workbench.Editing;

/// <summary>What comes of the text of a rig on one page: faults, drawing and plan, each as soon as it is there.</summary>
/// <remarks>
/// All members are called from the page's own thread; what takes time goes on in the background and comes back to it. While a
/// fault stands the last good plan stays.
/// </remarks>
internal sealed class RigPlanning(PageWork work) : IAsyncDisposable
{
    /// <summary>A stand that takes longer is told later than all else; one of ten pots takes less, and nothing flickers.</summary>
    private static readonly TimeSpan s_patience = TimeSpan.FromMilliseconds(250);

    private CancellationTokenSource? _running;
    private string _planned = "";

    /// <summary>Told when something to show has changed.</summary>
    public event EventHandler? Changed;

    /// <summary>What came of reading the text; null until the first reading.</summary>
    public RigReading? Reading { get; private set; }

    /// <summary>The last good plan; null until there is one. Without the strength of its stands while that is being worked out.</summary>
    public Plan? Plan { get; private set; }

    /// <summary>The plan to draw: a moment ahead of <see cref="Plan"/>, and not judged to the end.</summary>
    public Plan? Sketch { get; private set; }

    /// <summary>True while the strength of the stands is still being worked out, and with it what the plan has to say of them.</summary>
    public bool IsStandOpen { get; private set; }

    /// <summary>What the last edit changed in the drawing.</summary>
    public IReadOnlyList<ScreenChange> Changes { get; private set; } = [];

    /// <summary>True while a plan is being made.</summary>
    public bool IsPlanning { get; private set; }

    /// <summary>Reads and plans a text. What was asked for before is given up.</summary>
    /// <param name="text">The text.</param>
    /// <param name="name">Name of the rig, for faults.</param>
    /// <param name="catalogue">The parts that can be named.</param>
    /// <param name="onHand">Parts that lie in the garden.</param>
    /// <param name="units">Units to show; those of the rig where null.</param>
    public async Task Replan(
        string text,
        string name,
        PartsCatalogue catalogue,
        IReadOnlyList<OnHand> onHand,
        UnitSystem? units
    )
    {
        var stop = await Restart();
        IsPlanning = true;
        try
        {
            var quick = await work.Draw(text, name, catalogue, onHand, units, stop.Token);
            stop.Token.ThrowIfCancellationRequested();
            Took(quick);
            Tell();
            if (quick.Plan is { } plan)
            {
                await Complete(plan, text, stop.Token);
            }
        }
        catch (OperationCanceledException)
        {
            // A later edit has its own plan.
        }

        if (ReferenceEquals(stop, _running))
        {
            IsPlanning = false;
            IsStandOpen = false;
            Tell();
        }
    }

    /// <summary>The plan with all that belongs to it, also where the page has not come so far yet, and the text it is of; null where there is none.</summary>
    /// <param name="stop">Asks to stop.</param>
    public async Task<(Plan Plan, string Text)?> Whole(CancellationToken stop)
    {
        var (plan, text) = (Plan, _planned);
        return plan is null ? null : (await work.Complete(plan, Draws(plan), stop), text);
    }

    /// <summary>Gives up what is being planned.</summary>
    public async ValueTask DisposeAsync()
    {
        if (_running is not null)
        {
            await _running.CancelAsync();
            _running.Dispose();
        }
    }

    private static int Pots(Plan plan) => Math.Max(1, plan.Layout.Rows.Sum(row => row.Pots.Count));

    private static int Draws(Plan plan) => SpreadDraws.For(Pots(plan));

    // What the first answer leaves out: the stands at once, the draws when the typing rests.
    private async Task Complete(Plan plan, string text, CancellationToken stop)
    {
        var standing = work.Complete(plan, 0, stop);
        if (await Task.WhenAny(standing, Task.Delay(s_patience, stop)) != standing)
        {
            stop.ThrowIfCancellationRequested();
            (Plan, _planned, IsStandOpen) = (plan, text, true);
            Tell();
        }

        var whole = await standing;
        stop.ThrowIfCancellationRequested();
        (Plan, _planned, IsStandOpen) = (whole, text, false);
        Tell();

        await Task.Delay(TimeSpan.FromMilliseconds(Math.Clamp(Pots(whole) * 20, 400, 4000)), stop);
        whole = await work.Complete(whole, Draws(whole), stop);
        stop.ThrowIfCancellationRequested();
        (Plan, Changes) = (whole, []);
    }

    private void Took(Draught drawn)
    {
        Reading = drawn.Reading;
        if (drawn.Plan is { } plan)
        {
            Changes = Sketch is { } before ? ScreenView.Changes(before, plan) : [];
            Sketch = plan;
        }
    }

    private async Task<CancellationTokenSource> Restart()
    {
        if (_running is { } before)
        {
            await before.CancelAsync();
        }

        return _running = new CancellationTokenSource();
    }

    private void Tell() => Changed?.Invoke(this, EventArgs.Empty);
}
