using System.Xml.Linq;
using Dripwright.Engine.Printed;
using Dripwright.Sheets.Screen;
using Dripwright.Sheets.Tests.Views;

namespace Dripwright.Sheets.Tests.Screen;

/// <summary>Where a printed part goes can be seen for every part that has a place, whichever rig it is.</summary>
public sealed class StandViewTests
{
    private static readonly XNamespace s_svg = "http://www.w3.org/2000/svg";

    public static TheoryData<string> Rigs =>
        [
            DemoRigs.School,
            DemoRigs.FoodBank,
            "awkward/one-pot.rig.json",
            "awkward/five-hundred-pots.rig.json",
            "awkward/closed-loop.rig.json",
            "awkward/raised-row.rig.json",
        ];

    [Theory]
    [MemberData(nameof(Rigs))]
    public void Every_part_is_marked_inside_its_drawing(string rig)
    {
        var plan = DemoRigs.Plan(rig);
        var parts = plan
            .Printed.Parts.Concat(PrintedParts.Small(plan.Rig, plan.Layout).SelectMany(small => small.Parts))
            .DistinctBy(part => part.Number)
            .Where(part => part.Spots.Count > 0)
            .ToList();
        Assert.NotEmpty(parts);
        foreach (var part in parts)
        {
            var drawing = XElement.Parse(StandView.Of(plan.Layout, plan.Printed, part));

            var box = drawing.Attribute("viewBox")!.Value.Split(' ').Select(Number).ToArray();
            Assert.Contains(drawing.Descendants(s_svg + "text"), text => text.Value == part.Number);
            var circles = drawing.Descendants(s_svg + "circle").ToList();
            Assert.NotEmpty(circles);
            Assert.All(
                circles,
                circle =>
                {
                    Assert.InRange(Number(circle.Attribute("cx")!.Value), 0, box[2]);
                    Assert.InRange(Number(circle.Attribute("cy")!.Value), 0, box[3]);
                }
            );
        }
    }

    [Fact]
    public void A_part_without_a_place_has_no_drawing()
    {
        var plan = DemoRigs.Plan(DemoRigs.School);
        var coupon = plan.Printed.Parts.Single(part => part.Number == PrintedParts.Coupon);

        Assert.Throws<ArgumentException>(() => StandView.Of(plan.Layout, plan.Printed, coupon));
    }

    private static double Number(string text) => double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
