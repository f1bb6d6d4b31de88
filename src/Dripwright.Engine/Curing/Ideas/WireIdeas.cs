using Dripwright.Engine.Findings;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Curing.Ideas;

/// <summary>What a grower changes at the crop wire.</summary>
internal static class WireIdeas
{
    /// <summary>Hooks closer together.</summary>
    public static IEnumerable<Cure> CloserHooks(Asked asked) => Closer(asked).Select(c => Cure.Of([c]));

    private static IEnumerable<FieldChange> Closer(Asked asked) =>
        new[] { 0.75, 0.5, 0.35, 0.25, 0.15 }
            .Select(s => RigCure.LengthDown(asked.Rig, "cropWire.supports", s * asked.Rig.CropWire.Supports))
            .OfType<FieldChange>();

    /// <summary>A stronger wire.</summary>
    public static IEnumerable<Cure> Stronger(Asked asked) => Wires(asked).Select(c => Cure.Of([c]));

    private static IEnumerable<FieldChange> Wires(Asked asked) =>
        asked.Parts.Wire is not { } now
            ? []
            : asked
                .Catalogue.Wires.Values.Where(w => w.BreakingForce > now.BreakingForce)
                .OrderBy(w => w.BreakingForce)
                .ThenBy(w => w.Key, StringComparer.Ordinal)
                .Select(w => Set.To("cropWire.wire", w.Key));

    /// <summary>Tightened less.</summary>
    public static IEnumerable<Cure> Slacker(Asked asked) => Tightened(asked, 0.75, 0.5, 0.25, 0.1);

    /// <summary>Tightened more.</summary>
    public static IEnumerable<Cure> Tighter(Asked asked) => Tightened(asked, 1.5, 2, 3, 5, 10);

    private static IEnumerable<Cure> Tightened(Asked asked, params double[] shares) =>
        shares.SelectMany(s =>
            Set.Cure(Set.Amount(asked.Rig, "cropWire.tightened", Dimension.Force, s * asked.Rig.CropWire.Tightened))
        );

    /// <summary>Closer hooks, a stronger wire, and another pull at once.</summary>
    public static IEnumerable<Cure> Together(Asked asked)
    {
        FieldChange[] closer = [.. Closer(asked)];
        FieldChange[] wires = [.. Wires(asked)];
        FieldChange?[] pulls =
        [
            null,
            .. new[] { 2.0, 4, 0.5, 0.25 }.Select(s =>
                Set.Amount(asked.Rig, "cropWire.tightened", Dimension.Force, s * asked.Rig.CropWire.Tightened)
            ),
        ];
        foreach (var hooks in closer.Reverse().Take(2))
        {
            foreach (var pull in pulls)
            {
                if (pull is not null)
                {
                    yield return Cure.Of([hooks, pull]);
                }

                if (wires.Length > 0)
                {
                    yield return Cure.Of(pull is null ? [hooks, wires[^1]] : [hooks, wires[^1], pull]);
                }
            }
        }
    }

    /// <summary>Ends bolted through.</summary>
    public static IEnumerable<Cure> BoltedEnds(Asked asked) =>
        asked.Rig.CropWire.Ends == WireEnds.Bolted ? [] : [Cure.Of([Set.To("cropWire.ends", "bolted")])];

    /// <summary>Longer and thicker hooks.</summary>
    public static IEnumerable<Cure> StrongerHooks(Asked asked)
    {
        var wire = asked.Rig.CropWire;
        foreach (var (diameter, thread) in new[] { (0.008, 0.05), (0.01, 0.06), (0.012, 0.08), (0.016, 0.1) })
        {
            var bigger = RigCure.LengthUp(asked.Rig, "cropWire.hookDiameter", Math.Max(diameter, wire.HookDiameter));
            var longer = RigCure.LengthUp(asked.Rig, "cropWire.hookThread", Math.Max(thread, wire.HookThread));
            foreach (var cure in Set.Cure(bigger, longer))
            {
                yield return cure;
            }
        }
    }

    /// <summary>Stronger hooks, closer together.</summary>
    public static IEnumerable<Cure> StrongerCloserHooks(Asked asked) =>
        StrongerHooks(asked).TakeLast(1).SelectMany(h => Closer(asked).Select(c => Cure.Of([.. h.Changes, c])));

    /// <summary>The wire higher over the pots.</summary>
    public static IEnumerable<Cure> Higher(Asked asked)
    {
        var rim = asked.Layout.Rows.Max(r => r.Base + r.Pot.Height);
        return new[] { 1.2, 0.8, 0.4, 0.1 }
            .Select(over => rim + over)
            .Where(h => h > asked.Rig.CropWire.Height && h <= asked.Rig.Site.RoomHeight)
            .SelectMany(h => Set.Cure(RigCure.LengthDown(asked.Rig, "cropWire.height", h)));
    }

    /// <summary>The lamps up to the ceiling, or the wire down from them.</summary>
    public static IEnumerable<Cure> LampsApart(Asked asked)
    {
        var least = RuleBook.Limit("lamps-close");
        var wire = asked.Rig.CropWire;
        if (wire.Lamps is not { } lamps)
        {
            yield break;
        }

        foreach (var cure in Set.Cure(RigCure.LengthUp(asked.Rig, "cropWire.lamps", wire.Height + least)))
        {
            yield return cure;
        }

        foreach (var cure in Set.Cure(RigCure.LengthDown(asked.Rig, "cropWire.height", lamps - least)))
        {
            yield return cure;
        }
    }
}
