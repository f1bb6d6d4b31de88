using Dripwright.Engine.Findings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Water;

/// <summary>Judges what the solution touches, and what freezes.</summary>
internal sealed class SolutionRules(Rig rig, RigLayout layout, Judgement judge)
{
    /// <summary>[K] Nutrient solution is so thin that it freezes like water.</summary>
    private const double Freezing = 273.15;

    public void Judge()
    {
        Tank();
        Metal();
        Frost();
    }

    private void Tank()
    {
        var (rule, word) = rig.Reservoir.Material switch
        {
            TankMaterial.Galvanised => ("metal-in-loop", "galvanised"),
            TankMaterial.Copper => ("metal-in-loop", "copper"),
            TankMaterial.Used => ("tank-past", "used"),
            TankMaterial.OtherPlastic => ("tank-past", "plastic"),
            _ => ("", ""),
        };
        if (rule.Length > 0)
        {
            judge.Add(
                rule,
                [Place.Reservoir],
                ["reservoir.material"],
                Phrase.Of($"finding.{rule}.{word}.what"),
                Phrase.Of($"finding.{rule}.{word}.value"),
                Phrase.Of($"finding.{rule}.limit"),
                Phrase.Of($"finding.{rule}.tank.remedy"),
                // A liner holds back a metal; what has soaked into a drum comes through in time.
                rule == "metal-in-loop"
                    ? RigCure.Offered(RigCure.Text("reservoir.material", "lined"))
                    : RigCure.Offered(RigCure.Text("reservoir.material", "plastic"))
            );
        }
    }

    private void Metal()
    {
        if (rig.Feed.Metal is WettedMetal.Brass or WettedMetal.Copper or WettedMetal.Galvanised)
        {
            var word = rig.Feed.Metal == WettedMetal.Galvanised ? "galvanised" : "copper";
            judge.Add(
                "metal-in-loop",
                [Place.FeedLines],
                ["feed.metal"],
                Phrase.Of($"finding.metal-in-loop.{word}.what"),
                Phrase.Of($"finding.metal-in-loop.{word}.value"),
                Phrase.Of("finding.metal-in-loop.limit"),
                Phrase.Of("finding.metal-in-loop.feed.remedy"),
                RigCure.Offered(RigCure.Text("feed.metal", "none"))
            );
        }
    }

    private void Frost()
    {
        if (rig.Site.Coldest is not { } coldest || coldest >= Freezing)
        {
            return;
        }

        judge.Add(
            "freezes",
            [.. LowPoints()],
            ["site.coldest", "feed.checkValve"],
            Phrase.Of("finding.freezes.what"),
            Phrase.Of(Measured.Temperature(coldest)),
            Limit.AtLeast(Measured.Temperature(Freezing)),
            Phrase.Of("finding.freezes.remedy")
        );
    }

    /// <summary>Where water stays when the pump is off: the places that burst first.</summary>
    private IEnumerable<Place> LowPoints()
    {
        yield return Place.Pump;
        var open = layout.Rows.SelectMany(r => r.Emitters).Where(e => e.Open > 0).Select(e => e.Outlet).ToList();
        var lowest = open.Count > 0 ? open.Min() : double.PositiveInfinity;
        foreach (var run in layout.Runs)
        {
            var fed = run.Service is RunService.Header or RunService.Feed;
            var top = run.Path.Max(p => p.Z);
            var stays =
                fed
                && (
                    rig.Feed.CheckValve
                    || layout.Parts.Pump is null
                    // A line that sags under both of its ways out keeps its water.
                    || (run.Service == RunService.Feed && top < Math.Min(layout.Tank.Full, lowest))
                );
            if (stays || (run.Service == RunService.Drain && rig.Drain.Slope <= 0))
            {
                yield return Place.OfRun(run.Label, run.Row);
            }
        }

        // Under the sill of every pot a little stands in any case.
        foreach (var row in layout.Rows.Where(r => r.Pot.DrainHeight > 0))
        {
            yield return Place.OfRow(row.Number);
        }
    }
}
