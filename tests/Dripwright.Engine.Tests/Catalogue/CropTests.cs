using System.Text;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Catalogue.Targets;
using Dripwright.Engine.Proposing;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Tests.Planning;
using Dripwright.Engine.Units;
using Dripwright.Language;

namespace Dripwright.Engine.Tests.Catalogue;

/// <summary>One crop as a row of the catalogue, found by any word that growers have for it.</summary>
public sealed class CropTests
{
    private static readonly PartsCatalogue s_ours = PartsCatalogue.Default;

    private const string Okra = """
        { "crops": [ { "key": "okra", "name": "Okra", "source": "my own bed", "words": ["ladies' fingers"],
            "spacing": "20 in", "plantMass": "3 kg", "areaLoad": "60 Pa", "usePerPlant": "4 L/day" } ] }
        """;

    private static CatalogueReading Own(string json) =>
        CatalogueReader.Read(Encoding.UTF8.GetBytes(json), "own", s_ours);

    private static Plan Plan(string json, PartsCatalogue catalogue)
    {
        var reading = RigReader.Read(json, "a", catalogue);
        Assert.True(reading.Resolved is not null, string.Join("\n", reading.Faults.Told()));
        return Planner.Of(reading.Resolved, [], new PlanOptions { Draws = 0, Strength = false });
    }

    [Theory]
    [InlineData("tomato", "tomato")]
    [InlineData("Tomatoes", "tomato")]
    [InlineData(" cherry  tomato ", "tomato")]
    [InlineData("sweet-pepper", "sweet-pepper")]
    [InlineData("Sweet pepper", "sweet-pepper")]
    [InlineData("PEPPERS", "sweet-pepper")]
    [InlineData("aubergine", "eggplant")]
    [InlineData("grandmother's beans", "other")]
    [InlineData("", "other")]
    public void A_crop_is_found_by_any_word_for_it(string word, string key) =>
        Assert.Equal(key, s_ours.CropOrOther(word)!.Key);

    [Fact]
    public void No_word_means_two_crops()
    {
        var words = s_ours.Crops.Values.SelectMany(crop => crop.Words.Append(crop.Key).Append(crop.Name));
        Assert.All(words, word => Assert.Single(s_ours.Crops.Values, crop => crop.IsCalled(word)));
    }

    [Fact]
    public void Every_crop_that_is_fed_is_a_row_and_every_row_names_targets_there_are()
    {
        Assert.All(s_ours.Targets.Stages, stage => Assert.True(s_ours.Crops.ContainsKey(stage.Crop), stage.Crop));
        Assert.All(
            s_ours.Crops.Values.Select(crop => crop.LoopTarget).OfType<string>(),
            target => Assert.True(s_ours.Targets.Targets.ContainsKey(target), target)
        );
        Assert.All(s_ours.Crops.Values, crop => Assert.Empty(CatalogueRules.Misfits(crop)));
    }

    [Fact]
    public void A_planting_in_the_growers_own_words_is_never_at_fault()
    {
        var plan = Plans.From("""{ "rows": [ { "pots": 2, "planting": [ { "crop": "purple thing" } ] } ] }""");
        var pot = plan.Layout.Rows[0].Pots[0];
        Assert.Equal(("purple thing", "other"), (pot.Crop, pot.CropType!.Key));
    }

    [Fact]
    public void The_crop_of_the_recipe_is_a_key_and_the_nearest_is_named()
    {
        var reading = RigReader.Read("""{ "nutrients": { "crop": "sweet-peper" } }""", "a", s_ours);
        var fault = Assert.Single(reading.Faults);
        Assert.Equal(("nutrients.crop", "sweet-pepper"), (fault.Path, fault.Nearest));
    }

    [Fact]
    public void A_crop_without_a_recipe_is_a_fault_that_names_those_with_one()
    {
        var reading = RigReader.Read("""{ "nutrients": { "crop": "eggplant" } }""", "a", s_ours);
        var fault = Assert.Single(reading.Faults);
        Assert.Contains("tomato, cucumber, sweet-pepper", fault.Expected.Told(), StringComparison.Ordinal);
    }

    [Fact]
    public void An_own_crop_brings_its_thirst_and_its_weight_to_the_plan()
    {
        const string Rig = """
            { "rows": [ { "pots": 4, "planting": [ { "crop": "Ladies' Fingers" } ] } ],
              "cropWire": { "wire": "rope-4mm" } }
            """;
        var plan = Plan(Rig, Own(Okra).Catalogue!);
        Assert.Equal(4 * 4e-3 / 86_400, plan.Reservoir.Use, 1e-15);
        Assert.Equal(3 * 9.80665, plan.CropWire.Plant!.ByPlant, 1e-9);
        var said = Plan(
            Rig.Replace(
                "\"cropWire\": {",
                "\"reservoir\": { \"usePerPlant\": \"1 L/day\" }, \"cropWire\": { \"plantMass\": \"5 kg\",",
                StringComparison.Ordinal
            ),
            Own(Okra).Catalogue!
        );
        Assert.Equal(4e-3 / 86_400, said.Reservoir.Use, 1e-15);
        Assert.Equal(5 * 9.80665, said.CropWire.Plant!.ByPlant, 1e-9);
    }

