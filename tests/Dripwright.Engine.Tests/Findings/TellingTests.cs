using Dripwright.Engine.Findings;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Tests.Findings;

/// <summary>How values become words.</summary>
public sealed class TellingTests
{
    public static TheoryData<Measured, string, string> Values =>
        new()
        {
            { Measured.Share(6.13e-6), "0 %", "0 %" },
            { Measured.Slope(6.13e-6), "0 in per ft", "0 %" },
            { Measured.Slope(0.0021), "0.21 %", "0.21 %" },
            { Measured.Slope(0.25 / 12), "1/4 in per ft", "2.08 %" },
            { Measured.Length(1e-9), "0 in", "0 mm" },
            { Measured.Length(0.000613), "0.02 in", "0.6 mm" },
            { Measured.Length(0.3048), "12 in", "30.5 cm" },
            { Measured.Pressure(0.4), "0 psi", "0 kPa" },
            { Measured.Volume(1e-9), "0 gal", "0 L" },
            { Measured.Days(4.5 * 86_400), "4.5 days", "4.5 days" },
            { Measured.Days(86_400), "1 day", "1 day" },
            { Measured.Warming(2), "3.6 °F a day", "2 °C a day" },
            { Measured.FloorLoad(1915.21), "40 lb/ft²", "195 kg/m²" },
            { Measured.Opening(0.00013), "130 µm", "130 µm" },
            { Measured.Current(12.34), "12.3 A", "12.3 A" },
        };

    [Theory]
    [MemberData(nameof(Values))]
    public void A_value_is_told_with_as_many_figures_as_anyone_can_measure(Measured value, string us, string metric) =>
        Assert.Equal((us, metric), (Phrase.Of(value).Told(), Phrase.Of(value).Told(UnitSystem.Metric)));

    [Fact]
    public void Several_things_of_which_one_is_enough_are_joined_by_or()
    {
        Phrase[] three = [Phrase.Plain("braces"), Phrase.Plain("a stiffer tube"), Phrase.Plain("one more frame")];

        Assert.Equal(
            "This is enough, by calculation: braces, a stiffer tube or one more frame.",
            Phrase.Of("stand.remedy.enough", new Several(three, Joint.Or)).Told()
        );
    }

    [Fact]
    public void Pots_in_a_row_are_told_as_a_range() =>
        Assert.Equal("row 2, pots 1 to 4, 7", Place.OfPots(2, [1, 2, 3, 4, 7]).Name.Told());

    [Fact]
    public void A_single_pot_is_told_and_marked_as_itself() => Assert.Equal(Place.OfPot(2, 7), Place.OfPots(2, [7]));

    [Fact]
    public void Rows_that_differ_in_their_last_digits_share_a_finding_and_others_do_not()
    {
        var judge = new Judgement();
        Add(judge, 1, 0.3, "1");
        Add(judge, 2, 0.3 * (1 + 1e-12), "2");
        Add(judge, 3, 0.31, "3");

        Assert.Equal(
            [
                [1, 2],
                [3],
            ],
            judge.Findings.Select(f => f.Places.Select(p => p.Row).ToArray())
        );
        Assert.Equal(["rows[0].pots", "rows[1].pots"], judge.Findings[0].Cures[0].Changes.Select(c => c.Field));
    }

    [Fact]
    public void Where_cures_of_rows_alike_would_change_one_field_in_two_ways_none_is_offered()
    {
        var judge = new Judgement();
        Add(judge, 1, 0.3, "1", "drain.slope");
        Add(judge, 2, 0.3, "2", "drain.slope");

        Assert.Empty(Assert.Single(judge.Findings).Cures);
    }

    private static void Add(Judgement judge, int row, double value, string text, string? field = null) =>
        judge.Add(
            "row-short",
            [Place.OfRow(row)],
            [],
            Phrase.Of("finding.row-short.what"),
            Phrase.Of(Measured.Length(value)),
            Limit.AtLeast(Measured.Length(1)),
            Phrase.Of("finding.row-short.remedy"),
            Cure.Field(field ?? FormattableString.Invariant($"rows[{row - 1}].pots"), text)
        );
}
