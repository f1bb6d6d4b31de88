using Dripwright.Engine;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Printed;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;

namespace Dripwright.Sheets.Views;

/// <summary>Steps for drains and pots: drill, join, hang to slope, set the pots.</summary>
internal sealed class DrainSteps(Plan plan)
{
    private readonly Wording _words = new(plan.Rig.Units);

    /// <summary>Writes the steps.</summary>
    public void Write(Flow flow)
    {
        var rows = plan.Layout.Rows;
        var pipe = plan.Layout.Parts.Drain;
        var holes = rows.Sum(r => r.Drain.Holes.Count);
        flow.Heading(Words.Of("sheet.drain.title"));
        flow.Step(Words.Of("sheet.drain.line", pipe.Name));
        if (PrintedSteps.Of(plan, PrintedKind.DrillGuide) is { Length: > 0 } guides)
        {
            flow.Step(Words.Of("sheet.drain.guide", guides), Words.Of("sheet.drain.guide.caution"));
        }

        flow.Step(
            Words.Of(
                "sheet.drain.drill",
                Wording.Counted("sheet.count.hole", holes),
                _words.MarkWithUnit(plan.Layout.Parts.Outlet.PipeHole)
            ),
            Cautions.HoleSaw
        );
        foreach (var alike in rows.GroupBy(r => r.SpecIndex))
        {
            Hang(flow, [.. alike]);
        }

        Join(flow, pipe);
        Pots(flow);
    }

    private static string Labels(IEnumerable<string> labels)
    {
        var all = labels.ToList();
        // A list that nobody reads through is left to the drawing.
        return all.Count <= 10
            ? string.Join(", ", all)
            : Words.Of("sheet.drain.and-so-on", string.Join(", ", all.Take(8)));
    }

    private void Join(Flow flow, PipeSize pipe)
    {
        var runs = plan.Layout.Runs.Where(r => r.Service is RunService.Drain or RunService.Return).ToList();
        var glued = pipe.Family is PipeFamily.PvcSchedule40 or PipeFamily.PvcMetric;
        flow.Step(
            Words.Of(
                "sheet.drain.dry-fit",
                Labels(runs.SelectMany(r => r.Pieces).Select(p => p.Label)),
                Labels(runs.SelectMany(r => r.Fittings).Select(f => f.Label))
            )
        );
        flow.Step(
            glued ? Words.Of("sheet.drain.cement") : Words.Of("sheet.drain.clamp"),
            glued ? Cautions.Cement : null
        );
        var vents = plan.Layout.Returns.Where(RunWays.IsVent).Select(r => r.Label).ToList();
        if (vents.Count > 0)
        {
            flow.Step(
                vents.Count == 1 ? Words.Of("sheet.drain.vent", vents[0]) : Words.Of("sheet.drain.vents", Labels(vents))
            );
        }
    }

    private void Hang(Flow flow, IReadOnlyList<RowLayout> alike)
    {
        var row = alike[0];
        var held = HeldPlaces.Of(row);
        if (held.Count == 0)
        {
            return;
        }

        var slope = plan.Rig.Drain.Slope;
        flow.Step(
            Words.Of(
                "sheet.drain.hang",
                Holding(alike),
                slope > 0
                    ? Words.Of(
                        "sheet.drain.hang.slope",
                        _words.Slope(slope),
                        _words.MarkWithUnit(HeldPlaces.Fall(row)),
                        HeldPlaces.HighEnd(plan)
                    )
                    : Words.Of("sheet.drain.hang.level")
            )
        );
        flow.Figure(SlopeFigure.Height, box => SlopeFigure.Draw(box, plan, row));
        var hung = row.Hangers.Count > 0;
        var table = new Table([
            new(Words.Of("sheet.drain.column.frame"), Align.Right),
            .. hung ? [new Column(Words.Of("sheet.drain.column.hanger"), Align.Right)] : Array.Empty<Column>(),
            new(Words.Of("sheet.drain.column.station"), Align.Decimal),
            new(Words.Of("sheet.drain.column.drop"), Align.Decimal),
            new(Words.Of("sheet.drain.column.height"), Align.Decimal),
            new(Words.Of("sheet.drain.column.done"), Align.Tick),
        ]);
        for (var i = 0; i < held.Count; i++)
        {
            var place = held[i];
            table.Row([
                Wording.Count(place.Frame),
                .. hung ? [Number(row.Hangers[i])] : Array.Empty<string>(),
                _words.MarkWithUnit(place.Station),
                _words.MarkWithUnit(place.Drop),
                _words.MarkWithUnit(place.Height),
            ]);
        }

        flow.Table(table);
        if (row.Hangers.Any(h => h.Mount == HangerMount.Tie))
        {
            flow.Step(Words.Of("sheet.drain.tied"));
        }

        var strapped = row.Hangers.Where(IsStrapped).Select(Number).Distinct().ToList();
        if (strapped.Count > 0)
        {
            flow.Step(
                Wording.Sentences(
                    Words.Of("sheet.drain.strap", string.Join(", ", strapped)),
                    row.Hangers.Any(h => h.Mount == HangerMount.Leg) ? Words.Of("sheet.drain.strap.screw") : ""
                ),
                Words.Of("sheet.drain.strap.caution")
            );
        }

        if (IsStrappedAll(row))
        {
            return;
        }

        if (row.Hangers.Any(h => h.Mount == HangerMount.Leg))
        {
            flow.Step(
                Wording.Sentences(
                    Words.Of("sheet.drain.snap.leg"),
                    plan.Layout.Stand.HasClampAtHanger(row.Number) ? Words.Of("sheet.drain.snap.short") : "",
                    Words.Of("sheet.drain.snap.screw")
                ),
                Words.Of("sheet.drain.snap.leg.caution")
            );
        }
        else if (row.Hangers.Any(h => h.Mount != HangerMount.Tie))
        {
            flow.Step(Words.Of("sheet.drain.snap"), Words.Of("sheet.drain.snap.caution"));
        }
    }

