using Dripwright.Engine.Findings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Water;

/// <summary>Judges the reservoir.</summary>
internal sealed class ReservoirRules(Rig rig, RigLayout layout, ReservoirPlan plan, DosePlan dose, Judgement judge)
{
    /// <summary>[m] A finger's width.</summary>
    private const double Finger = 0.02;

    private static readonly IReadOnlyList<Place> s_reservoir = [Place.Reservoir];

    public void Judge()
    {
        Levels();
        ComingBack();
        Inlet();
        LineOff();
        Days();
        Floor();
        Lid();
        new SolutionRules(rig, layout, judge).Judge();
        Volume();
        Warm();
    }

    /// <summary>What is kept in reserve must be less than what is filled in.</summary>
    private void Levels()
    {
        if (layout.Tank.Lowest >= layout.Tank.Full)
        {
            judge.Add(
                "lowest-over-mark",
                s_reservoir,
                ["reservoir.lowestLevel", "reservoir.fill"],
                Phrase.Of("finding.lowest-over-mark.what"),
                Phrase.Of(Measured.Length(layout.Tank.Lowest - layout.Tank.Floor)),
                Phrase.Of("limit.under", Measured.Length(layout.Tank.Full - layout.Tank.Floor)),
                Phrase.Of("finding.lowest-over-mark.remedy")
            );
        }
    }

    private void ComingBack()
    {
        var back = Measured.Volume(plan.BackInAll);
        var room = Measured.Volume(plan.Freeboard);
        var thin = RuleBook.Limit("freeboard-thin");
        if (plan.Overflow > 0)
        {
            judge.Add(
                "overflow-on-stop",
                s_reservoir,
                ["reservoir.fill", "feed.checkValve", "reservoir.tank"],
                Phrase.Of("finding.overflow-on-stop.what", Measured.Volume(plan.Overflow), back, room),
                Phrase.Of(back),
                Limit.AtMost(room),
                Phrase.Of("finding.overflow-on-stop.remedy")
            );
        }
        else if (plan.BackInAll * thin > plan.Freeboard)
        {
            judge.Add(
                "freeboard-thin",
                s_reservoir,
                ["reservoir.fill", "feed.checkValve"],
                Phrase.Of("finding.freeboard-thin.what"),
                Phrase.Of(room),
                Limit.AtLeast(Measured.Volume(plan.BackInAll * thin)),
                Phrase.Of("finding.freeboard-thin.remedy")
            );
        }
    }

    private void Inlet()
    {
        if (layout.Parts.Pump is not { } pump)
        {
            return;
        }

        var limit = Limit.AtLeast(Measured.Length(plan.InletCoverWanted));
        var atLowest = Math.Min(plan.InletCover, layout.Tank.Lowest - layout.Tank.Floor - pump.InletHeight);
        if (plan.InletCover <= 0)
        {
            judge.Add(
                "inlet-bare",
                [Place.Pump],
                ["reservoir.fill", "pump.inletHeight", "reservoir.tank"],
                Phrase.Of("finding.inlet-bare.what"),
                Phrase.Of("finding.inlet.below.value", Measured.Length(-plan.InletCover)),
                limit,
                Phrase.Of("finding.inlet-bare.remedy")
            );
        }
        else if (atLowest < plan.InletCoverWanted - Hair)
        {
            judge.Add(
                "inlet-cover-thin",
                [Place.Pump],
                ["reservoir.lowestLevel", "pump.inletHeight"],
                Phrase.Of("finding.inlet-cover-thin.what"),
                atLowest < 0
                    ? Phrase.Of("finding.inlet.below.value", Measured.Length(-atLowest))
                    : Phrase.Of(Measured.Length(atLowest)),
                limit,
                Phrase.Of("finding.inlet-cover-thin.remedy"),
                HigherLowest(pump)
            );
        }
    }

    // A micrometre, which rounding a level to what a tape shows may cost.
    private const double Hair = 1e-6;

    // Only where the water covers the inlet while the pump runs, and where the lowest level stays well under the mark.
    private IReadOnlyList<Cure> HigherLowest(ResolvedPump pump)
    {
        var least = pump.InletHeight + plan.InletCoverWanted;
        return plan.InletCover >= plan.InletCoverWanted - Hair && least < layout.Tank.Full - layout.Tank.Floor - Finger
            ? RigCure.Offered(RigCure.LengthUp(rig, "reservoir.lowestLevel", least))
            : [];
    }

    private void LineOff()
    {
        if (layout.Parts.Pump is not null && !rig.Pump.FloatSwitch && plan.SecondsToEmptyLineOff is { } soon)
        {
            var time = Measured.Time(soon);
            judge.Add(
                "runs-dry",
                s_reservoir,
                ["pump.floatSwitch", "pump.model"],
                Phrase.Of("finding.runs-dry.what", time),
                Phrase.Of(time),
                Phrase.None,
                Phrase.Of("finding.runs-dry.remedy"),
                RigCure.Offered(RigCure.Yes("pump.floatSwitch"))
            );
        }
    }

