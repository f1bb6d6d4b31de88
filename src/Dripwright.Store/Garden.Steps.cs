using Dripwright.Store.Ground;
using Dripwright.Store.Tables;
using Microsoft.EntityFrameworkCore;

namespace Dripwright.Store;

/// <summary>A text that a draft once was.</summary>
/// <param name="Number">The step; the numbers grow with time.</param>
/// <param name="At">When it was kept, UTC.</param>
/// <param name="What">What was changed.</param>
/// <param name="Text">The text.</param>
/// <param name="IsNow">The draft stands at it.</param>
/// <param name="Who">Who made it; empty where nobody said who they are.</param>
public sealed record DraftStep(int Number, DateTime At, string What, string Text, bool IsNow, string Who);

public sealed partial class Garden
{
    /// <summary>All texts that a draft once was, the oldest first, also those that undo and redo no longer reach.</summary>
    /// <remarks>About <see cref="Limits.Steps"/>, and of all letters together about <see cref="Limits.StepLetters"/>.</remarks>
    /// <param name="id">The document.</param>
    /// <param name="stop">Asks to stop.</param>
    public Task<IReadOnlyList<DraftStep>> StepsAsync(int id, CancellationToken stop = default) =>
        _at.Read<IReadOnlyList<DraftStep>>(async tables =>
            await tables
                .Steps.AsNoTracking()
                .Where(step => step.DocumentId == id)
                .OrderBy(step => step.Number)
                .Select(step => new DraftStep(
                    step.Number,
                    step.At,
                    step.What,
                    step.Text,
                    tables.Documents.Any(row => row.Id == id && row.Step == step.Number),
                    step.Who
                ))
                .ToListAsync(stop)
                .ConfigureAwait(false)
        );

    /// <summary>Makes the draft what it was at a step. Undo goes on from there. Where there is no such step the draft stays.</summary>
    /// <param name="id">The document.</param>
    /// <param name="number">The step.</param>
    /// <param name="basedOnVersion">The version that the person was looking at.</param>
    /// <param name="stop">Asks to stop.</param>
    public Task<DraftOutcome> GoToStepAsync(int id, int number, int basedOnVersion, CancellationToken stop = default) =>
        ChangeDraft(
            id,
            basedOnVersion,
            null,
            async (tables, row) =>
            {
                if (await StepOf(tables, id, number, stop).ConfigureAwait(false) is { } step && number != row.Step)
                {
                    await Documents.MoveTo(tables, row, number, step.Text, ThisMoment, stop).ConfigureAwait(false);
                }
            },
            stop
        );
}
