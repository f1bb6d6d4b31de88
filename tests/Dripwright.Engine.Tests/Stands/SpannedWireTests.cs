using CsCheck;
using Dripwright.Engine.Wires;

namespace Dripwright.Engine.Tests.Stands;

public sealed class SpannedWireTests
{
    private static readonly Gen<WireKind> s_kinds = Gen.Select(
        Gen.Double[2e4, 2e6],
        Gen.Double[0.05, 2],
        (stiffness, weight) => new WireKind("any", "any wire", stiffness, weight, 2e4, "drawn")
    );

    private static readonly Gen<WireSpan> s_spans = Gen.Select(
        s_kinds,
        Gen.Double[0.3, 12],
        Gen.Double[-0.5, 0.5],
        Gen.Double[1, 2000],
        (kind, length, steep, tightened) =>
            new WireSpan
            {
                Kind = kind,
                Length = length,
                Rise = steep * length,
                Tightened = Math.Max(tightened, kind.Weight * length / 10),
            }
    );

    private static readonly Gen<(double Part, double Force)[]> s_weights = Gen.Select(
        Gen.Double[0, 1],
        Gen.Double[0, 300],
        (part, force) => (part, force)
    ).Array[0, 12];

    private static readonly Gen<(WireSpan Span, WireLoad[] Loads)> s_loaded = Gen.Select(
        s_spans,
        s_weights,
        (span, weights) => (span, weights.Select(w => new WireLoad(w.Part * span.Length, w.Force)).ToArray())
    );

    [Fact]
    public void The_supports_carry_all_weight_and_the_wire_ends_at_them() =>
        s_loaded.Holds(
            (span, loads) =>
            {
                var shape = ElasticCatenary.Solve(span, loads);
                var weight = (span.Kind.Weight * shape.SlackLength) + loads.Sum(l => l.Force);
                Assert.Equal(weight, shape.Left.Down + shape.Right.Down, 1e-9 * (1 + weight));
                Assert.Equal(span.Length, shape.Points[^1].Station, 1e-9 * span.Length);
                Assert.Equal(-span.Rise, shape.Points[^1].Drop, 1e-9 * span.Length);
                Assert.True(shape.Left.Level > 0 && shape.Left.Level == shape.Right.Level, "the level pull is one");
                Assert.True(shape.Sag >= 0 && double.IsFinite(shape.GreatestTension));
                Assert.All(shape.Points, p => Assert.True(p.Tension <= shape.GreatestTension));
            },
            iter: 2000
        );

    [Fact]
    public void The_empty_wire_pulls_as_it_was_tightened() =>
        s_spans.Holds(
            span =>
            {
                var shape = ElasticCatenary.Solve(span, []);
                Assert.Equal(span.Tightened, shape.Left.Level, 1e-6 * span.Tightened);
            },
            iter: 500
        );

    [Fact]
    public void Moments_about_the_left_support_balance() =>
        s_loaded.Holds(
            (span, loads) =>
            {
                // The wire's own weight is made small beside the loads, so their places decide.
                var light = span with
                {
                    Kind = span.Kind with { Weight = 1e-4 },
                };
                var heavy = loads.Append(new WireLoad(span.Length / 3, 50)).ToArray();
                var shape = ElasticCatenary.Solve(light, heavy);
                var hung = heavy.OrderBy(l => l.Station).ToArray();
                var stations = shape.Points.Where((_, i) => i > 0).Select(p => p.Station).ToArray();
                // Points between loads (the deepest of a stretch) carry no load; light wires have none worth the name.
                if (stations.Length == hung.Length + 1)
                {
                    var moment = hung.Zip(stations, (l, x) => l.Force * x).Sum();
                    var right = (shape.Right.Down * span.Length) - (shape.Right.Level * span.Rise);
                    Assert.Equal(moment, right, 1e-4 * (1 + moment));
                }
            },
            iter: 1000
        );

    [Fact]
    public void A_mirrored_wire_gives_the_mirrored_answer() =>
        s_loaded.Holds(
            (span, loads) =>
            {
                var shape = ElasticCatenary.Solve(span, loads);
                WireLoad[] turned = [.. loads.Select(l => l with { Station = span.Length - l.Station })];
                var mirror = ElasticCatenary.Solve(span with { Rise = -span.Rise }, turned);
                Assert.Equal(shape.Left.Down, mirror.Right.Down, 1e-7 * (1 + Math.Abs(shape.Left.Down)));
                Assert.Equal(shape.Left.Level, mirror.Left.Level, 1e-7 * shape.Left.Level);
                Assert.Equal(shape.Sag, mirror.Sag, 1e-7 * span.Length);
            },
            iter: 500
        );

