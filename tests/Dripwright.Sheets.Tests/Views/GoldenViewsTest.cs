using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;
using Dripwright.Sheets.Views;
using Dripwright.Sheets.Writing;

namespace Dripwright.Sheets.Tests.Views;

public sealed class GoldenViewsTest
{
    [Theory]
    [InlineData(DemoRigs.School, "school")]
    [InlineData(DemoRigs.FoodBank, "food-bank")]
    public void The_views_of_the_demos_look_as_they_were_accepted(string rig, string name)
    {
        var plan = DemoRigs.Plan(rig);
        var paper = name == "school" ? Paper.Letter : Paper.A4;
        var views = PlanView.Draw(plan, paper).Concat(FrontView.Draw(plan, paper)).Concat(EndView.Draw(plan, paper));
        Assert.Multiple([
            .. views.Select(
                (draft, i) =>
                    (Action)(
                        () =>
                            CommittedText.IsGolden(
                                name + "-" + Wording.Count(i + 1) + ".svg",
                                SvgWriter.Write(DemoRigs.Finished(plan, draft), SvgOptions.Inline)
                            )
                    )
            ),
        ]);
    }

    [Theory]
    [InlineData("front-view.svg")]
    [InlineData("plan-view.svg")]
    public void The_pictures_of_the_readme_show_what_the_program_draws(string name)
    {
        var plan = DemoRigs.Plan(DemoRigs.School);
        var draft = name == "front-view.svg" ? FrontView.Draw(plan, Paper.A4)[0] : PlanView.Draw(plan, Paper.A4)[0];
        CommittedText.Is("docs/pictures/" + name, SvgWriter.Write(DemoRigs.Finished(plan, draft), SvgOptions.File));
    }
}