    /// <summary>What holds the drain, and how: a sentence that the heights go on with.</summary>
    private string Holding(IReadOnlyList<RowLayout> alike)
    {
        var row = alike[0];
        if (row.Hangers.Count == 0)
        {
            return Words.Of("sheet.drain.hold.none", StandSteps.Named(alike));
        }

        var numbers = string.Join(", ", row.Hangers.Where(h => h.Mount != HangerMount.Tie).Select(Number).Distinct());
        if (IsStrappedAll(row))
        {
            return Words.Of("sheet.drain.hold.strap", StandSteps.Named(alike));
        }

        return row.Hangers.FirstOrDefault(h => h.Mount != HangerMount.Tie)?.Mount switch
        {
            HangerMount.Leg => Words.Of("sheet.drain.hold.leg", numbers, StandSteps.Named(alike)),
            HangerMount.Cross => Words.Of("sheet.drain.hold.cross", numbers, StandSteps.Named(alike)),
            null => Words.Of("sheet.drain.hold.tie", StandSteps.Named(alike)),
            _ => Words.Of("sheet.drain.hold.rail", numbers, StandSteps.Named(alike)),
        };
    }

    private bool IsStrapped(DrainHanger hanger) =>
        hanger.Mount != HangerMount.Tie && plan.Printed.Refused.Any(refused => refused.Number == Number(hanger));

    private bool IsStrappedAll(RowLayout row) =>
        row.Hangers.Any(IsStrapped) && row.Hangers.All(h => h.Mount == HangerMount.Tie || IsStrapped(h));

    private string Number(DrainHanger hanger) =>
        hanger.Mount == HangerMount.Tie
            ? Words.Of("sheet.drain.hanger.tied")
            : plan.Printed.Places.FirstOrDefault(place =>
                place.Hanger is not null && place.Joints.Any(j => j.Row == hanger.Row && j.At == hanger.At)
            )?.Number
                ?? "";

    private void Pots(Flow flow)
    {
        var parts = plan.Layout.Parts;
        flow.Heading(Words.Of("sheet.pots.title"));
        foreach (var hole in plan.Parts.PotHoles)
        {
            var name = parts.Catalogue.Pots.TryGetValue(hole.Pot, out var pot) ? pot.Name : hole.Pot;
            flow.Step(
                Words.Of(
                    "sheet.pots.drill",
                    _words.MarkWithUnit(hole.Diameter),
                    Wording.Counted("sheet.count.pot", hole.Count),
                    name,
                    _words.MarkWithUnit(hole.Height),
                    parts.Outlet.Name
                ),
                Cautions.HoleSaw
            );
        }

        foreach (var alike in plan.Layout.Rows.GroupBy(r => r.SpecIndex))
        {
            List<RowLayout> rows = [.. alike];
            var row = rows[0];
            var spacing = row.Pots.Count > 1 ? Words.Of("sheet.pots.every", _words.MarkWithUnit(row.Spec.Spacing)) : "";
            flow.Step(
                Words.Of(
                    "sheet.pots.set",
                    StandSteps.Named(rows),
                    _words.MarkWithUnit(row.Pots[0].Station),
                    spacing,
                    row.Drain.Label,
                    rows.Count > 1 ? Words.Of("sheet.pots.own-drain") : ""
                ),
                row.Number == 1 ? Cautions.Lift : null
            );
        }
    }
}