    [Fact]
    public void Another_plant_never_lessens_the_pull_of_the_ends() =>
        s_loaded.Holds(
            (span, loads) =>
            {
                var before = ElasticCatenary.Solve(span, loads);
                var after = ElasticCatenary.Solve(span, [.. loads, new WireLoad(span.Length / 2, 80)]);
                Assert.True(after.Left.Level >= before.Left.Level * (1 - 1e-9));
                Assert.True(after.Left.Down + after.Right.Down > before.Left.Down + before.Right.Down);
            },
            iter: 1000
        );

    [Fact]
    public void A_tighter_wire_sags_less_and_pulls_more() =>
        s_loaded.Holds(
            (span, loads) =>
            {
                var level = span with { Rise = 0 };
                var slack = ElasticCatenary.Solve(level, loads);
                var tight = ElasticCatenary.Solve(level with { Tightened = 1.2 * span.Tightened }, loads);
                Assert.True(tight.Sag <= slack.Sag * (1 + 1e-9), "sag");
                Assert.True(tight.Left.Level >= slack.Left.Level * (1 - 1e-9), "pull");
            },
            iter: 1000
        );

    [Fact]
    public void Inner_hooks_carry_their_half_of_both_spans_and_ends_the_whole_pull()
    {
        var wire = Wire([0, 2, 4], [.. Enumerable.Range(0, 8).Select(i => new WireLoad(0.25 + (0.5 * i), 100))]);
        var plan = SpannedWirePlan.Of(wire);
        Assert.Equal(400, plan.Supports[1].Down, 2.0);
        Assert.Equal(200, plan.Supports[0].Down, 1.0);
        Assert.True(plan.Supports[0].Level > 3 * plan.Supports[0].Down, "a flat wire pulls far more than it carries");
        Assert.True(plan.Supports[1].Level > 0, "one side picked bare");
        Assert.Equal(2.4 - plan.Spans.Max(s => s.Sag), plan.LowestHeight, 1e-12);
    }

    [Fact]
    public void More_supports_lessen_sag_and_pull()
    {
        WireLoad[] loads = [.. Enumerable.Range(0, 12).Select(i => new WireLoad(0.25 + (0.5 * i), 130))];
        var few = SpannedWirePlan.Of(Wire([0, 6], loads));
        var many = SpannedWirePlan.Of(Wire([0, 2, 4, 6], loads));
        Assert.True(many.GreatestTension < few.GreatestTension);
        Assert.True(many.LowestHeight > few.LowestHeight);
    }

    [Fact]
    public void The_larger_of_plant_and_floor_is_taken_and_named()
    {
        Assert.Equal(CropLoadBasis.Plant, CropLoad.Of(14, 0.4, 150).Basis);
        var wide = CropLoad.Of(7, 0.9, 150);
        Assert.Equal(CropLoadBasis.Area, wide.Basis);
        Assert.Equal(0.9 * 150, wide.Force, 1e-12);
    }

    [Fact]
    public void Two_strings_share_a_vine_and_each_must_stand_the_whole()
    {
        var vine = VineStrings.Of(140, 2, 1.8, 0.2, 2.4);
        Assert.Equal((70, 140), (vine.EachString, vine.OneLeft));
        Assert.Equal(70, vine.EachClip * vine.Clips, 1e-12);
        Assert.Equal(8.4, vine.Length, 1e-12);
    }

    [Fact]
    public void A_wire_that_cannot_be_is_refused()
    {
        Assert.Throws<ArgumentException>(() => SpannedWirePlan.Of(Wire([1], [])));
        Assert.Throws<ArgumentException>(() => SpannedWirePlan.Of(Wire([0, 2, 2], [])));
        Assert.Throws<ArgumentException>(() => SpannedWirePlan.Of(Wire([0, 2], [new WireLoad(2.1, 5)])));
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            SpannedWirePlan.Of(Wire([0, 2], [new WireLoad(1, double.NaN)]))
        );
        Assert.Throws<ArgumentOutOfRangeException>(() => SpannedWirePlan.Of(Wire([0, 2], []) with { Tightened = 1e6 }));
    }

    private static SpannedWire Wire(double[] supports, WireLoad[] loads) =>
        new()
        {
            Kind = new WireKind("w", "solid wire 2.5 mm", 981_748, 0.378, 4448, "test"),
            Supports = supports,
            Height = 2.4,
            Tightened = 200,
            Loads = loads,
        };
}
