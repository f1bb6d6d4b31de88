using Dripwright.Engine.Findings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Wires;

/// <summary>Judges what hangs over the rows.</summary>
internal sealed class CropWireRules(Rig rig, RigLayout layout, CropWirePlan plan, Judgement judge)
{
    private static readonly IReadOnlyList<Place> s_wire = [Place.Of("place.crop-wires")];

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
        var allowed = plan.Wires[0].Loaded.AllowedTension;
        if (Over(w => w.Loaded.GreatestTension, allowed) is var (places, tension))
        {
            judge.Add(
                "wire-overloaded",
                places,
                ["cropWire.wire", "cropWire.supports", "cropWire.tightened"],
                Phrase.Of("finding.wire-overloaded.what"),
                Phrase.Of(Measured.Force(tension)),
                Limit.AtMost(Measured.Force(allowed)),
                Phrase.Of("finding.wire-overloaded.remedy")
            );
        }
    }

    private void Sag()
    {
        var most = RuleBook.Limit("wire-sags");
        if (Over(SagShare, most) is var (places, share))
        {
            judge.Add(
                "wire-sags",
                places,
                ["cropWire.supports", "cropWire.tightened"],
                Phrase.Of("finding.wire-sags.what"),
                Phrase.Of("finding.wire-sags.value", Measured.Share(share)),
                Phrase.Of("finding.wire-sags.limit", Measured.Share(most)),
                Phrase.Of("finding.wire-sags.remedy")
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
        if (Over(InnerPull, allowed) is var (inner, pull))
        {
            judge.Add(
                "hook-pulls-out",
                inner,
                ["cropWire.supports", "cropWire.hookThread", "cropWire.hookDiameter"],
                Phrase.Of("finding.hook-pulls-out.inner.what"),
                Phrase.Of(Measured.Force(pull)),
                Limit.AtMost(Measured.Force(allowed)),
                Phrase.Of("finding.hook-pulls-out.inner.remedy")
            );
        }

        if (rig.CropWire.Ends == WireEnds.Hook && Over(EndPull, allowed) is var (ends, end))
        {
            judge.Add(
                "hook-pulls-out",
                [.. ends.Select(place => place with { Part = PlacePart.WireEnds })],
                ["cropWire.ends", "cropWire.tightened", "cropWire.supports"],
                Phrase.Of("finding.hook-pulls-out.end.what"),
                Phrase.Of(Measured.Force(end)),
                Limit.AtMost(Measured.Force(allowed)),
                Phrase.Of("finding.hook-pulls-out.end.remedy"),
                RigCure.Offered(RigCure.Text("cropWire.ends", "bolted"))
            );
        }
    }

    private static double SagShare(LoadedWire wire) =>
        wire.Loaded.Spans.Max(s => s.Sag) / (wire.Place.Supports[1] - wire.Place.Supports[0]);

    private static double InnerPull(LoadedWire wire) =>
        wire.Loaded.Supports.Where(s => !s.End).Select(s => s.Down).DefaultIfEmpty(0).Max();

    private static double EndPull(LoadedWire wire) => wire.Loaded.Supports.Where(s => s.End).Max(s => s.Total);

    /// <summary>The wires that are over a limit, the worst first, and the worst value; null where none is.</summary>
    private (IReadOnlyList<Place> Places, double Worst)? Over(Func<LoadedWire, double> value, double limit)
    {
        LoadedWire[] over = [.. plan.Wires.Where(w => value(w) > limit).OrderByDescending(value)];
        return over.Length == 0
            ? null
            : (
                [.. over.Select(w => new Place(Phrase.Of("place.crop-wire", w.Place.Label), w.Place.Row))],
                value(over[0])
            );
    }

    private void Height()
    {
        var least = RuleBook.Limit("wire-low");
        var given = rig.CropWire.Height;
        var room = rig.Site.RoomHeight;
        if (given < least - 1e-6)
        {
            judge.Add(
                "wire-low",
                s_wire,
                ["cropWire.height"],
                Phrase.Of("finding.wire-low.what"),
                Phrase.Of(Measured.Length(given)),
                Limit.AtLeast(Measured.Length(least)),
                Phrase.Of("finding.wire-low.remedy"),
                // Not through the ceiling.
                least <= room
                    ? RigCure.Offered(RigCure.LengthUp(rig, "cropWire.height", least))
                    : []
            );
        }

        if (given > room + 1e-6)
        {
            judge.Add(
                "wire-over-room",
                s_wire,
                ["cropWire.height", "site.roomHeight"],
                Phrase.Of("finding.wire-over-room.what"),
                Phrase.Of(Measured.Length(given)),
                Limit.AtMost(Measured.Length(room)),
                Phrase.Of("finding.wire-over-room.remedy"),
                RigCure.Offered(RigCure.LengthDown(rig, "cropWire.height", room))
            );
        }

        var highest = layout.Wires.Max(w => w.Z);
        var rim = layout.Rows.Max(r => r.Base + r.Pot.Height);
        if (highest <= rim)
        {
            judge.Add(
                "wire-under-pots",
                s_wire,
                ["cropWire.height", "rows[0].standHeight"],
                Phrase.Of("finding.wire-under-pots.what"),
                Phrase.Of(Measured.Length(highest)),
                Limit.Over(Measured.Length(rim)),
                Phrase.Of("finding.wire-under-pots.remedy")
            );
        }
    }

    private void Lamps()
    {
        var least = RuleBook.Limit("lamps-close");
        if (rig.CropWire.Lamps is { } lamps && lamps - rig.CropWire.Height < least - 1e-6)
        {
            var over = lamps - rig.CropWire.Height;
            judge.Add(
                "lamps-close",
                [Place.Of("place.lamps")],
                ["cropWire.lamps", "cropWire.height"],
                Phrase.Of("finding.lamps-close.what"),
                over >= 0
                    ? Phrase.Of("finding.lamps-close.value", Measured.Length(over))
                    : Phrase.Of("finding.lamps-close.under.value", Measured.Length(-over)),
                Phrase.Of("finding.lamps-close.limit", Measured.Length(least)),
                Phrase.Of("finding.lamps-close.remedy"),
                rig.CropWire.Height + least <= rig.Site.RoomHeight
                    ? RigCure.Offered(RigCure.LengthUp(rig, "cropWire.lamps", rig.CropWire.Height + least))
                    : []
            );
        }
    }

    /// <summary>Said of every wire: whoever builds it must know what its ends pull.</summary>
    private void Ends()
    {
        var end = Measured.Force(plan.Wires.Max(EndPull));
        var inner = plan.Wires.Max(InnerPull);
        judge.Add(
            "wire-pull",
            s_wire,
            ["cropWire.wire", "cropWire.ends"],
            inner > 0
                ? Phrase.Of("finding.wire-pull.hooks.what", end, Measured.Force(inner))
                : Phrase.Of("finding.wire-pull.what", end),
            Phrase.Of(end),
            Phrase.None,
            Phrase.Of("finding.wire-pull.remedy")
        );
    }
}
