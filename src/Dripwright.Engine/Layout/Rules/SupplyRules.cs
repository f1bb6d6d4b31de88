using Dripwright.Engine.Findings;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Layout;

/// <summary>Judges the power the pump hangs on, and the header's heights.</summary>
internal sealed class SupplyRules(Rig rig, RigLayout layout, Judgement judge)
{
    public void Judge()
    {
        if (layout.Parts.Pump is { } pump)
        {
            Circuit(pump);
            Cord(pump);
            Outlet();
        }

        Rise();
    }

    private void Circuit(ResolvedPump pump)
    {
        var load = (pump.Power + rig.Site.OtherLoads) / rig.Site.Voltage;
        var allowed = rig.Site.Breaker * RuleBook.Limit("circuit-load");
        if (load > allowed)
        {
            judge.Add(
                "circuit-load",
                [new Place(Phrase.Of("place.pump-circuit"), Part: PlacePart.Pump)],
                ["site.otherLoads", "site.breaker"],
                Phrase.Of("finding.circuit-load.what"),
                Phrase.Of(Measured.Current(load)),
                Limit.AtMost(Measured.Current(allowed)),
                Phrase.Of("finding.circuit-load.remedy")
            );
        }
    }

    private void Cord(ResolvedPump pump)
    {
        var needed = PumpCord.Needed(rig, layout, pump);
        if (pump.Cord < needed)
        {
            judge.Add(
                "cord-short",
                [Place.Pump],
                ["site.outletDistance", "pump.cord"],
                Phrase.Of("finding.cord-short.what"),
                Phrase.Of(Measured.Length(pump.Cord)),
                Limit.AtLeast(Measured.Length(needed)),
                Phrase.Of("finding.cord-short.remedy")
            );
        }
    }

    private void Outlet()
    {
        if (rig.Site.OutletHeight < layout.Tank.Rim)
        {
            judge.Add(
                "outlet-low",
                [new Place(Phrase.Of("place.pump-outlet"), Part: PlacePart.Pump)],
                ["site.outletHeight"],
                Phrase.Of("finding.outlet-low.what"),
                Phrase.Of(Measured.Length(rig.Site.OutletHeight)),
                Limit.Over(Measured.Length(layout.Tank.Rim)),
                Phrase.Of("finding.outlet-low.remedy")
            );
        }
    }

    private void Rise()
    {
        if (rig.Feed.Header.Rise is not { } stated)
        {
            return;
        }

        var real = layout.Rows[0].Feed[0].Path[0].Z - layout.Tank.PumpOutlet.Z;
        if (Math.Abs(stated - real) > RuleBook.Limit("rise-differs"))
        {
            judge.Add(
                "rise-differs",
                [Place.Of("place.header")],
                ["feed.header.rise"],
                Phrase.Of("finding.rise-differs.what"),
                Phrase.Of(Measured.Length(stated)),
                Phrase.Of("finding.rise-differs.limit", Measured.Length(real)),
                Phrase.Of("finding.rise-differs.remedy"),
                RigCure.Offered(new FieldChange("feed.header.rise", null))
            );
        }
    }
}
