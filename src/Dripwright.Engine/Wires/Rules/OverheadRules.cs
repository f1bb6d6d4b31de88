using Dripwright.Engine.Findings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Wires;

/// <summary>Judges what hangs over the rows.</summary>
internal sealed class OverheadRules(Rig rig, RigLayout layout, OverheadPlan plan, Judgement judge)
{
    private const int MostNamed = 4;

    public void Judge()
    {
        if (plan.Wires.Count == 0)
        {
            return;
        }

        Strength();
        Sag();
        Hooks();
        Height();
        Lamps();
        Ends();
    }

    private void Strength()
    {
        double allowed = plan.Wires[0].Loaded.AllowedTension;
        if (Over(w => w.Loaded.GreatestTension, allowed) is var (place, tension))
        {
            judge.Add(
                "wire-overloaded",
                place,
                "overhead.wire",
                "Fully grown, the crop pulls harder than the wire may be loaded for a season.",
                judge.Words.Force(tension),
                $"at most {judge.Words.Force(allowed)}",
                "Set supports closer, tighten it less so that it sags more, or take a stronger wire."
            );
        }
    }

    private void Sag()
    {
        double most = RuleBook.Limit("wire-sags");
        if (Over(SagShare, most) is var (place, share))
        {
            judge.Add(
                "wire-sags",
                place,
                "overhead.supports",
                "Fully grown, the crop makes the wire sag far, and hooks slide to the middle.",
                $"{judge.Words.Share(share)} of the span",
                $"at most {judge.Words.Share(most)}",
                "Set supports closer, or tighten the wire harder if its ends can take it."
            );
        }
    }

    private void Hooks()
    {
        if (plan.HookAllowed is not { } allowed)
        {
            return;
        }

        // An inner hook hangs from above: its axis is upright. What it holds sideways bends it and is told apart.
        Pull(InnerPull, "inner hooks", "Set supports closer, or take a thicker hook with more thread.");
        if (rig.Overhead.Ends == WireEnds.Hook)
        {
            Pull(
                EndPull,
                "end hooks",
                "Bolt the ends through posts that are braced along the row, tighten the wire less, or set supports closer."
            );
        }

        void Pull(Func<LoadedWire, double> pull, string which, string remedy)
        {
            if (Over(pull, allowed) is var (place, force))
            {
                judge.Add(
                    "hook-pulls-out",
                    $"{place}, {which}",
                    "overhead.hookThread",
                    $"The wire pulls harder on its {which} than their thread holds in the wood.",
                    judge.Words.Force(force),
                    $"at most {judge.Words.Force(allowed)}",
                    remedy
                );
            }
        }
    }

    private static double SagShare(LoadedWire wire) =>
        wire.Loaded.Spans.Max(s => s.Sag) / (wire.Place.Supports[1] - wire.Place.Supports[0]);

    private static double InnerPull(LoadedWire wire) =>
        wire.Loaded.Supports.Where(s => !s.End).Select(s => s.Down).DefaultIfEmpty(0).Max();

    private static double EndPull(LoadedWire wire) => wire.Loaded.Supports.Where(s => s.End).Max(s => s.Total);

    /// <summary>The wires that are over a limit, as a place, and the worst value; null where none is.</summary>
    private (string Place, double Worst)? Over(Func<LoadedWire, double> value, double limit)
    {
        LoadedWire[] over = [.. plan.Wires.Where(w => value(w) > limit)];
        string labels = string.Join(", ", over.Take(MostNamed).Select(w => w.Place.Label));
        string more = over.Length > MostNamed ? $" and {QuantityWords.Count(over.Length - MostNamed)} more" : "";
        return over.Length == 0 ? null : ($"crop wire {labels}{more}", over.Max(value));
    }

    private void Height()
    {
        double least = RuleBook.Limit("wire-low");
        if (rig.Overhead.Height < least - 1e-6)
        {
            judge.Add(
                "wire-low",
                "crop wire",
                "overhead.height",
                "The wire is low: vines must be lowered often, and heads and eyes meet it.",
                judge.Words.Length(rig.Overhead.Height),
                $"at least {judge.Words.Length(least)}",
                "Hang it higher where the room allows, and cap every wire end."
            );
        }

        double highest = layout.Wires.Max(w => w.Z);
        double room = rig.Site.RoomHeight;
        if (rig.Overhead.Height > room + 1e-6)
        {
            judge.Add(
                "wire-over-room",
                "crop wire",
                "overhead.height",
                "The wire would hang higher than the room is.",
                judge.Words.Length(rig.Overhead.Height),
                $"at most {judge.Words.Length(room)}",
                "Hang it lower."
            );
        }

        double rim = layout.Rows.Max(r => r.Base + r.Pot.Height);
        if (highest <= rim)
        {
            judge.Add(
                "wire-under-pots",
                "crop wire",
                "overhead.height",
                "The wire does not hang over the pots.",
                judge.Words.Length(highest),
                $"over {judge.Words.Length(rim)}",
                "Hang it higher, or lower the stand."
            );
        }
    }

    private void Lamps()
    {
        double least = RuleBook.Limit("lamps-close");
        if (rig.Overhead.Lamps is { } lamps && lamps - rig.Overhead.Height < least - 1e-6)
        {
            judge.Add(
                "lamps-close",
                "lamps",
                "overhead.lamps",
                "Vines that reach the wire come too near the lamps: leaves scorch, and hooks and wire get hot.",
                judge.Words.Length(lamps - rig.Overhead.Height),
                $"at least {judge.Words.Length(least)} over the wire",
                "Hang the lamps higher or the wire lower, and lower the vines before their heads reach the wire."
            );
        }
    }

    /// <summary>Said of every wire: whoever builds it must know what its ends pull.</summary>
    private void Ends()
    {
        double end = plan.Wires.Max(EndPull);
        double inner = plan.Wires.Max(InnerPull);
        judge.Add(
            "wire-pull",
            "crop wire",
            "overhead.wire",
            "Fully grown, the crop pulls this hard on each end of its wire"
                + (inner > 0 ? $", and down with {judge.Words.Force(inner)} on each hook between" : "")
                + ". A house frame, ceiling or wall that was not made for it can give way.",
            judge.Words.Force(end),
            "know it",
            "Have a professional look at what carries it, or build posts of your own, braced along the row. Nobody stands "
                + "under the wire while it is tightened, and nobody ever hangs on it."
        );
    }
}