    private void Days()
    {
        if (plan.Days * 86_400 is not { } lasts)
        {
            return;
        }

        if (!Returns)
        {
            RunsOut(lasts);
        }
        else if (lasts < rig.Reservoir.DaysWanted)
        {
            judge.Add(
                "days-short",
                s_reservoir,
                ["reservoir.tank", "reservoir.daysWanted"],
                Phrase.Counted("finding.days-short.what", plan.Plants, Measured.Days(lasts)),
                Phrase.Of(Measured.Days(lasts)),
                Limit.AtLeast(Measured.Days(rig.Reservoir.DaysWanted)),
                Phrase.Of("finding.days-short.remedy")
            );
        }
    }

    // What was caught is carried back once a day: until then there must be water.
    private void RunsOut(double lasts)
    {
        var visit = RuleBook.Limit("reservoir-runs-out");
        if (lasts < visit)
        {
            var on = ShorterWaterings(visit);
            judge.Add(
                "reservoir-runs-out",
                s_reservoir,
                ["timer.on", "timer.mode", "reservoir.tank"],
                Phrase.Of(
                    "finding.reservoir-runs-out.what",
                    Measured.Volume(plan.Leaves * 86_400),
                    Measured.Time(lasts)
                ),
                Phrase.Of(Measured.Time(lasts)),
                Limit.AtLeast(Measured.Time(visit)),
                on is { } told
                    ? Phrase.Of("finding.reservoir-runs-out.clock.remedy", Measured.Time(told))
                    : Phrase.Of("finding.reservoir-runs-out.remedy"),
                on is { } shorter ? RigCure.Offered(RigCure.Text("timer.mode", "cycle"), WateringTime.On(shorter)) : []
            );
        }
    }

    private bool Returns => rig.Drain.Into == DrainTarget.Reservoir;

    // Just enough for a hot day, where that leaves enough in the reservoir.
    private double? ShorterWaterings(double visit)
    {
        var timer = rig.Timer;
        if (WateringTime.Minutes(timer, dose) is not { } on)
        {
            return null;
        }

        var flow = dose.Pots.Sum(p => p.Flow);
        var aDay = timer.HoursPerDay / (on + timer.Off) * on * flow;
        var lasts = plan.WorkingVolume / Math.Max(aDay, plan.Use * 86_400) * 86_400;
        return lasts >= visit * (1 + 1e-9) ? on : null;
    }

    private void Floor()
    {
        var load = RuleBook.Limit("floor-load");
        if (plan.FloorPressure > load)
        {
            // On the ground it is good to know; over other people's heads someone must say yes.
            var aloft = rig.Site.Floor != FloorKind.Ground;
            judge.Add(
                aloft ? "floor-load-aloft" : "floor-load",
                s_reservoir,
                aloft ? ["reservoir.tank", "reservoir.fill", "site.floor"] : ["reservoir.tank"],
                Phrase.Of("finding.floor-load.reservoir.what", Measured.Mass(plan.WaterMass)),
                Phrase.Of(Measured.FloorLoad(plan.FloorPressure)),
                Limit.AtMost(Measured.FloorLoad(load)),
                aloft ? Phrase.Of("finding.floor-load-aloft.remedy") : Phrase.Of("finding.floor-load.reservoir.remedy")
            );
        }
    }

    private void Lid()
    {
        if (!rig.Reservoir.Lid)
        {
            judge.Add(
                "lid-missing",
                s_reservoir,
                ["reservoir.lid"],
                Phrase.Of("finding.lid-missing.what"),
                Phrase.Of("finding.lid-missing.value"),
                Phrase.Of("finding.lid-missing.limit"),
                Phrase.Of("finding.lid-missing.remedy"),
                RigCure.Offered(RigCure.Yes("reservoir.lid"))
            );
        }
    }

    private void Volume()
    {
        var shape = layout.Parts.Tank.VolumeOfShape;
        if (
            layout.Parts.Tank.Measured is { } measured
            && Math.Abs(measured - shape) / shape > RuleBook.Limit("tank-volume")
        )
        {
            judge.Add(
                "tank-volume",
                s_reservoir,
                ["reservoir.volume", "reservoir.tank"],
                Phrase.Of("finding.tank-volume.what"),
                Phrase.Of(Measured.Volume(measured)),
                Phrase.Of("finding.tank-volume.limit", Measured.Volume(shape)),
                Phrase.Of("finding.tank-volume.remedy")
            );
        }
    }

    private void Warm()
    {
        var hot = RuleBook.Limit("water-warm");
        if (rig.Reservoir.WaterTemperature > hot)
        {
            judge.Add(
                "water-warm",
                s_reservoir,
                ["reservoir.waterTemperature"],
                Phrase.Of("finding.water-warm.what"),
                Phrase.Of(Measured.Temperature(rig.Reservoir.WaterTemperature)),
                Limit.AtMost(Measured.Temperature(hot)),
                Phrase.Of("finding.water-warm.remedy")
            );
        }

        var cold = RuleBook.Limit("water-cold");
        if (rig.Reservoir.WaterTemperature < cold)
        {
            judge.Add(
                "water-cold",
                s_reservoir,
                ["reservoir.waterTemperature"],
                Phrase.Of("finding.water-cold.what"),
                Phrase.Of(Measured.Temperature(rig.Reservoir.WaterTemperature)),
                Limit.AtLeast(Measured.Temperature(cold)),
                Phrase.Of("finding.water-cold.remedy")
            );
        }
    }
}