    [Fact]
    public void Lettuce_has_no_string_and_pulls_at_no_wire()
    {
        var plan = Plans.From(
            """
            { "rows": [ { "pots": 4, "planting": [ { "pots": "1-2", "crop": "lettuce" }, { "pots": "3", "crop": "tomato" } ] } ],
              "cropWire": { "wire": "rope-4mm" } }
            """
        );
        Assert.Equal([3], plan.CropWire.Wires.SelectMany(wire => wire.Place.Hanging).Select(vine => vine.Pot));
        Assert.Equal(1, Assert.Single(plan.Parts.Lines, line => line.Part == "vine-hook").Needed);
    }

    [Fact]
    public void A_pot_holds_as_many_plants_as_is_usual_for_its_crop_unless_the_rig_says()
    {
        var own = Own("""{ "crops": [ { "key": "basil", "plantsPerPot": 3, "source": "me" } ] }""").Catalogue!;
        var plan = Plan(
            """
            { "rows": [ { "pots": 3, "planting": [
                { "pots": "1", "crop": "basil" }, { "pots": "2", "crop": "basil", "plants": 2 }, { "pots": "3", "crop": "tomato" } ] } ] }
            """,
            own
        );
        Assert.Equal([3, 2, 1], plan.Layout.Rows[0].Pots.Select(pot => pot.Plants));
        const string Wish =
            """{ "site": { "roomLength": "20 ft", "roomWidth": "10 ft" }, "crops": [{ "crop": "basil", "plants": 10 }] }""";
        Assert.Equal(4, BriefPots.Count(BriefReader.Read(Wish, "brief", own).Brief!, own));
        Assert.Equal(
            10,
            BriefPots.Count(BriefReader.Read(Wish, "brief", PartsCatalogue.Default).Brief!, PartsCatalogue.Default)
        );
    }

    [Fact]
    public void Every_crop_of_ours_says_how_much_light_it_wants_and_where_that_is_from() =>
        Assert.All(
            PartsCatalogue.Default.Crops.Values,
            crop =>
            {
                // Leaves grow with some 12, fruit wants 15 to 30.
                Assert.InRange(crop.LightMolesPerSquareMetreAndDay!.Value, 12, 30);
                Assert.Contains("light: ", crop.Source, StringComparison.Ordinal);
                Assert.Contains("plants per pot: ", crop.Source, StringComparison.Ordinal);
            }
        );

    [Fact]
    public void Faults_of_own_crops_and_stages_are_told_with_their_line()
    {
        string[] paths =
        [
            .. Own(
                """
                { "crops": [ { "key": "okra", "basedOn": "tomato", "loopTarget": "no-such", "source": "me" },
                             { "key": "cress", "basedOn": "tomato", "plantMass": "0 kg", "source": "me" } ],
                  "stages": [ { "crop": "okrra", "stage": "young", "target": "steiner", "conductivity": "2 dS/m", "source": "me" } ] }
                """
            )
                .Faults.Select(fault => fault.Path),
        ];
        Assert.Equal(
            ["crops[0].loopTarget", "crops[1].areaLoad", "stages[0].crop"],
            paths.Order(StringComparer.Ordinal)
        );
    }

    [Fact]
    public void An_own_crop_with_a_stage_of_its_own_gets_a_recipe()
    {
        var own = Own(
            """
            { "crops": [ { "key": "okra", "basedOn": "eggplant", "source": "me" } ],
              "stages": [ { "crop": "okra", "stage": "young", "target": "steiner", "conductivity": "2 dS/m", "source": "me" } ] }
            """
        ).Catalogue!;
        var plan = Plan("""{ "nutrients": { "crop": "okra", "pureShare": "100 %" } }""", own);
        Assert.Equal("okra", plan.Nutrients!.Crop.Key);
        Assert.Equal(2, plan.Nutrients.Wanted.DecisiemensPerMetre, 1e-12);
        // No limit of its own is known, so that of the crop "other" holds: the lowest known.
        Assert.Equal(6, plan.Nutrients.SodiumLimit.Classic);
    }

    [Theory]
    [InlineData("Tomatoes", "tomato")]
    [InlineData("pepper", "sweet-pepper")]
    [InlineData("basil", "basil")]
    [InlineData("purple thing", "none")]
    public void The_starters_crop_is_known_to_the_nutrients(string crop, string fed)
    {
        var rig = RigStarter.Rig(new StarterAnswers(Crop: crop), s_ours);
        Assert.Equal(crop, rig.Rows[0].Planting![0].Crop);
        Assert.Equal(fed, rig.Nutrients.Crop);
    }

    [Fact]
    public void Spacing_is_round_in_the_units_of_the_grower()
    {
        var tomato = s_ours.Crops["tomato"];
        Assert.Equal(16 * 0.0254, tomato.SpacingIn(UnitSystem.Us), 1e-12);
        Assert.Equal(0.4, tomato.SpacingIn(UnitSystem.Metric), 1e-12);
    }

    [Fact]
    public void Stages_are_found_by_the_key_of_the_crop() =>
        Assert.Equal("pepper-closed", s_ours.Targets.StageOf("sweet-pepper", GrowthStage.Young)!.Target);
}
