using Dripwright.Engine;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Rigs;
using Dripwright.Language;
using Dripwright.Sheets.Screen;
using Dripwright.Workbench.Rigs;

namespace Dripwright.Workbench.Tests.Rigs;

/// <summary>What a rig's page says at a glance, and what a tap in its drawing leads to.</summary>
public sealed class VerdictTests
{
    [Fact]
    public void Errors_in_the_file_come_before_all_else_and_a_stop_before_what_is_still_open()
    {
        var (stop, mend) = (Found(FindingLevel.Stop), Found(FindingLevel.Mend));
        Assert.Equal("stop", Verdict.Of(2, [], false).Class);
        Assert.Contains("2", Verdict.Of(2, [], false).Text, StringComparison.Ordinal);
        Assert.Equal("", Verdict.Of(0, null, false).Class);
        Assert.Equal("stop", Verdict.Of(0, [mend, stop], true).Class);
        Assert.Equal(Words.Of("verdict.stand"), Verdict.Of(0, [mend], true).Text);
        Assert.Equal("mend", Verdict.Of(0, [mend], false).Class);
        Assert.Equal(Words.Of("verdict.good"), Verdict.Of(0, [Found(FindingLevel.Note)], false).Text);
    }

    [Fact]
    public void Everything_in_the_drawing_but_a_pot_has_the_field_that_decides_it()
    {
        var reading = RigReader.Read("""{ "rows": [{ "pots": 4 }] }""", "rig", PartsCatalogue.Default);
        var options = new PlanOptions { Draws = 0, Strength = false };
        var plan = Planner.Of(reading.Rig!, reading.Assumed, PartsCatalogue.Default, options);
        var parts = ScreenView.Parts(plan);
        Assert.NotEmpty(parts);
        foreach (var part in parts)
        {
            Assert.Equal(part.Label, TappedPart.Of(plan, part.Part)!.Label);
            var field = TappedPart.Field(plan, part);
            Assert.Equal(part.Kind == "pot", field is null);
            Assert.True(field is null || Editing(field), field);
        }

        Assert.Null(TappedPart.Of(plan, "pot-9-9"));
    }

    private static bool Editing(string field) => Dripwright.Workbench.Editing.FormField.At(field).Path == field;

    private static ToldFinding Found(FindingLevel level) =>
        new("rule", level, "row 1", "rows", "It is so.", "1", "2", "Do this.", "common practice");
}
