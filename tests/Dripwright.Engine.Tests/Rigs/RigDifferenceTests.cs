using CsCheck;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Tests.Rigs;

public sealed class RigDifferenceTests
{
    [Fact]
    public void A_rig_does_not_differ_from_itself_written_and_read_again() =>
        RigGen.Rigs.Holds(rig => Assert.Empty(RigDifference.Of(rig, Read(RigWriter.Write(rig)))), iter: 100);

    [Fact]
    public void Two_rigs_differ_exactly_when_their_files_do() =>
        Gen.Select(RigGen.Rigs, RigGen.Rigs)
            .Holds(
                (one, other) =>
                    Assert.Equal(
                        RigWriter.Write(one with { Units = other.Units }) == RigWriter.Write(other),
                        RigDifference.Of(one with { Units = other.Units }, other).Count == 0
                    ),
                iter: 100
            );

    [Fact]
    public void The_way_back_tells_as_many_changes() =>
        Gen.Select(RigGen.Rigs, RigGen.Rigs)
            .Holds(
                (one, other) =>
                {
                    var there = RigDifference.Of(one, other);
                    var back = RigDifference.Of(other, one);
                    Assert.Equal(there.Count(c => c.Before is null), back.Count(c => c.After is null));
                },
                iter: 50
            );

    [Theory]
    [InlineData(
        """{ "rows": [ { "spacing": "300 mm" } ] }""",
        """{ "rows": [ { "spacing": "30 cm" } ] }""",
        new string[0]
    )]
    [InlineData(
        """{ "rows": [ { "spacing": "12 in" } ] }""",
        """{ "rows": [ { "spacing": "14 in" } ] }""",
        new[] { "row 1, spacing: 12 in → 14 in" }
    )]
    [InlineData("{}", """{ "name": "Yard" }""", new[] { "name: \"Unnamed rig\" → \"Yard\"" })]
    [InlineData(
        """{ "feed": { "checkValve": false } }""",
        """{ "feed": { "checkValve": true } }""",
        new[] { "feed, check valve: no → yes" }
    )]
    [InlineData(
        """{ "rows": [ { "pots": 3 }, { "pots": 5 } ] }""",
        """{ "rows": [ { "pots": 3 }, { "pots": 4 }, { "pots": 5 } ] }""",
        new[] { "row 2: pots 4 (new)" }
    )]
    [InlineData(
        """{ "onHand": [ { "part": "pump-800gph" }, { "part": "tank-box-35-gal", "count": 2 } ] }""",
        """{ "onHand": [ { "part": "tank-box-35-gal", "count": 2 } ] }""",
        new[] { "on hand 1: part pump-800gph (taken away)" }
    )]
    public void A_difference_is_told_in_the_growers_words(string before, string after, string[] told) =>
        Assert.Equal(told, RigDifference.Of(Read(before), Read(after)).Select(change => change.ToString()));

    [Fact]
    public void A_change_too_small_for_the_usual_digits_is_still_told_apart()
    {
        var change = Assert.Single(
            RigDifference.Of(
                Read("""{ "rows": [ { "spacing": "300 mm" } ] }"""),
                Read("""{ "rows": [ { "spacing": "300.001 mm" } ] }""")
            )
        );
        Assert.NotEqual(change.Before, change.After);
    }

    private static Rig Read(string text)
    {
        var reading = RigReader.Read(text, "test", PartsCatalogue.Default);
        Assert.Empty(reading.Faults);
        return reading.Rig!;
    }
}
