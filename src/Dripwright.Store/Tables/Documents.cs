using Dripwright.Store.Ground;
using Microsoft.EntityFrameworkCore;

namespace Dripwright.Store.Tables;

/// <summary>When something is changed, and by whom.</summary>
/// <param name="At">UTC.</param>
/// <param name="Who">A name; empty where nobody says who they are.</param>
internal readonly record struct Moment(DateTime At, string Who);

/// <summary>The rules of drafts, steps and revisions, inside one transaction. All kinds of document keep to them.</summary>
internal static class Documents
{
    private const int SmallLetters = 1 << 16;

    public static async Task<DocumentRow> Add(
        GardenTables tables,
        string kind,
        string name,
        string text,
        string what,
        Moment now,
        CancellationToken stop
    )
    {
        var document = new DocumentRow
        {
            Kind = kind,
            Name = name,
            Text = text,
            Version = 1,
            Step = 1,
            MadeAt = now.At,
            ChangedAt = now.At,
            ChangedBy = now.Who,
        };
        tables.Documents.Add(document);
        await tables.SaveChangesAsync(stop).ConfigureAwait(false);
        tables.Steps.Add(
            new StepRow
            {
                DocumentId = document.Id,
                Number = 1,
                Text = text,
                What = what,
                At = now.At,
                Who = now.Who,
            }
        );
        await tables.SaveChangesAsync(stop).ConfigureAwait(false);
        return document;
    }

    /// <summary>The document, or null where it is not in use.</summary>
    public static Task<DocumentRow?> Find(GardenTables tables, int id, CancellationToken stop) =>
        tables.Documents.AsNoTracking().SingleOrDefaultAsync(row => row.Id == id && row.RemovedAt == null, stop);

    /// <summary>The draft with what can be undone and redone.</summary>
    public static async Task<Draft> Draft(GardenTables tables, DocumentRow row, CancellationToken stop)
    {
        var at = await tables
            .Steps.AsNoTracking()
            .Where(step => step.DocumentId == row.Id && step.Number == row.Step)
            .Select(step => new
            {
                step.What,
                CanUndo = tables.Steps.Any(other => other.DocumentId == row.Id && other.Number == step.Before),
                CanRedo = tables.Steps.Any(other => other.DocumentId == row.Id && other.Number == step.After),
            })
            .SingleAsync(stop)
            .ConfigureAwait(false);
        return new Draft(
            row.Id,
            row.Kind,
            row.Name,
            row.Text,
            row.Version,
            at.CanUndo,
            at.CanRedo,
            at.What,
            row.ChangedAt,
            row.ChangedBy
        );
    }

    /// <summary>Takes the writer's turn at a draft: false where it is not at that version any more.</summary>
    /// <remarks>From here to the end of the transaction nobody else changes the document.</remarks>
    public static async Task<bool> Claim(GardenTables tables, int id, int version, CancellationToken stop) =>
        await tables
            .Documents.Where(row => row.Id == id && row.Version == version && row.RemovedAt == null)
            .ExecuteUpdateAsync(set => set.SetProperty(row => row.Version, version), stop)
            .ConfigureAwait(false) == 1;

    /// <summary>Adds a step after the one the draft stands at, and moves the draft there.</summary>
    public static async Task Step(
        GardenTables tables,
        DocumentRow row,
        string text,
        string what,
        Moment now,
        CancellationToken stop
    )
    {
        var steps = tables.Steps.Where(step => step.DocumentId == row.Id);
        var number = await steps.MaxAsync(step => step.Number, stop).ConfigureAwait(false) + 1;
        await steps
            .Where(step => step.Number == row.Step)
            .ExecuteUpdateAsync(set => set.SetProperty(step => step.After, 0), stop)
            .ConfigureAwait(false);
        tables.Steps.Add(
            new StepRow
            {
                DocumentId = row.Id,
                Number = number,
                Before = row.Step,
                Text = text,
                What = what,
                At = now.At,
                Who = now.Who,
            }
        );
        await tables.SaveChangesAsync(stop).ConfigureAwait(false);
        await MoveTo(tables, row, number, text, now, stop).ConfigureAwait(false);
        await Forget(tables, row, stop).ConfigureAwait(false);
    }

    /// <summary>Moves the draft to a step.</summary>
    public static async Task MoveTo(
        GardenTables tables,
        DocumentRow row,
        int number,
        string text,
        Moment now,
        CancellationToken stop
    )
    {
        row.Text = text;
        row.Step = number;
        // Never past what can be counted: the garden must go on whatever number it came to.
        row.Version = row.Version >= Limits.Number ? 1 : row.Version + 1;
        (row.ChangedAt, row.ChangedBy) = (now.At, now.Who);
        await tables
            .Documents.Where(document => document.Id == row.Id)
            .ExecuteUpdateAsync(
                set =>
                    set.SetProperty(document => document.Text, text)
                        .SetProperty(document => document.Step, number)
                        .SetProperty(document => document.Version, row.Version)
                        .SetProperty(document => document.ChangedAt, now.At)
                        .SetProperty(document => document.ChangedBy, now.Who),
                stop
            )
            .ConfigureAwait(false);
    }

    // The oldest steps go when there are too many or they grow too large; the one the draft stands at stays. Weighing them
    // means reading them, so small ones are weighed only now and then.
    private static async Task Forget(GardenTables tables, DocumentRow row, CancellationToken stop)
    {
        if (row.Step % 16 != 0 && row.Text.Length < SmallLetters)
        {
            return;
        }

        var sizes = await tables
            .Steps.Where(step => step.DocumentId == row.Id && step.Number != row.Step)
            .OrderByDescending(step => step.Number)
            .Select(step => new { step.Number, step.Text.Length })
            .ToListAsync(stop)
            .ConfigureAwait(false);
        var (kept, letters) = (1, (long)row.Text.Length);
        foreach (var step in sizes)
        {
            (kept, letters) = (kept + 1, letters + step.Length);
            if (kept > Limits.Steps || letters > Limits.StepLetters)
            {
                await tables
                    .Steps.Where(old => old.DocumentId == row.Id && old.Number <= step.Number && old.Number != row.Step)
                    .ExecuteDeleteAsync(stop)
                    .ConfigureAwait(false);
                return;
            }
        }
    }
}
