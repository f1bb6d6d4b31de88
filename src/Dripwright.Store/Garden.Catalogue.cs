using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Files;
using Dripwright.Engine.Rigs;
using Dripwright.Store.Ground;
using Dripwright.Store.Tables;
using Microsoft.EntityFrameworkCore;

namespace Dripwright.Store;

/// <summary>The parts that a garden's rigs can name.</summary>
/// <param name="Catalogue">The program's own, with the newest saved revision of the user's laid over it.</param>
/// <param name="Revision">Number of that revision; 0 where the user has saved none.</param>
/// <param name="Faults">Why the user's own is not laid over (it no longer reads with this program); empty when all is well.</param>
public sealed record GardenCatalogue(PartsCatalogue Catalogue, int Revision, IReadOnlyList<Fault> Faults);

public sealed partial class Garden
{
    private volatile GardenCatalogue? _catalogue;

    /// <summary>The draft of the user's own catalogue. Save a revision of it to put it in force.</summary>
    /// <param name="stop">Asks to stop.</param>
    public Task<Draft> CatalogueDraftAsync(CancellationToken stop = default) => Single(DocumentKinds.Catalogue, stop);

    /// <summary>The draft of the parts on hand. Save a revision of it to put it in force.</summary>
    /// <param name="stop">Asks to stop.</param>
    public Task<Draft> OnHandDraftAsync(CancellationToken stop = default) => Single(DocumentKinds.OnHand, stop);

    /// <summary>The catalogue in force.</summary>
    /// <param name="stop">Asks to stop.</param>
    public async Task<GardenCatalogue> CatalogueAsync(CancellationToken stop = default)
    {
        var number = await _at.Read(tables =>
                Newest(tables, DocumentKinds.Catalogue).Select(row => row.Number).FirstOrDefaultAsync(stop)
            )
            .ConfigureAwait(false);
        if (_root._catalogue is { } known && known.Revision == number)
        {
            return known;
        }

        var newest = await _at.Read(tables =>
                Newest(tables, DocumentKinds.Catalogue)
                    .Select(row => new { row.Number, row.Text })
                    .FirstOrDefaultAsync(stop)
            )
            .ConfigureAwait(false);
        var made = newest is null
            ? new GardenCatalogue(PartsCatalogue.Default, 0, [])
            : DocumentReader.Catalogue(newest.Text, newest.Number);
        _root._catalogue = made;
        return made;
    }

    /// <summary>The parts on hand in force: those of the newest saved revision.</summary>
    /// <param name="stop">Asks to stop.</param>
    public async Task<IReadOnlyList<OnHand>> OnHandAsync(CancellationToken stop = default)
    {
        var catalogue = await CatalogueAsync(stop).ConfigureAwait(false);
        var text = await _at.Read(tables =>
                Newest(tables, DocumentKinds.OnHand).Select(row => row.Text).FirstOrDefaultAsync(stop)
            )
            .ConfigureAwait(false);
        return text is null ? [] : DocumentReader.OnHand(text, catalogue.Catalogue).Parts;
    }

    private static IQueryable<Tables.RevisionRow> Newest(Tables.GardenTables tables, string kind) =>
        tables
            .Revisions.AsNoTracking()
            .Where(row => tables.Documents.Any(document => document.Kind == kind && document.Id == row.DocumentId))
            .OrderByDescending(row => row.Number);

    private Task<Draft> Single(string kind, CancellationToken stop) =>
        _at.Read(async tables =>
        {
            var row = await tables
                .Documents.AsNoTracking()
                .SingleAsync(document => document.Kind == kind, stop)
                .ConfigureAwait(false);
            return await Documents.Draft(tables, row, stop).ConfigureAwait(false);
        });
}
