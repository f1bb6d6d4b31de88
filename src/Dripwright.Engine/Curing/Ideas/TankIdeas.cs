using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Curing.Ideas;

/// <summary>What a grower changes at the reservoir and the pump that stands in it.</summary>
internal static class TankIdeas
{
    private static readonly double[] s_fills = [0.9, 0.85, 0.8, 0.75, 0.7, 0.6, 0.5, 0.4];

    /// <summary>Filled less high.</summary>
    public static IEnumerable<Cure> FillLess(Asked asked) =>
        s_fills.Where(f => f < asked.Rig.Reservoir.Fill - 1e-6).Select(f => Cure.Of([Set.Share("reservoir.fill", f)]));

    /// <summary>Filled higher.</summary>
    public static IEnumerable<Cure> FillMore(Asked asked) =>
        s_fills
            .Reverse()
            .Where(f => f > asked.Rig.Reservoir.Fill + 1e-6)
            .Select(f => Cure.Of([Set.Share("reservoir.fill", f)]));

    /// <summary>Filled higher, with a lowest level that keeps the pump covered.</summary>
    public static IEnumerable<Cure> FillMoreKept(Asked asked) =>
        KeepMore(asked)
            .Take(1)
            .SelectMany(keep => FillMore(asked).Select(f => Cure.Of([.. f.Changes, .. keep.Changes])));

    /// <summary>A larger reservoir, the next larger first.</summary>
    public static IEnumerable<Cure> Larger(Asked asked) =>
        Tanks(asked, t => t.Volume > 1.02 * asked.Parts.Tank.Inside.Capacity)
            .OrderBy(t => t.Volume)
            .Select(t => Take(asked.Rig, t));

    /// <summary>A lower reservoir, the largest of them first.</summary>
    public static IEnumerable<Cure> Lower(Asked asked) =>
        Tanks(asked, t => t.Height < asked.Parts.Tank.Height - 1e-6)
            .OrderByDescending(t => t.Volume)
            .Select(t => Take(asked.Rig, t));

    private static IEnumerable<TankType> Tanks(Asked asked, Func<TankType, bool> wanted) =>
        asked.Sold(asked.Catalogue.Tanks).Where(wanted).OrderBy(t => t.Key, StringComparer.Ordinal);

    // Measures of the one that is given up go with it.
    private static Cure Take(Rig rig, TankType tank)
    {
        var own = rig.Reservoir;
        List<FieldChange> changes = [Set.To("reservoir.tank", tank.Key)];
        foreach (
            var (path, said) in new (string, object?)[]
            {
                ("reservoir.shape", own.Shape),
                ("reservoir.length", own.Length),
                ("reservoir.width", own.Width),
                ("reservoir.height", own.Height),
                ("reservoir.volume", own.Volume),
            }
        )
        {
            if (said is not null)
            {
                changes.Add(Set.Out(path));
            }
        }

        return Cure.Of(changes);
    }

    /// <summary>More water kept in reserve: over the pump's inlet by what it needs.</summary>
    public static IEnumerable<Cure> KeepMore(Asked asked)
    {
        if (asked.Parts.Pump is not { } pump)
        {
            return [];
        }

        var least = pump.InletHeight + asked.Plan.Reservoir.InletCoverWanted;
        return least > asked.Rig.Reservoir.LowestLevel
            ? Set.Cure(RigCure.LengthUp(asked.Rig, "reservoir.lowestLevel", least + 0.001))
            : [];
    }

    /// <summary>Less water kept in reserve.</summary>
    public static IEnumerable<Cure> KeepLess(Asked asked) =>
        new[] { 0.1, 0.08, 0.05, 0.03 }
            .Where(l => l < asked.Rig.Reservoir.LowestLevel - 1e-6)
            .SelectMany(l => Set.Cure(RigCure.LengthDown(asked.Rig, "reservoir.lowestLevel", l)));

    /// <summary>The pump's inlet as low as the pump is made.</summary>
    public static IEnumerable<Cure> LowerInlet(Asked asked)
    {
        if (asked.Rig.Pump.InletHeight is not { } own)
        {
            return [];
        }

        return
        [
            Cure.Of([Set.Out("pump.inletHeight")]),
            .. own > 0.012 ? Set.Cure(RigCure.LengthDown(asked.Rig, "pump.inletHeight", 0.01)) : [],
        ];
    }

    /// <summary>The reservoir set lower.</summary>
    public static IEnumerable<Cure> SetLower(Asked asked)
    {
        foreach (var level in new[] { 0.0, -0.15, -0.3 }.Where(b => b < asked.Rig.Reservoir.Base - 1e-6))
        {
            foreach (var cure in Set.Cure(RigCure.LengthDown(asked.Rig, "reservoir.base", level)))
            {
                yield return cure;
            }
        }
    }

    /// <summary>The reservoir set higher.</summary>
    public static IEnumerable<Cure> SetHigher(Asked asked)
    {
        foreach (var level in new[] { 0.5, 1.0, 1.5, 1.8 }.Where(b => b > asked.Rig.Reservoir.Base + 1e-6))
        {
            foreach (var cure in Set.Cure(RigCure.LengthUp(asked.Rig, "reservoir.base", level)))
            {
                yield return cure;
            }
        }
    }

    /// <summary>At the other end of the rows.</summary>
    public static IEnumerable<Cure> OtherEnd(Asked asked) =>
        [Cure.Of([Set.To("reservoir.at", asked.Rig.Reservoir.At == RowEnd.Left ? "right" : "left")])];

    /// <summary>Just past the end of the rows.</summary>
    public static IEnumerable<Cure> PastTheEnd(Asked asked)
    {
        var tank = asked.Layout.Tank;
        var first = asked.Layout.Rows[0];
        var left = asked.Rig.Reservoir.At == RowEnd.Left;
        var gap = left
            ? first.OriginX - asked.Layout.Rows.Min(r => r.OriginX)
            : asked.Layout.Rows.Max(r => r.OriginX + r.Length) - (first.OriginX + first.Length);
        return Set.Cure(RigCure.LengthUp(asked.Rig, "reservoir.gap", Math.Max(0, gap)));
    }

    /// <summary>Filled up more often.</summary>
    public static IEnumerable<Cure> VisitOftener(Asked asked) =>
        asked.Plan.Reservoir.Days is { } days && Math.Floor(days) is >= 1 and var whole
            ? Set.Cure(RigCure.Text("reservoir.daysWanted", $"{Units.QuantityWords.Count((int)whole)} d"))
            : [];
}
