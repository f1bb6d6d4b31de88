using Dripwright.Store.Ground;
using Dripwright.Store.Tables;
using Microsoft.EntityFrameworkCore;

namespace Dripwright.Store;

public sealed partial class Garden
{
    /// <summary>The rigs in use, by name.</summary>
    /// <param name="stop">Asks to stop.</param>
    public Task<IReadOnlyList<DocumentEntry>> RigsAsync(CancellationToken stop = default) =>
        DocumentsAsync(DocumentKinds.Rig, stop);

    /// <summary>Documents of a kind that are in use, by name.</summary>
    /// <param name="kind">The kind; all kinds where null.</param>
    /// <param name="stop">Asks to stop.</param>
    public Task<IReadOnlyList<DocumentEntry>> DocumentsAsync(string? kind, CancellationToken stop = default) =>
        List(row => row.RemovedAt == null && (kind == null || row.Kind == kind), stop);

    /// <summary>Adds a rig.</summary>
    /// <param name="name">What the grower calls it. Two rigs may have one name.</param>
    /// <param name="text">Its rig file; it may have faults.</param>
    /// <param name="stop">Asks to stop.</param>
    /// <exception cref="GardenException">The name or the text cannot be kept.</exception>
    public Task<Draft> AddRigAsync(string name, string text, CancellationToken stop = default) =>
        AddDocumentAsync(DocumentKinds.Rig, name, text, stop);

    /// <summary>Adds a document of any kind, for the rooms that keep other things than rigs.</summary>
    /// <param name="kind">A short word in lower case, such as "log".</param>
    /// <param name="name">What the grower calls it.</param>
    /// <param name="text">Its text.</param>
    /// <param name="stop">Asks to stop.</param>
    /// <exception cref="ArgumentException">The kind is no such word, or one of which a garden has exactly one.</exception>
    /// <exception cref="GardenException">The name or the text cannot be kept.</exception>
    public async Task<Draft> AddDocumentAsync(string kind, string name, string text, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(text);
        if (!DocumentKinds.IsKind(kind) || DocumentKinds.IsSingle(kind))
        {
            throw new ArgumentException($"\"{kind}\" is no kind of which documents can be added.", nameof(kind));
        }

        _hand.Need(GardenHand.ActOn(kind));
        Refuse(Limits.NameFault(name) ?? Limits.TextFault(text));
        var draft = await _at.Change(
                async tables =>
                {
                    var row = await Documents
                        .Add(tables, kind, name, text, "new", ThisMoment, stop)
                        .ConfigureAwait(false);
                    return await Documents.Draft(tables, row, stop).ConfigureAwait(false);
                },
                stop
            )
            .ConfigureAwait(false);
        Tell(new GardenChange(GardenEvent.List, draft.Id, draft.Version));
        return draft;
    }

    /// <summary>Gives a document another name. False where it is not there.</summary>
    /// <param name="id">The document.</param>
    /// <param name="name">The new name.</param>
    /// <param name="stop">Asks to stop.</param>
    /// <exception cref="GardenException">The name cannot be kept.</exception>
    public Task<bool> RenameAsync(int id, string name, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(name);
        Refuse(Limits.NameFault(name));
        var who = _hand.Who;
        return ChangeList(
            id,
            rows =>
                rows.ExecuteUpdateAsync(
                    set => set.SetProperty(row => row.Name, name).SetProperty(row => row.ChangedBy, who),
                    stop
                ),
            stop
        );
    }

    /// <summary>Puts a rig, or another document, into the bin with all its revisions and steps. False where it is not there.</summary>
    /// <param name="id">The document.</param>
    /// <param name="stop">Asks to stop.</param>
    public Task<bool> RemoveRigAsync(int id, CancellationToken stop = default)
    {
        DateTime? now = Now;
        var who = _hand.Who;
        return ChangeList(
            id,
            rows =>
                rows.Where(row =>
                        row.RemovedAt == null && row.Kind != DocumentKinds.Catalogue && row.Kind != DocumentKinds.OnHand
                    )
                    .ExecuteUpdateAsync(
                        set => set.SetProperty(row => row.RemovedAt, now).SetProperty(row => row.ChangedBy, who),
                        stop
                    ),
            stop
        );
    }

    /// <summary>Takes a document out of the bin, as it was. False where it is not in the bin.</summary>
    /// <param name="id">The document.</param>
    /// <param name="stop">Asks to stop.</param>
    public Task<bool> RestoreRigAsync(int id, CancellationToken stop = default)
    {
        var who = _hand.Who;
        return ChangeList(
            id,
            rows =>
                rows.Where(row => row.RemovedAt != null)
                    .ExecuteUpdateAsync(
                        set =>
                            set.SetProperty(row => row.RemovedAt, (DateTime?)null)
                                .SetProperty(row => row.ChangedBy, who),
                        stop
                    ),
            stop
        );
    }

    private async Task<bool> ChangeList(int id, Func<IQueryable<DocumentRow>, Task<int>> change, CancellationToken stop)
    {
        _hand.Need(GardenAct.Edit);
        var changed =
            await _at.Change(tables => change(tables.Documents.Where(row => row.Id == id)), stop).ConfigureAwait(false)
            > 0;
        if (changed)
        {
            Tell(new GardenChange(GardenEvent.List, id, 0));
        }

        return changed;
    }

    private Task<IReadOnlyList<DocumentEntry>> List(
        System.Linq.Expressions.Expression<Func<DocumentRow, bool>> which,
        CancellationToken stop
    ) =>
        _at.Read<IReadOnlyList<DocumentEntry>>(async tables =>
        {
            var entries = await tables
                .Documents.AsNoTracking()
                .Where(which)
                .Select(row => new DocumentEntry(
                    row.Id,
                    row.Kind,
                    row.Name,
                    row.Version,
                    row.ChangedAt,
                    tables.Revisions.Count(revision => revision.DocumentId == row.Id),
                    row.RemovedAt,
                    row.ChangedBy
                ))
                .ToListAsync(stop)
                .ConfigureAwait(false);
            // Sorted here: each database has an order of letters of its own.
            return
            [
                .. entries.OrderBy(entry => entry.Name, StringComparer.OrdinalIgnoreCase).ThenBy(entry => entry.Id),
            ];
        });
}
