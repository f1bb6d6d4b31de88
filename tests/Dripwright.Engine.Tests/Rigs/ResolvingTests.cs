using CsCheck;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Catalogue.Targets;
using Dripwright.Engine.Files;
using Dripwright.Engine.Proposing;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Tests.Planning;
using Dripwright.Engine.Units;
using Dripwright.Language;

namespace Dripwright.Engine.Tests.Rigs;

/// <summary>What a rig names is looked up once, by its reader: what is not there is a fault, and planning finds the rest.</summary>
public sealed class ResolvingTests
{
    private static readonly PartsCatalogue s_ours = PartsCatalogue.Default;
    private static readonly PlanOptions s_short = new() { Draws = 0, Strength = false };

    [Fact]
    public void Over_a_catalogue_with_rows_taken_away_a_rig_is_at_fault_or_planned()
    {
        var faulty = 0;
        var planned = 0;
        Gen.Select(RigGen.Rigs, Gen.Int[0, 1 << 20], Gen.OneOf(0.002, 0.01, 0.05, 0.4))
            .Holds(
                (rig, seed, share) =>
                {
                    var catalogue = Without(new Random(seed), share);
                    var reading = RigReader.Read(RigWriter.Write(rig), "law", catalogue);
                    if (reading.Resolved is not { } resolved)
                    {
                        Interlocked.Increment(ref faulty);
                        Assert.NotEmpty(reading.Faults);
                        Assert.All(
                            reading.Faults,
                            fault => Assert.True(fault.Line > 0 && fault.Expected.Told().Length > 0)
                        );
                        return;
                    }

                    Interlocked.Increment(ref planned);
                    Assert.Empty(reading.Faults);
                    Assert.NotNull(Planner.Of(resolved, reading.Assumed, s_short).Parts);
                },
                iter: 120
            );
        Assert.True(faulty > 10 && planned > 10, $"{faulty} at fault, {planned} planned");
    }

    [Theory]
    [InlineData("feed.line", "tee", """ "entry": "middle" """)]
    [InlineData("feed.line", "elbow90", """ "entry": "loop" """)]
    [InlineData("feed.line", "cap", """ "entry": "end" """)]
    [InlineData("feed.header.pipe", "check-valve", """ "checkValve": true """)]
    [InlineData("feed.header.pipe", "valve", """ "throttle": "50 %" """)]
    public void A_pipe_without_a_fitting_that_the_layout_needs_is_a_fault_with_its_line(
        string path,
        string kind,
        string feed
    )
    {
        var lines = $$"""
            { "feed": { {{feed}},
              "line": "hose-1/2",
              "header": {
                "pipe": "hose-1/2" } } }
            """;
        var lacking = s_ours with
        {
            Fittings = s_ours
                .Fittings.Where(row =>
                    row.Value.Nominal != "1/2" || FieldDescription.Dashed(row.Value.Kind.ToString()) != kind
                )
                .ToDictionary(),
        };
        Assert.NotNull(RigReader.Read(lines, "a", s_ours).Resolved);
        var fault = RigReader.Read(lines, "a", lacking).Faults[0].Told();
        Assert.Equal(path, fault.Path);
        Assert.Equal(path == "feed.line" ? 2 : 4, fault.Line);
        Assert.Contains($"no \"{kind}\"", fault.Found, StringComparison.Ordinal);
        Assert.Contains("\"fittings\"", fault.Expected, StringComparison.Ordinal);
    }

    [Fact]
    public void A_pipe_needs_only_the_fittings_that_this_rig_takes()
    {
        var lacking = s_ours with
        {
            Fittings = s_ours.Fittings.Where(row => row.Value.Kind is not FittingKind.Tee).ToDictionary(),
        };
        Assert.NotNull(RigReader.Read("{}", "a", lacking).Resolved);
        Assert.Null(RigReader.Read("""{ "rows": [ { "count": 2 } ] }""", "a", lacking).Resolved);
    }

