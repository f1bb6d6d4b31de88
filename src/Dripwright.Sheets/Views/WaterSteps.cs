using Dripwright.Engine;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Printed;
using Dripwright.Engine.Rigs;
using Dripwright.Sheets.Drawing;

namespace Dripwright.Sheets.Views;

/// <summary>Steps for reservoir, pump, header and power.</summary>
internal sealed class WaterSteps(Plan plan)
{
    private readonly Wording words = new(plan.Rig.Units);

    /// <summary>Writes the steps.</summary>
    public void Write(Flow flow)
    {
        var (tank, parts, feed, reservoir) = (plan.Layout.Tank, plan.Layout.Parts, plan.Rig.Feed, plan.Rig.Reservoir);
        var left = reservoir.At == RowEnd.Left;
        flow.Heading("Reservoir and header");
        flow.Step(
            $"Set the reservoir at the rows' {(left ? "left" : "right")} end, {(reservoir.Gap >= 0 ? $"{words.MarkWithUnit(reservoir.Gap)} from it" : $"{words.MarkWithUnit(-reservoir.Gap)} under the row")}, its floor {Height(tank.Floor)}. Check it with a level.",
            Cautions.Weight(plan)
        );
        flow.Step(
            $"Mark two levels inside, measured from its floor: full at {words.MarkWithUnit(tank.Full - tank.Floor)} ({words.Volume(plan.Reservoir.FullVolume)}) and lowest at {words.MarkWithUnit(tank.Lowest - tank.Floor)}."
        );
        flow.Step(
            plan.Rig.Drain.Into == DrainTarget.Reservoir
                ? "Lead the last drop T into the reservoir: water must fall in freely, above the full mark."
                : "Lead the last drop T into the catch tank: water must fall in freely."
        );
        Header(flow, parts, feed, tank);
        Power(flow, parts, tank);
        flow.Heading("First water");
        flow.Step(
            $"Fill to the full mark, {(parts.Pump is null ? "open the outlet" : "run the pump")} with the lines' ends open until clear water comes, then close them."
        );
        flow.Step("Look at every joint, pot outlet and emitter. Then go through the form for the first fill.");
    }

    private string Height(double floor) =>
        Math.Abs(floor) < 1e-6 ? "on the room's floor"
        : floor > 0 ? $"{words.MarkWithUnit(floor)} over the room's floor, on a support that carries it"
        : $"{words.MarkWithUnit(-floor)} below the room's floor";

    private void Header(Flow flow, RigParts parts, Feed feed, TankPlace tank)
    {
        var header = plan.Layout.Runs.First(r => r.Label == "H");
        var pieces = header.Pieces.Select(p => p.Label).ToList();
        flow.Step(
            parts.Pump is { } pump
                ? $"Set the pump ({pump.Name}) in the middle of the reservoir's floor, its inlet {words.MarkWithUnit(tank.PumpOutlet.Z - tank.Floor)} over it."
                : "Fit the outlet through the reservoir's wall with its washers, and a valve behind it."
        );
        if (parts.Strainer is { } strainer)
        {
            flow.Step($"Fit the strainer ({strainer.Name}) where you can reach it to clean it.");
        }

        if (header.Fittings.FirstOrDefault(f => f.Type.Kind == Engine.Catalogue.FittingKind.CheckValve) is { } check)
        {
            flow.Step($"Fit the check valve {check.Label}; its arrow points away from the pump.");
        }

        flow.Step(
            $"Lay the header ({parts.Header.Name}): pieces {(pieces.Count <= 10 ? string.Join(", ", pieces) : $"{pieces[0]} to {pieces[^1]}")} with their fittings in the order of the plumbing sheet."
        );
        if (PrintedSteps.Of(plan, PrintedKind.HoseClip) is { Length: > 0 } clips)
        {
            flow.Step(
                $"Push the hose clips ({clips}) onto the leg next to where the header comes in, and the header into them."
            );
        }

        if (PrintedSteps.Of(plan, PrintedKind.ClampBlock) is { Length: > 0 } clamp)
        {
            flow.Step(
                $"Screw the clamp ({clamp}, two halves) around the header at the reservoir's rim, through the lid or a board, until it just bites: from there on nothing pulls at the pump."
            );
        }

        if (feed.SiphonBreak)
        {
            flow.Step(
                "Drill the siphon break, a small hole, into the header just above the full mark and below the rim, so that what it spits falls back into the reservoir."
            );
        }

        if (feed.Throttle is { } throttle)
        {
            flow.Step($"Set the throttling valve to {words.Share(throttle)} open.");
        }

        if (feed.Bypass is { } bypass)
        {
            flow.Step($"Lead the bypass B back into the reservoir and set its valve to {words.Share(bypass)} open.");
        }
    }

    private void Power(Flow flow, RigParts parts, TankPlace tank)
    {
        if (parts.Pump is not { } pump)
        {
            return;
        }

        var site = plan.Rig.Site;
        flow.Heading("Power");
        flow.Step(
            $"Lead the pump's cord ({words.Length(pump.Cord)}) with a drip loop to the outlet, {words.MarkWithUnit(site.OutletHeight)} over the floor and {words.Length(site.OutletDistance)} from the reservoir. The rim stands at {words.MarkWithUnit(tank.Rim)}: plug and timer stay above it.",
            Cautions.Mains
        );
        var timer = plan.Rig.Timer;
        flow.Step(
            timer.Mode == TimerMode.Continuous
                ? "The pump runs all the time: no timer is set."
                : $"Set the timer: {words.Time(timer.On)} on, {words.Time(timer.Off)} off, for {words.Time(timer.HoursPerDay)} of the day."
        );
    }
}
