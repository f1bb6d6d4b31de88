using System.Globalization;
using Dripwright.Engine;
using Dripwright.Sheets.Screen;
using Dripwright.Sheets.Tests.Bench;

namespace Dripwright.Sheets.Tests.Screen;

public sealed class ScreenChangesTests
{
    private static readonly Plan s_before = Rig("");

    [Fact]
    public void The_same_rig_shows_no_change() => Assert.Empty(ScreenView.Changes(s_before, Rig("")));

    [Fact]
    public void Emptying_a_pot_changes_that_pot_alone() =>
        Assert.Equal(
            [new("pot-1-3", ChangeKind.Changed)],
            ScreenView.Changes(s_before, Rig("", planting: """[{ "pots": "1-2, 4", "crop": "tomato" }]"""))
        );

    [Fact]
    public void A_fifth_pot_is_added_and_taking_it_away_removes_it()
    {
        var after = Rig("", pots: 5);
        Assert.Contains(new("pot-1-5", ChangeKind.Added), ScreenView.Changes(s_before, after));
        Assert.Contains(new("pot-1-5", ChangeKind.Removed), ScreenView.Changes(after, s_before));
        // Pots stand in the middle of their stand, so the others move aside.
        Assert.Contains(new("pot-1-1", ChangeKind.Moved), ScreenView.Changes(s_before, after));
    }

    [Fact]
    public void A_reservoir_farther_off_is_moved_with_its_pump_and_the_pots_stay()
    {
        var changes = ScreenView.Changes(s_before, Rig(""", "reservoir": { "gap": "50 cm" }"""));
        Assert.Contains(new("reservoir", ChangeKind.Moved), changes);
        Assert.Contains(new("pump", ChangeKind.Moved), changes);
        Assert.DoesNotContain(changes, c => c.Part.StartsWith("pot-", StringComparison.Ordinal));
    }

    [Fact]
    public void Another_feed_line_changes_the_line() =>
        Assert.Contains(
            new("run-F1", ChangeKind.Changed),
            ScreenView.Changes(s_before, Rig(""", "feed": { "line": "hose-25mm" }"""))
        );

    [Fact]
    public void Other_units_of_display_are_no_change() =>
        Assert.Empty(ScreenView.Changes(s_before, s_before.In(Engine.Units.UnitSystem.Us)));

    private static Plan Rig(string more, int pots = 4, string planting = """[{ "pots": "1-4", "crop": "tomato" }]""") =>
        BenchPlans.Of(
            string.Create(
                CultureInfo.InvariantCulture,
                $$"""{ "units": "metric", "rows": [{ "pots": {{pots}}, "planting": {{planting}} }]{{more}} }"""
            )
        );
}
