using Dripwright.Engine.Findings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Water;

/// <summary>Judges whether each plant gets its drink: the first thing a grower asks of a rig.</summary>
internal sealed class DoseRules(Rig rig, RigLayout layout, FeedPlan feed, DosePlan plan, Judgement judge)
{
    // What rounding a time to whole minutes may take away again.
    private const double Hair = 1e-9;

    public void Judge()
    {
        if (!feed.Solved || feed.TotalFlow <= 0)
        {
            // Said once, by whoever judges the feed.
            return;
        }

        Dry();
        Drink();
        Filling();
    }

    /// <summary>Planted pots that get nothing while others do.</summary>
    private void Dry()
    {
        var dry = feed.Dry.ToLookup(feed.IsShut);
        Say(
            "valves-shut",
            [.. dry[true]],
            "Shut",
            ["rows[0].planting", "feed.valveOpen"],
            RigCure.Offered([.. Opened()])
        );
        List<PotFlow> lacking = [.. dry[false]];
        if (lacking.Count > 0)
        {
            (var cause, var cures) = new WaterTrials(rig, layout, judge.Proposes).Find();
            Say("pot-dry", lacking, cause.ToString(), FieldsOf(cause), cures);
        }

        void Say(string rule, List<PotFlow> pots, string why, IReadOnlyList<string> fields, IReadOnlyList<Cure> cures)
        {
            if (pots.Count > 0)
            {
                judge.Add(
                    rule,
                    Where(pots.Select(p => (p.Row, p.Pot))),
                    fields,
                    Phrase.Of($"finding.{rule}.{why}.what"),
                    Phrase.Of("finding.pot-dry.value"),
                    Phrase.None,
                    Phrase.Of($"finding.{rule}.{why}.remedy"),
                    cures
                );
            }
        }
    }

    /// <summary>Waterings that are spent on filling the lines.</summary>
    private void Filling()
    {
        var most = RuleBook.Limit("lines-fill-long");
        var watering = layout.Resolved.Clock.Watering;
        if (plan.FillTime <= most * watering)
        {
            return;
        }

        judge.Add(
            "lines-fill-long",
            [Place.FeedLines],
            ["feed.checkValve", "timer.on", "timer.off"],
            Phrase.Of("finding.lines-fill-long.what", Measured.Time(plan.FillTime), Measured.Time(watering)),
            Phrase.Of(Measured.Percent(plan.FillTime / watering)),
            Limit.AtMost(Measured.Percent(most)),
            Phrase.Of("finding.lines-fill-long.remedy"),
            // Low emitters would empty the lines behind a check valve as well.
            !rig.Feed.CheckValve && feed.Stop.LowRows.Count == 0
                ? RigCure.Offered(RigCure.Yes("feed.checkValve"))
                : []
        );
    }

    private IReadOnlyList<string> FieldsOf(DryCause cause) =>
        cause switch
        {
            DryCause.Throttle => ["feed.throttle"],
            DryCause.Bypass => ["feed.bypass"],
            _ => layout.Parts.Pump is null
                ? ["reservoir.base", "rows[0].floorLevel"]
                : ["pump.model", "rows[0].floorLevel"],
        };

    // A planting's own valve where it is shut, and the one setting for all others.
    private IEnumerable<FieldChange> Opened()
    {
        if (rig.Feed.ValveOpen <= 0)
        {
            yield return RigCure.Text("feed.valveOpen", "100 %");
        }

        foreach (var (r, row) in rig.Rows.Index())
        {
            foreach (var (p, planting) in (row.Planting ?? []).Index())
            {
                if (planting.ValveOpen <= 0)
                {
                    yield return RigCure.Text(
                        $"rows[{QuantityWords.Count(r)}].planting[{QuantityWords.Count(p)}].valveOpen",
                        "100 %"
                    );
                }
            }
        }
    }

    private void Drink()
    {
        if (plan.Thirstiest is not { } worst || worst.Share >= 1 - Hair)
        {
            return;
        }

        (var rule, var least) =
            plan.Pots.Any(p => p.Given < p.LowDay) ? ("plants-starve", (Func<PotDose, double>)(p => p.LowDay))
            : plan.Pots.Any(p => p.Given < p.HotDay) ? ("plants-thirst", p => p.HotDay)
            : ("drain-share-low", p => p.Wanted);
        List<PotDose> under = [.. plan.Pots.Where(p => p.Given < least(p) * (1 - Hair)).OrderBy(p => p.Share)];
        var said = under[0];
        // A pump that never stops has no clock to set.
        var stops = !layout.Resolved.Clock.Continuous;
        var on = stops ? Longer() : null;
        var hours = stops ? MoreHours() : null;
        judge.Add(
            rule,
            Where(under.Select(p => (p.Row, p.Pot))),
            stops
                ? ["timer.on", "timer.hoursPerDay", "timer.off", "feed.emitter"]
                : ["feed.emittersPerPot", "feed.emitter", "pump.model"],
            rule == "drain-share-low"
                ? Phrase.Of("finding.drain-share-low.what", Measured.Percent(said.DrainShare))
                : Phrase.Counted(
                    $"finding.{rule}.what",
                    said.Plants,
                    Measured.Volume(rule == "plants-starve" ? said.MeanDay : said.HotDay),
                    Measured.Volume(said.Given)
                ),
            Phrase.Of("finding.dose.value", Measured.Volume(said.Given)),
            Phrase.Of("finding.dose.limit", Measured.Volume(least(said))),
            Remedy(on, hours),
            // A clock that gives every pot what is wanted: longer waterings first, then more hours of the day.
            [
                .. on is { } longer ? RigCure.Offered(WateringTime.On(longer)) : [],
                .. hours is { } more ? RigCure.Offered(WateringTime.HoursPerDay(more)) : [],
            ]
        );
    }

    private static Phrase Remedy(double? on, double? hours) =>
        (on, hours) switch
        {
            ({ } longer, { } more) => Phrase.Of("finding.dose.both.remedy", Measured.Time(longer), Measured.Time(more)),
            ({ } longer, null) => Phrase.Of("finding.dose.longer.remedy", Measured.Time(longer)),
            (null, { } more) => Phrase.Of("finding.dose.hours.remedy", Measured.Time(more)),
            _ => Phrase.Of("finding.dose.emitters.remedy"),
        };

    private double? Longer() => WateringTime.Minutes(rig.Timer, plan) is { } on && on > rig.Timer.On ? on : null;

    private double? MoreHours() =>
        WateringTime.Hours(rig.Timer, plan) is { } hours && hours > rig.Timer.HoursPerDay ? hours : null;

    private static List<Place> Where(IEnumerable<(int Row, int Pot)> pots) =>
        [.. pots.GroupBy(p => p.Row).Select(g => Place.OfPots(g.Key, [.. g.Select(p => p.Pot).Order()]))];
}
