using Dripwright.Engine;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Rigs;
using Dripwright.Workbench.Work;

namespace Dripwright.Workbench.Tests.Http;

public sealed class KeptPlansTests
{
    private static readonly RigSource s_ten = new("Ten", Caller.TenPots);

    [Fact]
    public void Only_the_same_garden_text_parts_on_hand_catalogue_and_draws_give_the_kept_plan()
    {
        var kept = new KeptPlans();
        var plan = Planned(10);
        kept.Keep("ours", s_ten, PartsCatalogue.Default, false, plan);
        Assert.Same(plan, kept.Find("ours", s_ten with { OnHand = [] }, PartsCatalogue.Default, false));
        Assert.Null(kept.Find("ours", s_ten, PartsCatalogue.Default, true));
        Assert.Null(kept.Find("ours", s_ten with { Text = Caller.TenPots + " " }, PartsCatalogue.Default, false));
        OnHand[] pots = [new() { Part = "pot-square-3-gal", Count = 7 }];
        Assert.Null(kept.Find("ours", s_ten with { OnHand = pots }, PartsCatalogue.Default, false));
        var own = CatalogueReader.Read("""{ "format": 1 }"""u8.ToArray(), "own", PartsCatalogue.Default).Catalogue!;
        Assert.Null(kept.Find("ours", s_ten, own, false));
        Assert.Null(kept.Find("theirs", s_ten, PartsCatalogue.Default, false));
    }

    [Fact]
    public void The_oldest_goes_first_and_the_newest_is_kept_however_large()
    {
        var kept = new KeptPlans();
        var (small, large) = (Planned(10), Planned(1100));
        kept.Keep("ours", s_ten, PartsCatalogue.Default, false, small);
        kept.Keep("ours", s_ten with { Text = "large" }, PartsCatalogue.Default, false, large);
        Assert.Null(kept.Find("ours", s_ten, PartsCatalogue.Default, false));
        Assert.Same(large, kept.Find("ours", s_ten with { Text = "large" }, PartsCatalogue.Default, false));
    }

    private static Plan Planned(int pots)
    {
        var reading = RigReader.Read(
            $$"""{ "rows": [{ "pots": {{pots.ToString(System.Globalization.CultureInfo.InvariantCulture)}} }] }""",
            "rig",
            PartsCatalogue.Default
        );
        var options = new PlanOptions { Draws = 0, Strength = false };
        return Planner.Of(reading.Rig!, reading.Assumed, PartsCatalogue.Default, options);
    }
}
