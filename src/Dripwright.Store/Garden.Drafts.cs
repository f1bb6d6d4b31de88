using Dripwright.Store.Ground;
using Dripwright.Store.Tables;
using Microsoft.EntityFrameworkCore;

namespace Dripwright.Store;

public sealed partial class Garden
{
    /// <summary>What a document says now; null where there is none of that number in use.</summary>
    /// <param name="id">The document.</param>
    /// <param name="stop">Asks to stop.</param>
    public Task<Draft?> DraftAsync(int id, CancellationToken stop = default) =>
        _at.Read(async tables =>
            await Documents.Find(tables, id, stop).ConfigureAwait(false) is { } row
                ? await Documents.Draft(tables, row, stop).ConfigureAwait(false)
                : null
        );

    /// <summary>Keeps a text as the draft, exactly as it is, faults and all; the text before can be undone to.</summary>
    /// <remarks>Keeping the text that is there already is well, whatever version it is based on, and makes no step.</remarks>
    /// <param name="id">The document.</param>
    /// <param name="text">The whole text.</param>
    /// <param name="basedOnVersion">The <see cref="Draft.Version"/> that the person was looking at.</param>
    /// <param name="what">What was changed, for the list of steps: "spacing of row 1".</param>
    /// <param name="stop">Asks to stop.</param>
    public Task<DraftOutcome> KeepDraftAsync(
        int id,
        string text,
        int basedOnVersion,
        string what,
        CancellationToken stop = default
    )
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(what);
        if ((Limits.TextFault(text) ?? Limits.NoteFault(what)) is { } why)
        {
            return Task.FromResult<DraftOutcome>(new DraftOutcome.Refused(why));
        }

        return ChangeDraft(
            id,
            basedOnVersion,
            text,
            (tables, row) => Documents.Step(tables, row, text, what, ThisMoment, stop),
            stop
        );
    }

    /// <summary>Goes back one step. Where there is none the draft stays.</summary>
    /// <param name="id">The document.</param>
    /// <param name="basedOnVersion">The version that the person was looking at.</param>
    /// <param name="stop">Asks to stop.</param>
    public Task<DraftOutcome> UndoAsync(int id, int basedOnVersion, CancellationToken stop = default) =>
        ChangeDraft(
            id,
            basedOnVersion,
            null,
            async (tables, row) =>
            {
                var now = await StepOf(tables, row.Id, row.Step, stop).ConfigureAwait(false);
                if (
                    now is null
                    || await StepOf(tables, row.Id, now.Before, stop).ConfigureAwait(false) is not { } before
                )
                {
                    return;
                }

                // Redo leads back to where we come from, not into an older branch.
                await tables
                    .Steps.Where(step => step.DocumentId == row.Id && step.Number == before.Number)
                    .ExecuteUpdateAsync(set => set.SetProperty(step => step.After, now.Number), stop)
                    .ConfigureAwait(false);
                await Documents.MoveTo(tables, row, before.Number, before.Text, ThisMoment, stop).ConfigureAwait(false);
            },
            stop
        );

    /// <summary>Goes forward to what was last undone. Where there is nothing the draft stays.</summary>
    /// <param name="id">The document.</param>
    /// <param name="basedOnVersion">The version that the person was looking at.</param>
    /// <param name="stop">Asks to stop.</param>
    public Task<DraftOutcome> RedoAsync(int id, int basedOnVersion, CancellationToken stop = default) =>
        ChangeDraft(
            id,
            basedOnVersion,
            null,
            async (tables, row) =>
            {
                var now = await StepOf(tables, row.Id, row.Step, stop).ConfigureAwait(false);
                if (now is not null && await StepOf(tables, row.Id, now.After, stop).ConfigureAwait(false) is { } after)
                {
                    await Documents
                        .MoveTo(tables, row, after.Number, after.Text, ThisMoment, stop)
                        .ConfigureAwait(false);
                }
            },
            stop
        );

    private static Task<StepRow?> StepOf(GardenTables tables, int id, int number, CancellationToken stop) =>
        tables.Steps.AsNoTracking().SingleOrDefaultAsync(step => step.DocumentId == id && step.Number == number, stop);

    private async Task<DraftOutcome> ChangeDraft(
        int id,
        int basedOnVersion,
        string? wanted,
        Func<GardenTables, DocumentRow, Task> change,
        CancellationToken stop
    )
    {
        var moved = false;
        var outcome = await _at.Change<DraftOutcome>(
                async tables =>
                {
                    var isMine = await Documents.Claim(tables, id, basedOnVersion, stop).ConfigureAwait(false);
                    if (await Documents.Find(tables, id, stop).ConfigureAwait(false) is not { } row)
                    {
                        return new DraftOutcome.Gone();
                    }

                    if (_hand.Refusal(GardenHand.ActOn(row.Kind)) is { } why)
                    {
                        return new DraftOutcome.Refused(why);
                    }

                    var isThereAlready = row.Text == wanted;
                    if (isMine && !isThereAlready)
                    {
                        await change(tables, row).ConfigureAwait(false);
                        moved = row.Version != basedOnVersion;
                    }

                    var draft = await Documents.Draft(tables, row, stop).ConfigureAwait(false);
                    return isMine || isThereAlready ? new DraftOutcome.Kept(draft) : new DraftOutcome.Overtaken(draft);
                },
                stop
            )
            .ConfigureAwait(false);
        if (moved && outcome is DraftOutcome.Kept kept)
        {
            Tell(new GardenChange(GardenEvent.Draft, id, kept.Draft.Version));
        }

        return outcome;
    }
}
