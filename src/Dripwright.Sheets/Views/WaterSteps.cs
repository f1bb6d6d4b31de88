using Dripwright.Engine;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Printed;
using Dripwright.Engine.Rigs;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;

namespace Dripwright.Sheets.Views;

/// <summary>Steps for reservoir, pump, header and power.</summary>
internal sealed class WaterSteps(Plan plan)
{
    private readonly Wording _words = new(plan.Rig.Units);

    /// <summary>Writes the steps.</summary>
    public void Write(Flow flow)
    {
        var (tank, parts, feed, reservoir) = (plan.Layout.Tank, plan.Layout.Parts, plan.Rig.Feed, plan.Rig.Reservoir);
        var left = reservoir.At == RowEnd.Left;
        flow.Heading(Words.Of("sheet.water.title"));
        flow.Step(
            Words.Of(
                "sheet.water.reservoir",
                left ? Words.Of("sheet.side.left") : Words.Of("sheet.side.right"),
                reservoir.Gap >= 0
                    ? Words.Of("sheet.water.reservoir.beside", _words.MarkWithUnit(reservoir.Gap))
                    : Words.Of("sheet.water.reservoir.under", _words.MarkWithUnit(-reservoir.Gap)),
                Height(tank.Floor)
            ),
            Cautions.Weight(plan)
        );
        flow.Step(
            Words.Of(
                "sheet.water.levels",
                _words.MarkWithUnit(tank.Full - tank.Floor),
                _words.Volume(plan.Reservoir.FullVolume),
                _words.MarkWithUnit(tank.Lowest - tank.Floor)
            )
        );
        flow.Step(
            plan.Rig.Drain.Into == DrainTarget.Reservoir
                ? Words.Of("sheet.water.return.reservoir")
                : Words.Of("sheet.water.return.tank")
        );
        Header(flow, parts, feed, tank);
        Power(flow, parts, tank);
        flow.Heading(Words.Of("sheet.water.first"));
        flow.Step(
            Words.Of(
                "sheet.water.fill",
                parts.Pump is null ? Words.Of("sheet.water.fill.outlet") : Words.Of("sheet.water.fill.pump")
            )
        );
        flow.Step(Words.Of("sheet.water.look"));
    }

    private string Height(double floor) =>
        Math.Abs(floor) < 1e-6 ? Words.Of("sheet.water.height.on")
        : floor > 0 ? Words.Of("sheet.water.height.over", _words.MarkWithUnit(floor))
        : Words.Of("sheet.water.height.below", _words.MarkWithUnit(-floor));

    private void Header(Flow flow, RigParts parts, Feed feed, TankPlace tank)
    {
        var header = plan.Layout.Runs.First(r => r.Label == "H");
        var pieces = header.Pieces.Select(p => p.Label).ToList();
        flow.Step(
            parts.Pump is { } pump
                ? Words.Of(
                    "sheet.water.pump",
                    pump.IsOwn ? new PlanWords(plan.Rig.Units).Of(pump.Figures) : pump.Model.Name,
                    _words.MarkWithUnit(tank.PumpOutlet.Z - tank.Floor)
                )
                : Words.Of("sheet.water.outlet")
        );
        if (parts.Strainer is { } strainer)
        {
            flow.Step(Words.Of("sheet.water.strainer", strainer.Name));
        }

        if (header.Fittings.FirstOrDefault(f => f.Type.Kind == Engine.Catalogue.FittingKind.CheckValve) is { } check)
        {
            flow.Step(Words.Of("sheet.water.check", check.Label));
        }

        flow.Step(
            Words.Of(
                "sheet.water.header",
                parts.Header.Name,
                pieces.Count <= 10 ? string.Join(", ", pieces) : Words.Of("sheet.to", pieces[0], pieces[^1])
            )
        );
        if (PrintedSteps.Of(plan, PrintedKind.HoseClip) is { Length: > 0 } clips)
        {
            flow.Step(Words.Of("sheet.water.clips", clips));
        }

        if (PrintedSteps.Of(plan, PrintedKind.ClampBlock) is { Length: > 0 } clamp)
        {
            flow.Step(Words.Of("sheet.water.clamp", clamp));
        }

        if (plan.Layout.BreakHole is not null)
        {
            flow.Step(Words.Of("sheet.water.siphon"));
        }

        if (feed.Throttle is { } throttle)
        {
            flow.Step(Words.Of("sheet.water.throttle", _words.Share(throttle)));
        }

        if (feed.Bypass is { } bypass)
        {
            flow.Step(Words.Of("sheet.water.bypass", _words.Share(bypass)));
        }
    }

    private void Power(Flow flow, RigParts parts, TankPlace tank)
    {
        if (parts.Pump is not { } pump)
        {
            return;
        }

        var site = plan.Rig.Site;
        flow.Heading(Words.Of("sheet.power.title"));
        flow.Step(
            Words.Of(
                "sheet.power.cord",
                _words.Length(pump.Cord),
                _words.MarkWithUnit(site.OutletHeight),
                _words.Length(site.OutletDistance),
                _words.MarkWithUnit(tank.Rim)
            ),
            plan.Layout.Stand.Members.Count > 0 ? Wording.Sentences(Cautions.Mains, Cautions.Bond) : Cautions.Mains
        );
        var timer = plan.Rig.Timer;
        flow.Step(
            timer.Mode == TimerMode.Continuous
                ? Words.Of("sheet.power.timer.none")
                : Words.Of(
                    "sheet.power.timer",
                    _words.Time(timer.On),
                    _words.Time(timer.Off),
                    _words.Time(timer.HoursPerDay)
                )
        );
    }
}
