using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Proposing;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Curing.Ideas;

/// <summary>A finding for which changes are thought of, with the plan that has it.</summary>
/// <param name="Plan">The plan.</param>
/// <param name="Finding">The finding.</param>
internal sealed record Asked(StagedPlan Plan, Finding Finding)
{
    private IReadOnlyList<int>? _specs;

    public Rig Rig => Plan.Layout.Resolved.Rig;

    public RigLayout Layout => Plan.Layout;

    public RigParts Parts => Plan.Layout.Parts;

    public PartsCatalogue Catalogue => Plan.Layout.Parts.Catalogue;

    /// <summary>Indices in the rig file of the rows it speaks of; all where it names none.</summary>
    public IReadOnlyList<int> Specs => _specs ??= SpecsOf();

    /// <summary>What a group of the catalogue holds in sizes the grower can buy.</summary>
    public IEnumerable<T> Sold<T>(IReadOnlyDictionary<string, T> group)
        where T : CatalogueEntry => group.Values.Where(p => Market.Sells(p, Rig.Units));

    /// <summary>Path of a field of a row of the file.</summary>
    public static string Row(int spec, string name) => $"rows[{QuantityWords.Count(spec)}].{name}";

    /// <summary>Paths of a field of every row of the file.</summary>
    public IEnumerable<int> AllSpecs => Enumerable.Range(0, Rig.Rows.Count);

    /// <summary>One change made to several rows at once; nothing where one of them cannot hold it, or none changes.</summary>
    public static IEnumerable<Cure> Each(IEnumerable<int> specs, Func<int, FieldChange?> change)
    {
        FieldChange?[] changes = [.. specs.Select(change)];
        return changes.Length > 0 && changes.All(c => c is not null)
            ? [Cure.Of([.. changes.OfType<FieldChange>()])]
            : [];
    }

    private int[] SpecsOf()
    {
        var runs = Layout.Runs.ToLookup(r => r.Label, r => r.Row);
        int[] rows =
        [
            .. Finding
                .Places.SelectMany(p => p.Row > 0 ? [p.Row] : runs[p.Run])
                .Where(row => row > 0 && row <= Layout.Rows.Count)
                .Select(row => Layout.Rows[row - 1].SpecIndex)
                .Distinct()
                .Order(),
        ];
        return rows.Length > 0 ? rows : [.. AllSpecs];
    }
}
