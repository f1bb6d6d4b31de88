using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Files;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Tests.Planning;
using static System.FormattableString;

namespace Dripwright.Engine.Tests.Rigs;

/// <summary>One tank, one volume: recipe, marks, days and load go by the same litres.</summary>
public sealed class TankMeaningTests
{
    private const double Inch = 0.0254;

    private static string Rig(string reservoir, string more = "") =>
        $$"""{ "rows": [ { "pots": 10 } ], "reservoir": { {{reservoir}} }{{more}} }""";

    private static Plan Plan(string reservoir, string more = "") => Plans.From(Rig(reservoir, more));

    private static Fault Fault(string reservoir)
    {
        var text = Rig(reservoir).Replace("\"reservoir\"", "\n\"reservoir\"", StringComparison.Ordinal);
        return Assert.Single(RigReader.Read(text, "a", PartsCatalogue.Default).Faults);
    }

    [Theory]
    [InlineData(""" "tank": "tank-box-35-gal" """, 32 * 20 * 12.625)]
    [InlineData(""" "tank": "tank-box-35-gal", "length": "30 in" """, 30 * 20 * 12.625)]
    [InlineData(
        """ "tank": "tank-box-35-gal", "length": "30 in", "width": "18 in", "height": "14 in" """,
        30 * 18 * 14
    )]
    [InlineData(""" "shape": "upright", "length": "22 in", "height": "30 in" """, Math.PI / 4 * 22 * 22 * 30)]
    [InlineData(""" "shape": "upright", "width": "22 in", "height": "30 in" """, Math.PI / 4 * 22 * 22 * 30)]
    [InlineData(""" "shape": "lying", "width": "24 in", "length": "38 in" """, Math.PI / 4 * 24 * 24 * 38)]
    [InlineData(""" "shape": "lying", "height": "24 in", "length": "38 in" """, Math.PI / 4 * 24 * 24 * 38)]
    public void A_tank_of_any_shape_holds_what_its_measures_say(string reservoir, double cubicInches) =>
        Assert.Equal(cubicInches * Inch * Inch * Inch, Plan(reservoir).Reservoir.RimVolume, 1e-9);

    [Fact]
    public void A_lying_tank_of_24_by_38_inches_holds_282_litres_and_the_salts_are_dosed_by_what_it_holds_at_the_mark()
    {
        var plan = Plan(
            """ "shape": "lying", "width": "24 in", "length": "38 in", "fill": "75 %", "lowestLevel": "6 in" """,
            """, "nutrients": { "crop": "tomato", "pureShare": "100 %" } """
        );
        Assert.Equal(0.2817, plan.Reservoir.RimVolume, 1e-4);
        // Three quarters of the height of a lying cylinder are 80.4 % of its circle, a quarter 19.6 %.
        double Part(double share)
        {
            var angle = 2 * Math.Acos(1 - (2 * share));
            return (angle - Math.Sin(angle)) / (2 * Math.PI);
        }

        var marked = Part(0.75) * plan.Reservoir.RimVolume;
        Assert.Equal(marked, plan.Reservoir.FullVolume, 1e-9);
        Assert.Equal(marked, plan.Nutrients!.Volume, 1e-9);
        Assert.Equal(marked, plan.Nutrients.Recipe.Job.Volume, 1e-9);
        var working = marked - (Part(0.25) * plan.Reservoir.RimVolume);
        Assert.Equal(working / (10 * 1.9e-3), plan.Reservoir.Days!.Value, 1e-6);
        Assert.Equal(24 * Inch, plan.Layout.Tank.Rim - plan.Layout.Tank.Floor, 1e-12);
        Assert.Equal(24 * Inch, plan.Layout.Tank.Back - plan.Layout.Tank.Front, 1e-12);
    }

    [Theory]
    [InlineData(""" "tank": "tank-box-35-gal" """)]
    [InlineData(""" "shape": "lying", "width": "24 in", "length": "38 in" """)]
    [InlineData(""" "shape": "upright", "length": "22 in", "height": "30 in" """)]
    public void A_measured_volume_scales_every_level_and_the_recipe_and_the_days_with_it(string reservoir)
    {
        const string Nutrients = """, "nutrients": { "crop": "tomato", "pureShare": "100 %" } """;
        var plain = Plan(reservoir, Nutrients);
        var more = 1.08 * plain.Reservoir.RimVolume;
        var measured = Plan(Invariant($"""{reservoir}, "volume": "{more * 1000} L" """), Nutrients);
        Assert.Equal(more, measured.Reservoir.RimVolume, 1e-9);
        Assert.Equal(1.08 * plain.Reservoir.FullVolume, measured.Reservoir.FullVolume, 1e-9);
        Assert.Equal(1.08 * plain.Nutrients!.Volume, measured.Nutrients!.Volume, 1e-9);
        Assert.Equal(1.08 * plain.Reservoir.Days!.Value, measured.Reservoir.Days!.Value, 1e-6);
        Assert.Equal(1.08 * plain.Reservoir.WaterMass, measured.Reservoir.WaterMass, 1e-6);
        Assert.Equal(plain.Layout.Tank.Full, measured.Layout.Tank.Full);
    }

    [Theory]
    [InlineData("reservoir.height", """ "shape": "lying", "width": "24 in", "height": "20 in" """)]
    [InlineData("reservoir.width", """ "shape": "upright", "length": "24 in", "width": "20 in" """)]
    [InlineData("reservoir.shape", """ "shape": "lying", "length": "38 in" """)]
    [InlineData("reservoir.shape", """ "shape": "upright", "height": "38 in" """)]
    [InlineData("reservoir.lowestLevel", """ "shape": "lying", "width": "8 in", "lowestLevel": "8 in" """)]
    public void A_round_tank_without_one_diameter_is_a_fault_with_its_line(string path, string reservoir)
    {
        var fault = Fault(reservoir);
        Assert.Equal(path, fault.Path);
        Assert.Equal(2, fault.Line);
    }

    [Fact]
    public void The_floor_carries_what_the_tank_was_measured_to_hold()
    {
        var plan = Plan(""" "shape": "lying", "width": "24 in", "length": "38 in", "volume": "300 L" """);
        Assert.Equal(300 * 0.998, plan.Stand!.Reservoir.Mass, 0.2);
    }
}
