using System.Globalization;
using Dripwright.Engine.Rigs;
using Dripwright.Language;
using Dripwright.Store.Ground;
using Dripwright.Store.Tables;
using Microsoft.EntityFrameworkCore;

namespace Dripwright.Store;

public sealed partial class Garden
{
    /// <summary>Saves the draft as a revision, if it reads without a fault.</summary>
    /// <param name="id">The document.</param>
    /// <param name="basedOnVersion">The version that the person was looking at.</param>
    /// <param name="who">Who saves it; may be empty.</param>
    /// <param name="note">Why; may be empty.</param>
    /// <param name="stop">Asks to stop.</param>
    public async Task<RevisionOutcome> SaveRevisionAsync(
        int id,
        int basedOnVersion,
        string who,
        string note,
        CancellationToken stop = default
    )
    {
        ArgumentNullException.ThrowIfNull(who);
        ArgumentNullException.ThrowIfNull(note);
        // Who has signed in cannot save in another's name.
        who = _hand.Who.Length > 0 ? _hand.Who : who;
        if ((Limits.NoteFault(who) ?? Limits.NoteFault(note)) is { } why)
        {
            return new RevisionOutcome.Refused(why);
        }

        if (await DraftAsync(id, stop).ConfigureAwait(false) is not { } draft)
        {
            return new RevisionOutcome.Gone();
        }

        if (_hand.Refusal(GardenHand.ActOn(draft.Kind)) is { } refusal)
        {
            return new RevisionOutcome.Refused(refusal);
        }

        if (draft.Version != basedOnVersion)
        {
            return new RevisionOutcome.Overtaken(draft);
        }

        // Judged before the writer's turn is taken, so that others need not wait for it.
        var catalogue = await CatalogueAsync(stop).ConfigureAwait(false);
        var faults = DocumentReader.Faults(draft.Kind, draft.Name, draft.Text, catalogue.Catalogue);
        if (faults.Count > 0)
        {
            return new RevisionOutcome.Faulty(faults);
        }

        var outcome = await _at.Change<RevisionOutcome>(
                async tables =>
                {
                    var isMine = await Documents.Claim(tables, id, basedOnVersion, stop).ConfigureAwait(false);
                    if (await Documents.Find(tables, id, stop).ConfigureAwait(false) is not { } row)
                    {
                        return new RevisionOutcome.Gone();
                    }

                    if (!isMine)
                    {
                        return new RevisionOutcome.Overtaken(
                            await Documents.Draft(tables, row, stop).ConfigureAwait(false)
                        );
                    }

                    return await Save(tables, row, who, note, stop).ConfigureAwait(false);
                },
                stop
            )
            .ConfigureAwait(false);
        if (outcome is RevisionOutcome.Saved)
        {
            Tell(new GardenChange(GardenEvent.Revision, id, basedOnVersion));
        }

        return outcome;
    }

    /// <summary>All revisions, the newest first, each with what it changed.</summary>
    /// <param name="id">The document; it may lie in the bin.</param>
    /// <param name="stop">Asks to stop.</param>
    public async Task<IReadOnlyList<RevisionLine>> RevisionsAsync(int id, CancellationToken stop = default)
    {
        var (kind, revisions) = await _at.Read(async tables =>
                (
                    await tables
                        .Documents.Where(row => row.Id == id)
                        .Select(row => row.Kind)
                        .FirstOrDefaultAsync(stop)
                        .ConfigureAwait(false),
                    await tables
                        .Revisions.AsNoTracking()
                        .Where(row => row.DocumentId == id)
                        .OrderBy(row => row.Number)
                        .ToListAsync(stop)
                        .ConfigureAwait(false)
                )
            )
            .ConfigureAwait(false);
        var catalogue = await CatalogueAsync(stop).ConfigureAwait(false);
        var lines = new List<RevisionLine>();
        RigReading? before = null;
        foreach (var row in revisions)
        {
            var reading =
                kind == DocumentKinds.Rig
                    ? RigReader.Read(
                        row.Text,
                        string.Create(CultureInfo.InvariantCulture, $"revision {row.Number}"),
                        catalogue.Catalogue
                    )
                    : null;
            lines.Add(Line(Of(row), before, reading));
            before = reading;
        }

        lines.Reverse();
        return lines;
    }

    // Only rigs can be compared field by field.
    private static RevisionLine Line(Revision revision, RigReading? before, RigReading? after)
    {
        if (before is null || after is null)
        {
            return new RevisionLine(revision, [], null);
        }

        return before.Rig is { } earlier && after.Rig is { } later
            ? new RevisionLine(revision, RigDifference.Of(earlier, later), null)
            : new RevisionLine(
                revision,
                [],
                Words.Of("store.revision.unread", after.Faults.Concat(before.Faults).First().Told())
            );
    }

    /// <summary>A saved revision; null where there is none of that number.</summary>
    /// <param name="id">The document; it may lie in the bin.</param>
    /// <param name="number">The revision.</param>
    /// <param name="stop">Asks to stop.</param>
    public Task<Revision?> RevisionAsync(int id, int number, CancellationToken stop = default) =>
        _at.Read(async tables =>
            await tables
                .Revisions.AsNoTracking()
                .SingleOrDefaultAsync(row => row.DocumentId == id && row.Number == number, stop)
                .ConfigureAwait(false)
                is { } row
                ? Of(row)
                : null
        );

    private async Task<RevisionOutcome> Save(
        GardenTables tables,
        DocumentRow document,
        string who,
        string note,
        CancellationToken stop
    )
    {
        var newest = await tables
            .Revisions.AsNoTracking()
            .Where(row => row.DocumentId == document.Id)
            .OrderByDescending(row => row.Number)
            .FirstOrDefaultAsync(stop)
            .ConfigureAwait(false);
        if (newest is not null && newest.Text == document.Text)
        {
            return new RevisionOutcome.Unchanged(Of(newest));
        }

        var made = new RevisionRow
        {
            DocumentId = document.Id,
            Number = (newest?.Number ?? 0) + 1,
            At = Now,
            Who = who,
            Note = note,
            Text = document.Text,
        };
        tables.Revisions.Add(made);
        await tables.SaveChangesAsync(stop).ConfigureAwait(false);
        return new RevisionOutcome.Saved(Of(made));
    }

    private static Revision Of(RevisionRow row) => new(row.DocumentId, row.Number, row.At, row.Who, row.Note, row.Text);
}