    [Fact]
    public void What_cannot_be_resolved_is_told_beside_the_other_faults()
    {
        string[] paths =
        [
            .. RigReader
                .Read(
                    """
                    { "name": 7,
                      "reservoir": { "shape": "lying", "length": "38 in" },
                      "nutrients": { "crop": "eggplant" },
                      "pump": { "openFlow": "100 gph" } }
                    """,
                    "a",
                    s_ours
                )
                .Faults.Select(fault => fault.Path),
        ];
        Assert.Equal(["name", "reservoir.shape", "nutrients.crop", "pump.openFlow"], paths);
    }

    [Fact]
    public void A_rig_put_together_without_a_file_is_resolved_or_says_why_not()
    {
        var rig = RigReader.Starter(UnitSystem.Us, s_ours);
        Assert.NotNull(ResolvedRig.TryOf(rig, s_ours));
        var wrong = rig with { Feed = rig.Feed with { Line = "hose-9" } };
        Assert.Null(ResolvedRig.TryOf(wrong, s_ours));
        var thrown = Assert.Throws<ArgumentException>(() => ResolvedRig.Of(wrong, s_ours));
        Assert.Contains("feed.line: found \"hose-9\"", thrown.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_brief_whose_catalogue_cannot_make_a_rig_is_at_fault_and_one_with_half_the_fittings_finds_an_answer()
    {
        var none = s_ours with { Fittings = new Dictionary<string, FittingType>() };
        var fault = Assert.Single(BriefReader.Read(Proposing.Briefs.Small, "brief", none).Faults);
        Assert.Equal("units", fault.Path);
        var half = Proposing.Briefs.Fewest with
        {
            Fittings = s_ours.Fittings.Where(row => row.Value.Kind is not FittingKind.Tee).ToDictionary(),
        };
        Assert.NotEmpty(Proposing.Briefs.Propose(Proposing.Briefs.Small, half).Proposals);
    }

    [Fact]
    public void A_section_under_its_old_name_is_refused_in_one_sentence()
    {
        var fault = Assert.Single(
            RigReader.Read("""{ "nutrition": { "crop": "tomato", "pureShare": 7 } }""", "a", s_ours).Faults
        );
        Assert.Equal(("nutrition", "nutrients"), (fault.Path, fault.Nearest));
        Assert.Contains("new name", fault.Expected.Told(), StringComparison.Ordinal);
    }

    [Fact]
    public void The_pumps_hours_a_day_are_those_of_its_clock_everywhere()
    {
        var plan = Plans.From(
            """{ "timer": { "mode": "cycle", "on": "10 min", "off": "50 min", "hoursPerDay": "12 h" } }"""
        );
        var clock = plan.Layout.Resolved.Clock;
        Assert.Equal(12, clock.Waterings, 1e-12);
        Assert.Equal(2, clock.HoursPerDay, 1e-12);
        Assert.Equal(2, plan.Feed.OperatingPoint!.HoursPerDay, 1e-12);
        var always = Plans.From("""{ "timer": { "mode": "continuous" } }""").Layout.Resolved.Clock;
        Assert.Equal((true, 24), (always.Continuous, always.HoursPerDay));
    }

    /// <summary>Our catalogue with a share of the rows of every group gone.</summary>
    private static PartsCatalogue Without(Random random, double share)
    {
        Dictionary<string, T> Left<T>(IReadOnlyDictionary<string, T> rows) =>
            rows.Where(_ => random.NextDouble() > share).ToDictionary();
        return s_ours with
        {
            Pipes = Left(s_ours.Pipes),
            Fittings = Left(s_ours.Fittings),
            Tubes = Left(s_ours.Tubes),
            Pots = Left(s_ours.Pots),
            Tanks = Left(s_ours.Tanks),
            Emitters = Left(s_ours.Emitters),
            Strainers = Left(s_ours.Strainers),
            Pumps = Left(s_ours.Pumps),
            Outlets = Left(s_ours.Outlets),
            Wires = Left(s_ours.Wires),
            Sundries = Left(s_ours.Sundries),
            Crops = Left(s_ours.Crops),
            Salts = new SaltCatalogue { Salts = Left(s_ours.Salts.Salts) },
            Targets = new TargetCatalogue
            {
                Targets = Left(s_ours.Targets.Targets),
                Stages = [.. s_ours.Targets.Stages.Where(_ => random.NextDouble() > share)],
            },
        };
    }
}
