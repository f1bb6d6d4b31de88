using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Tests.Rigs;

/// <summary>A cure changes the fields it names and no other.</summary>
public sealed class RigCureTests
{
    private static readonly Rig s_rig = RigReader
        .Read(
            """{ "rows": [ { "pots": 4 }, { "pots": 6, "modules": 9 } ], "stand": { "depth": "10 in" } }""",
            "test.rig.json",
            PartsCatalogue.Default
        )
        .Rig!;

    [Fact]
    public void Only_the_named_field_changes()
    {
        var cured = Applied(Cure.Field("rows[1].spacing", "\"14 in\""));

        Assert.Equal(14 * 0.0254, cured.Rows[1].Spacing, 1e-12);
        var change = Assert.Single(RigDifference.Of(s_rig, cured));
        Assert.Equal("rows[1].spacing", change.Path);
    }

    [Fact]
    public void A_field_that_is_taken_out_is_found_by_the_plan()
    {
        var cured = Applied(Cure.Of([new FieldChange("stand.depth", null), new FieldChange("rows[1].modules", null)]));

        Assert.Null(cured.Stand.Depth);
        Assert.Null(cured.Rows[1].Modules);
    }

    [Theory]
    [InlineData("rows[2].spacing")]
    [InlineData("rows[x].spacing")]
    [InlineData("nowhere.spacing")]
    [InlineData("name.spacing")]
    public void A_path_that_leads_nowhere_is_misuse(string path) =>
        Assert.Throws<ArgumentException>(() => RigCure.Applied(s_rig, Cure.Field(path, "1"), PartsCatalogue.Default));

    [Fact]
    public void A_text_that_is_no_JSON_is_misuse() =>
        Assert.Throws<ArgumentException>(() =>
            RigCure.Applied(s_rig, Cure.Field("drain.slope", "1 %"), PartsCatalogue.Default)
        );

    [Fact]
    public void A_change_that_makes_no_rig_is_told_as_a_fault_of_its_field()
    {
        var reading = RigCure.Applied(s_rig, Cure.Field("drain.slope", "\"90 %\""), PartsCatalogue.Default);

        Assert.Null(reading.Rig);
        Assert.Equal("drain.slope", Assert.Single(reading.Faults).Path);
    }

    private static Rig Applied(Cure cure) => RigCure.Applied(s_rig, cure, PartsCatalogue.Default).Rig!;
}
