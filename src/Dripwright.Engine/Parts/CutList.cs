using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Parts;

/// <summary>Everything that is cut from stock: one job for each material.</summary>
internal sealed class CutList
{
    /// <summary>[m] Shorter leftovers go to the bin. Common practice.</summary>
    private const double LeastLeftover = 0.3;

    /// <summary>[m] What is shorter cannot be cut; the design itself is wrong.</summary>
    private const double LeastPiece = 0.001;

    /// <summary>Label of a piece that is a spare; the edge has a word for it.</summary>
    internal const string SparePiece = "spare";

    private readonly IReadOnlyList<OnHand> _onHand;
    private readonly List<CutPlan> _plans = [];
    private readonly List<PartLine> _lines = [];
    private readonly List<CutTrouble> _troubles = [];

    public CutList(Rig rig, RigLayout layout)
    {
        _onHand = rig.OnHand;
        List<(PipeSize Pipe, WantedPiece Piece)> pieces =
        [
            .. layout.Runs.SelectMany(r => r.Pieces, (r, p) => (r.Pipe, new WantedPiece(p.Label, p.Length))),
            .. RunParts.Nipples(layout).Select(n => (n.Pipe, new WantedPiece(n.Label, n.Length))),
        ];
        foreach (var pipe in pieces.GroupBy(p => p.Pipe.Key))
        {
            var size = pipe.First().Pipe;
            List<WantedPiece> wanted = [.. pipe.Select(p => p.Piece)];
            if (size.Flexible)
            {
                wanted.AddRange(Spare(rig.Spares.Tube, size.StockLengths.Max()));
            }

            // A knife takes nothing off a hose.
            Plan(size, size.StockLengths, wanted, size.Flexible ? 0 : rig.Stand.SawCut, Places(size, layout));
        }

        if (layout.Stand.Members.Count > 0)
        {
            List<WantedPiece> tubes =
            [
                .. layout
                    .Stand.Members.GroupBy(m => m.Label)
                    .Select(g => new WantedPiece(g.Key, g.First().Length, g.Count())),
            ];
            Plan(
                layout.Parts.Tube,
                layout.Parts.Tube.StockLengths,
                tubes,
                rig.Stand.SawCut,
                Phrase.Of("part.where.stand")
            );
        }
    }

    public IReadOnlyList<CutPlan> Plans => _plans;

    public IReadOnlyList<PartLine> Lines => _lines;

    public IReadOnlyList<CutTrouble> Troubles => _troubles;

    private void Plan(
        CatalogueEntry material,
        IReadOnlyList<double> lengths,
        List<WantedPiece> wanted,
        double kerf,
        Phrase where
    )
    {
        foreach (var piece in wanted.Where(p => p.Length < LeastPiece))
        {
            Trouble(Phrase.Of("cut.no-length", piece.Label, material.Name));
        }

        wanted.RemoveAll(p => p.Length < LeastPiece);
        List<StockOnHand> have = [];
        foreach (var item in _onHand.Where(h => h.Part == material.Key))
        {
            if (item.Length is not { } length)
            {
                Trouble(Phrase.Of("cut.on-hand-no-length", material.Name));
                continue;
            }

            have.Add(new StockOnHand(Labels.Of(have.Count + 1), length, item.Count));
        }

        var job = new CutJob
        {
            Material = material.Name,
            // Typical prices go by length anyway, and nothing made up may choose how a pipe is cut.
            Offers = [.. lengths.Select(l => new StockOffer(l, PartLines.OwnPriceOf(material, l)))],
            OnHand = have,
            Wanted = wanted,
            Kerf = kerf,
            MinimumUsableLeftover = LeastLeftover,
        };
        var result = CutPlanner.Plan(job);
        if (result.Plan is { } plan)
        {
            _plans.Add(plan);
            AddLines(material, plan, where);
            return;
        }

        foreach (var fault in result.Faults)
        {
            Trouble(Phrase.Of("cut.fault", material.Name, fault.Place, fault.Found, fault.Expected, fault.Remedy));
        }

        // Without a plan the list still says about how much there must be.
        var longest = lengths.Max();
        var count = (int)Math.Ceiling(wanted.Sum(p => p.Count * p.Length) / longest);
        _lines.Add(
            PartLines.Of(material, material.Key, Math.Max(1, count), 0, 0, where, longest, Phrase.Of("part.uncut"))
        );

        void Trouble(Phrase what) => _troubles.Add(new CutTrouble(new Place(Phrase.Plain(material.Name)), what));
    }

    private void AddLines(CatalogueEntry material, CutPlan plan, Phrase where)
    {
        foreach (var bought in plan.Purchases.Where(p => p.Count > 0))
        {
            _lines.Add(PartLines.Of(material, material.Key, bought.Count, 0, 0, where, bought.Length, Phrase.None));
        }

        foreach (var used in plan.Stocks.Where(s => !s.IsBought && s.Pieces.Count > 0).GroupBy(s => s.Length))
        {
            var count = used.Count();
            _lines.Add(
                PartLines.Of(material, material.Key, count, 0, count, where, used.Key, Phrase.Of("part.on-hand"))
            );
        }
    }

    private static IEnumerable<WantedPiece> Spare(double length, double longest)
    {
        var parts = (int)Math.Ceiling((length / longest) - 1e-9);
        return length < LeastPiece ? [] : [new WantedPiece(SparePiece, length / parts, parts)];
    }

    private static Phrase Places(PipeSize pipe, RigLayout layout)
    {
        List<Phrase> places = [];
        void Add(PipeSize used, Phrase place)
        {
            if (used.Key == pipe.Key)
            {
                places.Add(place);
            }
        }

        Add(layout.Parts.Header, Phrase.Of("part.where.header"));
        Add(layout.Parts.Line, Phrase.Of("part.where.feed-lines"));
        Add(layout.Parts.Drain, Phrase.Of("part.where.drains"));
        return Phrase.Of(new Several(places, Joint.Comma));
    }
}
