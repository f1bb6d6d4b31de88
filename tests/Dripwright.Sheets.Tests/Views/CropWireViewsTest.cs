using Dripwright.Engine;
using Dripwright.Engine.Units;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;
using Dripwright.Sheets.Views;

namespace Dripwright.Sheets.Tests.Views;

public sealed class CropWireViewsTest
{
    [Theory]
    [InlineData(DemoRigs.School)]
    [InlineData(DemoRigs.FoodBank)]
    public void Every_wire_stands_in_the_plan_in_its_rows_front_view_and_in_the_end_view(string rig)
    {
        var plan = DemoRigs.Plan(rig);
        var ids = plan.Layout.Wires.Select(w => "wire-" + w.Label).Order(StringComparer.Ordinal).ToList();
        Assert.NotEmpty(ids);
        Assert.Equal(ids, Wires(PlanView.Draw(plan, Paper.A4)));
        Assert.Equal(ids, Wires(FrontView.Draw(plan, Paper.A4)));
        Assert.Equal(ids, Wires(EndView.Draw(plan, Paper.A4)));
    }

    [Fact]
    public void A_rig_without_a_wire_has_no_word_of_one()
    {
        var plan = Without(DemoRigs.Plan(DemoRigs.School));
        var drafts = DemoRigs.Drafts(plan, Paper.A4);
        Assert.Empty(Wires(drafts));
        Assert.DoesNotContain(
            drafts.SelectMany(d => SheetText.Of(d.Elements)),
            t => t.Text.Content.Contains("wire", StringComparison.OrdinalIgnoreCase)
        );
    }

    [Theory]
    [InlineData(2.2)]
    [InlineData(6)]
    [InlineData(12)]
    public void However_high_a_wire_hangs_the_pots_keep_their_scale(double height)
    {
        var low = DemoRigs.Plan(DemoRigs.FoodBank);
        var high = DemoRigs.Of(
            low.Rig with
            {
                CropWire = low.Rig.CropWire with { Height = height },
                Site = low.Rig.Site with { RoomHeight = height + 1 },
            }
        );
        Assert.Equal(FrontView.Draw(low, Paper.A4)[0].Scale, FrontView.Draw(high, Paper.A4)[0].Scale);
        Assert.Equal(EndView.Draw(low, Paper.A4)[0].Scale, EndView.Draw(high, Paper.A4)[0].Scale);
    }

    [Fact]
    public void A_broken_drawing_keeps_the_wire_over_the_break_and_the_break_over_the_plants()
    {
        var plan = DemoRigs.Plan(DemoRigs.FoodBank);
        var top = FrontPicture.ExtentOf(plan, plan.Layout.Rows[0]).High;
        var view = new View(Scale.Metric[5], new(0, 200));
        var band = WireBand.Of(plan.CropWire.Wires, top, view.Scale);
        Assert.True(band.Broken);
        var (lower, upper) = band.Breaks(view);
        var wire = view[0, band.Drawn(plan.Layout.Wires[0].Z)].Y;
        Assert.True(wire < upper && upper < lower && lower < view[0, top].Y - PotSymbol.PlantHeight(view));
        Assert.False(WireBand.Of(plan.CropWire.Wires, top, view.Scale, spare: 1000).Broken);
    }

    [Fact]
    public void Steps_of_the_crop_wire_say_pull_string_and_who_looks_at_it()
    {
        var plan = DemoRigs.Plan(DemoRigs.School);
        var text = string.Join(
            ' ',
            AssemblySheets.Draw(plan, Paper.A4).SelectMany(d => SheetText.Of(d.Elements)).Select(t => t.Text.Content)
        );
        var words = new Wording(UnitSystem.Us);
        var end = plan.CropWire.Wires.Max(w => w.Loaded.Supports.Where(s => s.End).Max(s => s.Total));
        Assert.Contains($"each end is pulled with {words.Force(end)}", text, StringComparison.Ordinal);
        Assert.Contains(words.Force(plan.Rig.CropWire.Tightened), text, StringComparison.Ordinal);
        Assert.Contains(words.Length(plan.CropWire.String!.Length), text, StringComparison.Ordinal);
        Assert.Contains("professional", text, StringComparison.Ordinal);
    }

    private static Plan Without(Plan plan) =>
        DemoRigs.Of(plan.Rig with { CropWire = plan.Rig.CropWire with { Wire = "none" } });

    private static IEnumerable<string> Wires(IEnumerable<SheetDraft> drafts) =>
        drafts
            .SelectMany(d => DemoRigs.Groups(d.Elements))
            .Select(g => g.Id)
            .OfType<string>()
            .Where(id => id.StartsWith("wire-", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal);
}
