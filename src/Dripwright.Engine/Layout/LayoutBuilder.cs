using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Layout;

/// <summary>Puts the placements together, in the only order in which each knows what it stands on.</summary>
internal sealed class LayoutBuilder(ResolvedRig resolved)
{
    public RigLayout Build()
    {
        (var rig, var parts) = (resolved.Rig, resolved.Parts);
        var places = RowPlacement.Place(resolved);
        var drains = new DrainPlacement(rig, parts, places).Lay();
        var endX = rig.Reservoir.At == RowEnd.Left ? places[0].OriginX : places[0].OriginX + places[0].Length;
        var tank = TankPlacement.Place(rig, parts, endX, drains.Mouth.Y, drains.Mouth);
        List<RowFeed> feeds = [.. places.Select(p => FeedPlacement.Lay(p, rig, parts))];
        var supply = new SupplyPlacement(rig, parts, places, feeds, tank).Lay();
        var stand = StandPlacement.Place(rig, parts, places, drains.Rows);
        var members = stand.Members.ToLookup(m => m.Row);
        var hangers = stand.Hangers.ToLookup(h => h.Row);
        List<RowLayout> rows =
        [
            .. places.Select(
                (p, i) =>
                    RowOf(p, feeds[i], drains.Rows[i], drains.Exits[i]) with
                    {
                        Frames = [.. StandFrames.Of(members[p.Number]).Select(x => x - p.OriginX)],
                        Hangers = [.. hangers[p.Number]],
                    }
            ),
        ];
        List<PipeRun> pipes = [.. drains.Rows, .. drains.Returns];
        var half = parts.Drain.OutsideDiameter / 2;
        var left = Least(tank.Left, rows.Min(r => r.OriginX), pipes.Min(p => p.Path.Min(c => c.X)) - half);
        var right = Most(tank.Right, rows.Max(r => r.OriginX + r.Length), pipes.Max(p => p.Path.Max(c => c.X)) + half);
        var back = Most(
            tank.Back,
            places.Max(p => p.CentreY + (p.Depth / 2)),
            pipes.Max(p => p.Path.Max(c => c.Y)) + half
        );
        return new RigLayout
        {
            Resolved = resolved,
            Rows = rows,
            Stand = stand,
            Wires = WirePlacement.Place(rig, parts, places),
            Tank = tank,
            Supply = supply,
            Returns = drains.Returns,
            Conflicts = [.. rows.SelectMany(Conflicts)],
            DepthUsed = back,
            LengthUsed = right - left,
        };
    }

    private static double Least(params double[] values) => values.Min();

    private static double Most(params double[] values) => values.Max();

    private IEnumerable<HoleConflict> Conflicts(RowLayout row) =>
        row
            .Feed.Where(f => f.Holes.Count > 0)
            .Append(row.Drain)
            .SelectMany(run => HoleClearance.Check(run, row.Joints, resolved.Parts.Tube.Outside / 2));

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
            Frames = [],
        };
}
