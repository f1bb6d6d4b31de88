using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Dripwright.Engine;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Rigs;
using Dripwright.Sheets.Model;
using Dripwright.Solids.Files;

namespace Dripwright.Pack.Tests;

/// <summary>The pack that goes to the bench holds what goes to the printer.</summary>
public sealed class WholePackTests
{
    private const string Rig = """{ "rows": [{ "pots": 4 }] }""";

    [Fact]
    public void The_pack_holds_a_file_of_each_printed_part_and_its_picture_on_a_sheet()
    {
        var plan = Plan();
        var told = new Told();

        var pack = WholePack.Write(plan, Rig, new(), told);

        Assert.NotEmpty(plan.Printed.Parts);
        foreach (var part in plan.Printed.Parts)
        {
            Assert.Equal((byte)'P', pack[$"fittings/{part.Number}.3mf"][0]);
            Assert.True(pack[$"fittings/{part.Number}.stl"].Length > 1000);
        }

        var alone = PrintFiles.Write(plan.Printed, plan.Rig.Units);
        Assert.All(alone, file => Assert.Equal(file.Value, pack[$"fittings/{file.Key}"]));
        var drawn = string.Concat(
            pack.Where(file => file.Key.EndsWith("-printed-parts.svg", StringComparison.Ordinal))
                .Select(file => Encoding.UTF8.GetString(file.Value))
        );
        Assert.All(
            plan.Printed.Parts,
            part => Assert.Contains($"Picture of {part.Number}", drawn, StringComparison.Ordinal)
        );
        Assert.Equal(told.Shares.Order(), told.Shares);
        Assert.Equal(1, told.Shares[^1]);
    }

    [Fact]
    public void The_pack_lists_every_file_it_holds_but_the_list_itself()
    {
        var pack = WholePack.Write(Plan(), Rig, new());

        var (list, fault) = PackList.Read(pack[PackList.FileName]);

        Assert.Null(fault);
        Assert.Equal(
            pack.Keys.Where(name => name != PackList.FileName).Order(StringComparer.Ordinal),
            list!.Files.Select(file => file.Name)
        );
        Assert.All(
            list.Files,
            file =>
            {
                Assert.Equal(pack[file.Name].Length, file.Bytes);
                Assert.Equal(Convert.ToHexStringLower(SHA256.HashData(pack[file.Name])), file.Sha256);
            }
        );
    }

    [Fact]
    public void The_same_plan_gives_the_same_bytes_in_every_culture()
    {
        var first = WholePack.Write(Plan(), Rig, new());
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            var again = WholePack.Write(Plan(), Rig, new());
            Assert.Equal(first.Keys, again.Keys);
            Assert.All(first, file => Assert.Equal(file.Value, again[file.Key]));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void No_word_of_the_sheet_of_printed_parts_leaves_its_frame_beside_the_pictures()
    {
        foreach (var paper in new[] { Paper.A4, Paper.Letter })
        {
            var sheets = WholePack.Sheets(Plan(), new() { Paper = paper });
            foreach (var sheet in sheets.Where(sheet => sheet.Title == "Printed parts"))
            {
                Assert.All(
                    SheetText.Of(sheet),
                    text => Assert.True(sheet.Paper.Frame.Holds(text.Bounds), text.Text.Content)
                );
            }
        }
    }

    [Fact]
    public void A_rig_without_a_stand_has_a_pack_without_fittings()
    {
        var plan = Plan("""{ "rows": [{ "pots": 4, "standHeight": "0 in", "floorLevel": "20 in" }] }""");

        var pack = WholePack.Write(plan, Rig, new());

        Assert.DoesNotContain(pack.Keys, name => name.Contains("fittings", StringComparison.Ordinal));
        Assert.DoesNotContain(pack.Keys, name => name.Contains("printed", StringComparison.Ordinal));
    }

    private static Plan Plan(string rig = Rig)
    {
        var reading = RigReader.Read(rig, "rig", PartsCatalogue.Default);
        Assert.Empty(reading.Faults);
        return Planner.Of(reading.Rig!, reading.Assumed, PartsCatalogue.Default, new PlanOptions { Draws = 0 });
    }

    private sealed class Told : IProgress<PlanProgress>
    {
        public List<double> Shares { get; } = [];

        public void Report(PlanProgress value) => Shares.Add(value.Share);
    }
}
