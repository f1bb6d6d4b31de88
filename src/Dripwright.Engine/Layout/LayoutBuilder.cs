using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Layout;

/// <summary>Puts the placements together, in the only order in which each knows what it stands on.</summary>
internal sealed class LayoutBuilder(Rig rig, RigParts parts)
{
    public RigLayout Build()
    {
        List<RowPlace> places = RowPlacement.Place(rig, parts.Catalogue);
        DrainPlaces drains = new DrainPlacement(rig, parts, places).Lay();
        double endX = rig.Reservoir.At == RowEnd.Left ? places[0].OriginX : places[0].OriginX + places[0].Length;
        TankPlace tank = TankPlacement.Place(rig, parts, endX, drains.Mouth.Y, drains.Mouth);
        List<RowFeed> feeds = [.. places.Select(p => FeedPlacement.Lay(p, rig, parts))];
        IReadOnlyList<FeedLink> supply = new SupplyPlacement(rig, parts, places, feeds, tank).Lay();
        StandLayout stand = StandPlacement.Place(rig, parts, places);
        List<RowLayout> rows = [.. places.Select((p, i) => RowOf(p, feeds[i], drains.Rows[i], drains.Exits[i]))];
        double left = Math.Min(tank.Left, rows.Min(r => r.OriginX));
        double right = Math.Max(tank.Right, rows.Max(r => r.OriginX + r.Length));
        return new RigLayout
        {
            Parts = parts,
            Rows = rows,
            Stand = stand,
            Tank = tank,
            Supply = supply,
            Returns = drains.Returns,
            Conflicts = [.. rows.SelectMany(Conflicts)],
            DepthUsed = places[^1].CentreY + (places[^1].Depth / 2),
            LengthUsed = right - left,
        };
    }

    private IEnumerable<HoleConflict> Conflicts(RowLayout row) =>
        row
            .Feed.Where(f => f.Holes.Count > 0)
            .Append(row.Drain)
            .SelectMany(run => HoleClearance.Check(run, row.Joints, parts.Tube.Outside / 2));

    private static RowLayout RowOf(RowPlace place, RowFeed feed, PipeRun drain, double exit) =>
        new()
        {
            Number = place.Number,
            SpecIndex = place.SpecIndex,
            Spec = place.Spec,
            Pot = place.Pot,
            Length = place.Length,
            Modules = place.Modules,
            OriginX = place.OriginX,
            CentreY = place.CentreY,
            Depth = place.Depth,
            Floor = place.Floor,
            Base = place.Base,
            Pots = place.Pots,
            Emitters = feed.Emitters,
            Feed = feed.Runs,
            Drain = drain,
            FeedEntries = feed.Entries,
            DrainExit = exit,
            Joints = place.Joints,
        };
}
