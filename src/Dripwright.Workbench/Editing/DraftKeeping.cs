using Dripwright.Language;
using Dripwright.Store;
using Dripwright.Store.Ground;

namespace Dripwright.Workbench.Editing;

/// <summary>The text of a rig on one page and the keeping of it: what is typed is here at once, in the garden a moment later.</summary>
/// <remarks>All members are called from the page's own thread.</remarks>
internal sealed class DraftKeeping : IAsyncDisposable
{
    private readonly Garden _garden;
    private readonly TimeSpan _keepAfter;
    private readonly Func<Exception, string> _failed;
    private readonly SemaphoreSlim _turn = new(1, 1);
    private CancellationTokenSource? _waiting;
    private string _what = "";

    /// <summary>Keeps a draft.</summary>
    /// <param name="garden">The garden that has it.</param>
    /// <param name="draft">The draft.</param>
    /// <param name="keepAfter">How long after the last letter it is kept.</param>
    /// <param name="failed">Told when keeping failed. Gives the number under which the log tells of it.</param>
    public DraftKeeping(Garden garden, Draft draft, TimeSpan keepAfter, Func<Exception, string> failed)
    {
        (_garden, _keepAfter, _failed) = (garden, keepAfter, failed);
        (Kept, Text) = (draft, draft.Text);
    }

    /// <summary>Told when something to show has changed.</summary>
    public event EventHandler? Changed;

    /// <summary>The draft as the garden has it, the last we know.</summary>
    public Draft Kept { get; private set; }

    /// <summary>The text as it is on this page.</summary>
    public string Text { get; private set; }

    /// <summary>What another page made of the rig while this one was typing; null where there is no such conflict.</summary>
    public Draft? Other { get; private set; }

    /// <summary>The rig has been thrown away on another page.</summary>
    public bool IsGone { get; private set; }

    /// <summary>Why the last text could not be kept; null where it could.</summary>
    public string? Refused { get; private set; }

    /// <summary>True while something typed is not yet in the garden.</summary>
    public bool IsUnkept => Text != Kept.Text;

    /// <summary>Takes another text for the whole. Gives true where it is another one.</summary>
    /// <param name="text">The text.</param>
    /// <param name="what">What that is, for the list of steps.</param>
    public async Task<bool> Write(string text, string what)
    {
        if (text == Text)
        {
            return false;
        }

        if (IsUnkept && what != _what)
        {
            // Another field: what was typed in the last one is a step of its own.
            await Keep();
        }

        var wasUnkept = IsUnkept;
        (Text, _what) = (text, what);
        if (!wasUnkept)
        {
            // Said at once: nothing may call it kept from here on.
            Tell();
        }

        KeepSoon();
        return true;
    }

    /// <summary>Keeps what was typed now. False where that failed: then it stays on the page, which says why.</summary>
    public async Task<bool> Keep()
    {
        _waiting?.Cancel();
        await _turn.WaitAsync();
        var isWell = true;
        try
        {
            if (!IsUnkept || IsGone || Other is not null)
            {
                return true;
            }

            Took(await _garden.KeepDraftAsync(Kept.Id, Text, Kept.Version, _what));
        }
#pragma warning disable CA1031 // Whatever it is: what was typed must not go down with the page.
        catch (Exception why)
#pragma warning restore CA1031
        {
            isWell = false;
            Refused = why is GardenException trouble ? trouble.ForPage : Words.Of("kept.failed", _failed(why));
        }
        finally
        {
            _turn.Release();
        }

        Tell();
        return isWell;
    }

    /// <summary>Goes along the draft's history. Gives true where the text is another one.</summary>
    /// <param name="step">The step: undo, redo or one of the history.</param>
    public async Task<bool> Step(Func<int, int, CancellationToken, Task<DraftOutcome>> step)
    {
        if (!await Keep() || Other is not null)
        {
            return false;
        }

        Took(await step(Kept.Id, Kept.Version, default));
        return Take(Kept.Text);
    }

    /// <summary>In a conflict: what stands on this page. The other page's stays one step back.</summary>
    public async Task TakeMine()
    {
        if (Other is { } other)
        {
            (Kept, Other) = (other, null);
            await Keep();
        }
    }

    /// <summary>In a conflict: what the other page made. What stands here stays one step back. Gives true where the text is another one.</summary>
    public async Task<bool> TakeOther()
    {
        if (Other is not { } other)
        {
            return false;
        }

        (Kept, Other) = (other, null);
        if (!await Keep())
        {
            return false;
        }

        (Text, _what) = (other.Text, Words.Of("conflict.step"));
        await Keep();
        return true;
    }

    /// <summary>Another page kept something, or threw the rig away. Gives true where the text is another one.</summary>
    public async Task<bool> Heard()
    {
        // A keeping of our own may just be on its way back.
        await _turn.WaitAsync();
        Draft? now;
        try
        {
            now = await _garden.DraftAsync(Kept.Id);
        }
        finally
        {
            _turn.Release();
        }

        var isOther = false;
        if (now is null)
        {
            IsGone = true;
        }
        else if (now.Version != Kept.Version && IsUnkept && now.Text != Text)
        {
            Other = now;
        }
        else
        {
            var isNewer = now.Version != Kept.Version;
            Kept = now;
            isOther = isNewer && Take(now.Text);
        }

        Tell();
        return isOther;
    }

    /// <summary>Keeps what is not kept yet.</summary>
    public async ValueTask DisposeAsync()
    {
        await Keep();
        _waiting?.Dispose();
        _turn.Dispose();
    }

    private bool Take(string text)
    {
        var isOther = text != Text;
        Text = text;
        Tell();
        return isOther;
    }

    private void Took(DraftOutcome outcome)
    {
        Refused = (outcome as DraftOutcome.Refused)?.Why;
        IsGone = outcome is DraftOutcome.Gone;
        Kept = outcome is DraftOutcome.Kept kept ? kept.Draft : Kept;
        Other = (outcome as DraftOutcome.Overtaken)?.Current;
    }

    private async void KeepSoon()
    {
        _waiting?.Cancel();
        var waiting = _waiting = new CancellationTokenSource();
        try
        {
            await Task.Delay(_keepAfter, waiting.Token);
            await Keep();
        }
        catch (OperationCanceledException)
        {
            // Typing goes on, or it is kept already.
        }
        catch (ObjectDisposedException)
        {
            // The page was closed meanwhile; closing keeps.
        }
    }

    private void Tell() => Changed?.Invoke(this, EventArgs.Empty);
}
