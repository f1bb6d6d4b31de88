using Dripwright.Engine.Findings;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Curing.Ideas;

/// <summary>What a grower changes at drains and pot outlets.</summary>
internal static class DrainIdeas
{
    private static readonly double[] s_slopes = [0.01, 0.015, 0.02, 0.025, 0.03, 0.04];

    /// <summary>More slope.</summary>
    public static IEnumerable<Cure> Steeper(Asked asked) =>
        s_slopes.Where(s => s > asked.Rig.Drain.Slope + 1e-6).Select(s => Cure.Of([Set.Slope("drain.slope", s)]));

    /// <summary>Less slope.</summary>
    public static IEnumerable<Cure> Flatter(Asked asked) =>
        s_slopes
            .Reverse()
            .Where(s => s < asked.Rig.Drain.Slope - 1e-6)
            .Select(s => Cure.Of([Set.Slope("drain.slope", s)]));

    /// <summary>A wider drain.</summary>
    public static IEnumerable<Cure> Wider(Asked asked) =>
        asked
            .Sold(asked.Catalogue.Pipes)
            .Where(p => !p.Flexible && p.InsideDiameter > asked.Parts.Drain.InsideDiameter)
            .OrderBy(p => p.InsideDiameter)
            .ThenBy(p => p.Key, StringComparer.Ordinal)
            .Select(p => Cure.Of([Set.To("drain.pipe", p.Key)]));

    /// <summary>Wider and steeper at once.</summary>
    public static IEnumerable<Cure> WiderSteeper(Asked asked) =>
        Wider(asked).SelectMany(w => Steeper(asked).Select(s => Cure.Of([.. w.Changes, .. s.Changes])));

    /// <summary>The drain leaves at another place.</summary>
    public static IEnumerable<Cure> OtherExit(Asked asked) =>
        [Cure.Of([Set.To("drain.exit", asked.Rig.Drain.Exit == DrainExit.End ? "middle" : "end")])];

    /// <summary>Another outlet of the pots, the widest first.</summary>
    public static IEnumerable<Cure> OtherOutlet(Asked asked) =>
        asked
            .Sold(asked.Catalogue.Outlets)
            .Where(o => o.Key != asked.Parts.Outlet.Key)
            .OrderByDescending(o => o.PipeHole)
            .ThenBy(o => o.Key, StringComparer.Ordinal)
            .Select(o => Cure.Of([Set.To("drain.outlet", o.Key)]));

    /// <summary>More height between pots and drain.</summary>
    public static IEnumerable<Cure> FartherBelow(Asked asked) =>
        new[] { 0.03, 0.05, 0.08, 0.12, 0.16, 0.2 }
            .Where(b => b > asked.Rig.Drain.BelowPots + 1e-6)
            .SelectMany(b => Set.Cure(RigCure.LengthUp(asked.Rig, "drain.belowPots", b)));

    /// <summary>The drain closer under the pots, so that its end comes higher.</summary>
    public static IEnumerable<Cure> CloserBelow(Asked asked) =>
        new[] { 0.12, 0.08, 0.05, 0.03, 0.01 }
            .Where(b => b < asked.Rig.Drain.BelowPots - 1e-6)
            .SelectMany(b => Set.Cure(RigCure.LengthDown(asked.Rig, "drain.belowPots", b)));

    /// <summary>The drop to the reservoir as the plan finds it.</summary>
    public static IEnumerable<Cure> OwnDrop(Asked asked) =>
        asked.Rig.Drain.Drop is null ? [] : [Cure.Of([Set.Out("drain.drop")])];

    /// <summary>A vent at the drain's head.</summary>
    public static IEnumerable<Cure> Vent(Asked asked) =>
        asked.Rig.Drain.Vent ? [] : Set.Cure(RigCure.Yes("drain.vent"));

    /// <summary>Pots that are emptied into a bucket carried back by hand.</summary>
    public static IEnumerable<Cure> CatchTank(Asked asked) =>
        asked.Rig.Drain.Into == DrainTarget.CatchTank ? [] : [Cure.Of([Set.To("drain.into", "catch-tank")])];
}
