using Dripwright.Engine;
using Dripwright.Engine.Physics;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;
using Dripwright.Engine.Wires;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;

namespace Dripwright.Sheets.Views;

/// <summary>Steps for the crop wires: work on a ladder, done before rows stand in its way.</summary>
internal sealed class CropWireSteps(Plan plan)
{
    /// <summary>[kg] Water that shows how tight a wire is: a gallon or a litre.</summary>
    private double TestMass => plan.Rig.Units == UnitSystem.Us ? 3.785 : 1;

    private readonly Wording _words = new(plan.Rig.Units);
    private readonly CropWire _cropWire = plan.Rig.CropWire;

    /// <summary>Writes the steps; none where nothing hangs.</summary>
    public void Write(Flow flow)
    {
        var wires = plan.CropWire.Wires;
        if (wires.Count == 0 || plan.Layout.Parts.Wire is not { } type)
        {
            return;
        }

        var end = wires.Max(w => w.Loaded.Supports.Where(s => s.End).Max(s => s.Total));
        flow.Heading(Words.Of("sheet.overhead.title"));
        flow.Paragraph(Words.Of("sheet.overhead.lead", type.Name, _words.Length(_cropWire.Height)), leads: true);
        flow.Table(Supports(wires));
        flow.Step(Words.Of("sheet.overhead.mark"));
        flow.Step(Ends(), Cautions.WirePull(_words.Force(end)));
        if (wires.Any(w => w.Place.Supports.Count > 2))
        {
            var down = wires.Max(w => w.Loaded.Supports.Where(s => !s.End).Select(s => s.Down).DefaultIfEmpty().Max());
            flow.Step(Words.Of("sheet.overhead.hooks", Hooks(), _words.Force(down)), Cautions.Ladder);
        }

        flow.Step(Words.Of("sheet.overhead.wire"));
        flow.Step(Tightening(wires[0]), Cautions.Tighten);
        flow.Step(Words.Of("sheet.overhead.trim"), Cautions.WireEnds);
        Strings(flow, wires);
    }

    private Table Supports(IReadOnlyList<LoadedWire> wires)
    {
        var table = new Table(
            new(Words.Of("sheet.overhead.column.wire")),
            new(Words.Of("sheet.overhead.column.from"), Align.Decimal),
            new(Words.Of("sheet.overhead.column.to"), Align.Decimal),
            new(Words.Of("sheet.overhead.column.supports"))
        );
        foreach (var wire in wires)
        {
            var at = wire.Place.Supports;
            table.Row(
                wire.Place.Label,
                _words.MarkWithUnit(at[0]),
                _words.MarkWithUnit(at[^1]),
                at.Count <= 2 ? Words.Of("sheet.overhead.none")
                    : at.Count <= 8 ? string.Join(", ", at.Skip(1).SkipLast(1).Select(_words.MarkWithUnit))
                    : Words.Of("sheet.overhead.every", Wording.Count(at.Count - 2), _words.MarkWithUnit(at[1] - at[0]))
            );
        }

        return table;
    }

    private string Ends() =>
        _cropWire.Ends == WireEnds.Bolted
            ? Words.Of("sheet.overhead.bolt")
            : Words.Of("sheet.overhead.end-hooks", Hooks());

    private string Hooks() =>
        _cropWire.Timber == Timber.Other
            ? Words.Of("sheet.overhead.anchor")
            : Words.Of(
                "sheet.overhead.hook",
                _words.MarkWithUnit(_cropWire.HookDiameter),
                _words.MarkWithUnit(_cropWire.HookThread)
            );

    /// <summary>By hand, and how to see that it is enough: a known weight in the middle of a span pulls a tight wire down so far.</summary>
    private string Tightening(LoadedWire wire)
    {
        var text = Words.Of("sheet.overhead.tighten", _words.Force(_cropWire.Tightened));
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
            Tightened = Math.Min(_cropWire.Tightened, type.BreakingForce),
        };
        var drop = ElasticCatenary.Solve(span, [new WireLoad(span.Length / 2, TestMass * StandardGravity.Value)]).Sag;
        // Less than this cannot be read off a ruler.
        return drop < 0.003
            ? text
            : Words.Of(
                "sheet.overhead.check",
                text,
                plan.Rig.Units == UnitSystem.Us
                    ? Words.Of("sheet.overhead.check.us")
                    : Words.Of("sheet.overhead.check.metric"),
                _words.MarkWithUnit(drop)
            );
    }

    private void Strings(Flow flow, IReadOnlyList<LoadedWire> wires)
    {
        var plants = wires.Sum(w => w.Place.Hanging.Sum(h => h.Plants));
        if (plants == 0 || plan.CropWire.String is not { } vine)
        {
            return;
        }

        var strings = plants * _cropWire.Strings;
        flow.Step(
            Words.Of(
                "sheet.overhead.strings",
                _words.Length(vine.Length),
                Wording.Counted("sheet.count.hook", strings),
                _cropWire.Strings == 1 ? Words.Of("sheet.overhead.one") : Wording.Count(_cropWire.Strings)
            )
        );
    }
}
