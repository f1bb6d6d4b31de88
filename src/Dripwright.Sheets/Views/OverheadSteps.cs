using Dripwright.Engine;
using Dripwright.Engine.Physics;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;
using Dripwright.Engine.Wires;
using Dripwright.Sheets.Drawing;

namespace Dripwright.Sheets.Views;

/// <summary>Steps for the crop wires: work on a ladder, done before rows stand in its way.</summary>
internal sealed class OverheadSteps(Plan plan)
{
    /// <summary>[kg] Water that shows how tight a wire is: a gallon or a litre.</summary>
    private double TestMass => plan.Rig.Units == UnitSystem.Us ? 3.785 : 1;

    private readonly Wording words = new(plan.Rig.Units);
    private readonly Overhead overhead = plan.Rig.Overhead;

    /// <summary>Writes the steps; none where nothing hangs.</summary>
    public void Write(Flow flow)
    {
        var wires = plan.Overhead.Wires;
        if (wires.Count == 0 || plan.Layout.Parts.Wire is not { } type)
        {
            return;
        }

        var end = wires.Max(w => w.Loaded.Supports.Where(s => s.End).Max(s => s.Total));
        flow.Heading("Overhead");
        flow.Paragraph($"{type.Name}, {words.Length(overhead.Height)} over the floor of its row.", leads: true);
        flow.Table(Supports(wires));
        flow.Step(
            "Mark on the floor by the plan view where each row will stand. Carry the line of its wire up with a plumb line, and mark the supports overhead by the table."
        );
        flow.Step(Ends(), Cautions.Overhead(words.Force(end)));
        if (wires.Any(w => w.Place.Supports.Count > 2))
        {
            var down = wires.Max(w => w.Loaded.Supports.Where(s => !s.End).Select(s => s.Down).DefaultIfEmpty().Max());
            flow.Step($"{Hooks()} Each carries up to {words.Force(down)}.", Cautions.Ladder);
        }

        flow.Step(
            "Lead the wire through the hooks. At one end take it through the eye, at the other through the turnbuckle, opened wide, and back along itself. Set two clips at each end, their saddles on the long part of the wire, and tighten their nuts in turn."
        );
        flow.Step(Tightening(wires[0]), Cautions.Tighten);
        flow.Step("Trim what stands out behind the clips to a hand's width, and cap every end.", Cautions.WireEnds);
        Strings(flow, wires);
    }

    private Table Supports(IReadOnlyList<LoadedWire> wires)
    {
        var table = new Table(
            new("Wire"),
            new("From", Align.Decimal),
            new("To", Align.Decimal),
            new("Supports between, from the row's left end")
        );
        foreach (var wire in wires)
        {
            var at = wire.Place.Supports;
            table.Row(
                wire.Place.Label,
                words.MarkWithUnit(at[0]),
                words.MarkWithUnit(at[^1]),
                at.Count <= 2 ? "none"
                    : at.Count <= 8 ? string.Join(", ", at.Skip(1).SkipLast(1).Select(words.MarkWithUnit))
                    : $"{Wording.Count(at.Count - 2)}, every {words.MarkWithUnit(at[1] - at[0])}"
            );
        }

        return table;
    }

    private string Ends() =>
        overhead.Ends == WireEnds.Bolted
            ? "Bolt an eye bolt with washers through a post or frame at each end of each wire. The post is braced along the row, against the pull of the wire."
            : $"{Hooks()} The end hooks hold the wire's whole pull.";

    private string Hooks() =>
        overhead.Timber == Timber.Other
            ? "Fasten a hook at each mark, with an anchor made for what is there."
            : $"Drill and screw a hook of {words.MarkWithUnit(overhead.HookDiameter)} into framing at each mark, never into board or plaster, with at least {words.MarkWithUnit(overhead.HookThread)} of thread in the wood.";

    /// <summary>By hand, and how to see that it is enough: a known weight in the middle of a span pulls a tight wire down so far.</summary>
    private string Tightening(LoadedWire wire)
    {
        var text =
            $"Turn the turnbuckle by hand until the empty wire pulls with {words.Force(overhead.Tightened)}, not more.";
        var type = plan.Layout.Parts.Wire!;
        var supports = wire.Place.Supports;
        var span = new WireSpan
        {
            Kind = new WireKind(
                type.Key,
                type.Name,
                type.Stiffness,
                type.MassOfMetre * StandardGravity.Value,
                type.BreakingForce,
                type.Source
            ),
            Length = supports[1] - supports[0],
            Tightened = Math.Min(overhead.Tightened, type.BreakingForce),
        };
        var drop = ElasticCatenary.Solve(span, [new WireLoad(span.Length / 2, TestMass * StandardGravity.Value)]).Sag;
        // Less than this cannot be read off a ruler.
        return drop < 0.003
            ? text
            : $"{text} To check it, hang {(plan.Rig.Units == UnitSystem.Us ? "a jug with a gallon" : "a bottle with a litre")} of water in the middle of a span: the wire then hangs {words.MarkWithUnit(drop)} lower there than at its supports.";
    }

    private void Strings(Flow flow, IReadOnlyList<LoadedWire> wires)
    {
        var plants = wires.Sum(w => w.Place.Hanging.Sum(h => h.Plants));
        if (plants == 0 || plan.Overhead.String is not { } vine)
        {
            return;
        }

        var strings = plants * overhead.Strings;
        flow.Step(
            $"Wind {words.Length(vine.Length)} of string on each of {Wording.Counted(strings, "hook")}, and hang {(overhead.Strings == 1 ? "one" : Wording.Count(overhead.Strings))} over each plant when it is set: the string reaches to the pot, the rest stays wound on the hook for lowering. New string for each crop."
        );
    }
}
