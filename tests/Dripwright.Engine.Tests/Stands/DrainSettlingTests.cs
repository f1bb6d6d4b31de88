using CsCheck;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Stands.Checks;
using Dripwright.Engine.Stands.Loads;
using Dripwright.Engine.Tests.Layout;
using Dripwright.Engine.Tests.Planning;

namespace Dripwright.Engine.Tests.Stands;

/// <summary>What the drain does between its hangers: water that stands in it is told, and told truly.</summary>
public sealed class DrainSettlingTests
{
    private const double Weight = 20; // N/m, a full 1 1/2 in pipe
    private const double Stiffness = 320; // N·m²

    [Fact]
    public void A_level_pipe_pools_as_deep_as_a_simple_beam_sags()
    {
        // 5 w L⁴/(384 EI) in the middle, w L³/(24 EI) at the ends (AISC beam sheets, case 1).
        const double span = 1.5;
        var told = DrainSettling.Along([At(0, 0), At(span, 0)], exit: 0, Weight, Stiffness);

        Assert.NotNull(told);
        Assert.Equal(5 * Weight * Math.Pow(span, 4) / (384 * Stiffness), told.PoolDepth, 1e-12);
        Assert.Equal(-Weight * Math.Pow(span, 3) / (24 * Stiffness), told.LowestSlope, 1e-12);
        Assert.Equal(0, told.At);
    }

    [Fact]
    public void A_pipe_steeper_than_its_sag_at_the_holder_keeps_no_water()
    {
        const double span = 1.5;
        var steep = Weight * Math.Pow(span, 3) / (24 * Stiffness);

        Assert.Equal(0, Sloped(1.001 * steep).PoolDepth);
        Assert.InRange(Sloped(0.9 * steep).PoolDepth, 1e-6, 1);
        Assert.True(Sloped(1.001 * steep).LowestSlope > 0);
        Assert.True(Sloped(0.999 * steep).LowestSlope < 0);

        static DrainSettling Sloped(double slope) =>
            DrainSettling.Along(
                [At(0, 0), At(span, slope * span), At(2 * span, 2 * slope * span)],
                0,
                Weight,
                Stiffness
            )!;
    }

    [Fact]
    public void A_stiff_pipe_pools_only_behind_a_holder_that_stands_higher_than_one_upstream()
    {
        // Heights from the outlet: 0, 3, 1, 4 mm: behind the second stands 2 mm of water.
        DrainHolder[] holders = [At(0, 0), At(1, 0.003), At(2, 0.001), At(3, 0.004)];

        Assert.Equal(0.002, DrainSettling.Along(holders, 0, 0, 1e6)!.PoolDepth, 1e-9);
        Assert.Equal(-0.002, DrainSettling.Along(holders, 0, 0, 1e6)!.LowestSlope, 1e-9);
        // The other way round the water runs off to the other end: 4, 1, 3, 0 from there.
        Assert.Equal(0.004, DrainSettling.Along(holders, 3, 0, 1e6)!.PoolDepth, 1e-9);
    }

    [Fact]
    public void One_more_holder_on_the_line_never_pools_more_and_a_heavier_pipe_never_less() =>
        Gen.Select(
                Gen.Double[0.2, 2].Array[2, 6],
                Gen.Double[0, 0.03],
                Gen.Double[0.05, 0.95],
                Gen.Double[0, 40],
                Gen.Int[0, 5]
            )
            .Holds(
                (spans, slope, share, weight, which) =>
                {
                    List<double> places = [0];
                    foreach (var span in spans)
                    {
                        places.Add(places[^1] + span);
                    }

                    var few = Laid(places, slope, weight);
                    var at = which % spans.Length;
                    List<double> more = [.. places];
                    more.Insert(at + 1, places[at] + (share * spans[at]));
                    var many = Laid(more, slope, weight);
                    Assert.True(many.PoolDepth <= few.PoolDepth + 1e-12);
                    Assert.True(many.LowestSlope >= few.LowestSlope - 1e-12);
                    Assert.True(Laid(places, slope, weight + 5).PoolDepth >= few.PoolDepth - 1e-12);
                }
            );

    [Fact]
    public void Other_units_of_length_and_force_give_the_same_slopes_and_a_mirrored_drain_the_same_pool() =>
        Gen.Select(Gen.Double[0.3, 2], Gen.Double[-0.01, 0.03], Gen.Double[-0.004, 0.004])
            .Holds(
                (span, slope, off) =>
                {
                    DrainHolder[] holders =
                    [
                        At(0, 0),
                        At(span, (slope * span) + off),
                        At(2.5 * span, 2.5 * slope * span),
                    ];
                    var metric = DrainSettling.Along(holders, 0, Weight, Stiffness)!;

                    // Feet and pounds-force: lengths / 0.3048, w · 0.3048 / 4.448…, EI / (4.448… · 0.3048²).
                    const double foot = 0.3048;
                    const double pound = 4.4482216152605;
                    var us = DrainSettling.Along(
                        [.. holders.Select(h => new DrainHolder(h.X / foot, h.Laid / foot, h.Z / foot))],
                        0,
                        Weight * foot / pound,
                        Stiffness / (pound * foot * foot)
                    )!;
                    Assert.Equal(metric.LowestSlope, us.LowestSlope, 1e-9);
                    Assert.Equal(metric.PoolDepth, us.PoolDepth * foot, 1e-9);

                    var mirrored = DrainSettling.Along(
                        [.. holders.Reverse().Select(h => h with { X = -h.X })],
                        0,
                        Weight,
                        Stiffness
                    )!;
                    Assert.Equal(metric.LowestSlope, mirrored.LowestSlope, 1e-12);
                    Assert.Equal(metric.PoolDepth, mirrored.PoolDepth, 1e-12);
                }
            );

    [Fact]
    public void A_full_inch_and_a_half_pipe_weighs_and_bends_as_by_hand()
    {
        var pipe = TestRigs.Layout(TestRigs.TenPots).Parts.Drain;
        (var outside, var inside) = (pipe.OutsideDiameter, pipe.InsideDiameter);
        var water = Math.PI / 4 * inside * inside * 1000;
        var wall = Math.PI / 4 * ((outside * outside) - (inside * inside)) * 1400;

        Assert.Equal(9.80665 * (water + wall), PipeBeam.Weight(pipe, 1400, full: true), 1e-9);
        Assert.Equal(9.80665 * wall, PipeBeam.Weight(pipe, 1400, full: false), 1e-9);
        // Its own weight sags it 400/140 times as far in fifty years, the water only while it stands there.
        Assert.Equal(9.80665 * (water + (wall * 400 / 140)), PipeBeam.LastingWeight(pipe, 1400), 1e-9);
        // 360,000 psi is 2.482 GPa.
        Assert.Equal(2.482e9, PipeBeam.Modulus(PipeFamily.PvcSchedule40), 1e6);
        Assert.Equal(
            PipeBeam.Modulus(pipe.Family) * Math.PI / 64 * (Math.Pow(outside, 4) - Math.Pow(inside, 4)),
            PipeBeam.Stiffness(pipe),
            1e-9
        );
    }

    [Fact]
    public void The_drain_is_held_by_a_hanger_at_every_frame_along_it_clear_of_the_joints()
    {
        foreach (var arrangement in Enum.GetValues<Arrangement>())
        {
            foreach (var side in Enum.GetValues<Side>())
            {
                var rig = TestRigs.TenPots.WithRow(r => r with { Arrangement = arrangement, DrainSide = side });
                var layout = TestRigs.Layout(rig);
                var row = layout.Rows[0];
                Assert.Equal(row.Frames.Count, row.Hangers.Count);
                foreach (var (hanger, frame) in row.Hangers.Zip(row.Frames))
                {
                    var pipe = row.Drain.At(hanger.Station);
                    var joint = rig.Stand.JointCentre + rig.Stand.SocketDepth;
                    if (hanger.Mount == HangerMount.Tie)
                    {
                        // Tied straight on only where tube and pipe leave less than a hanger needs.
                        var gap = hanger.Reach - ((layout.Stand.Tube.Outside + row.Drain.Pipe.OutsideDiameter) / 2);
                        Assert.True(gap < 0.0125);
                        Assert.Equal(hanger.At.Z - pipe.Z, hanger.Reach, 1e-9);
                        continue;
                    }

                    Assert.Equal(
                        hanger.Reach,
                        hanger.Mount == HangerMount.Leg ? Math.Abs(pipe.Y - hanger.At.Y) : hanger.At.Z - pipe.Z,
                        1e-9
                    );
                    // On an axis of a tube that is there, and no nearer to a joint than its socket reaches.
                    var tube = Assert.Single(
                        layout.Stand.Members,
                        m =>
                            m.Role
                                == hanger.Mount switch
                                {
                                    HangerMount.Leg => MemberRole.Leg,
                                    HangerMount.Cross => MemberRole.Cross,
                                    _ => MemberRole.Rail,
                                }
                            && Math.Abs(
                                m.From.DistanceTo(hanger.At) + hanger.At.DistanceTo(m.To) - m.From.DistanceTo(m.To)
                            ) < 1e-9
                    );
                    Assert.True(tube.To.DistanceTo(hanger.At) >= joint + 0.018);
                    Assert.True(Math.Abs(hanger.Station - frame) <= joint + 0.021);
                }
            }
        }
    }

    [Fact]
    public void The_hangers_of_a_ten_pot_rig_keep_it_from_pooling_and_fewer_frames_with_little_slope_do_not()
    {
        Assert.Null(Plans.From("""{ "rows": [ { "pots": 10 } ] }""", 0).Said("drain-pools"));
        var flat = Plans.From(
            """{ "rows": [ { "pots": 10 } ], "stand": { "extraFrames": 0 }, "drain": { "slope": "0.4 %" } }""",
            0
        );
        Assert.NotNull(flat.Said("drain-pools"));
        // One more frame in each module cures it.
        Assert.Null(
            Plans
                .From(
                    """{ "rows": [ { "pots": 10 } ], "stand": { "extraFrames": 1 }, "drain": { "slope": "0.4 %" } }""",
                    0
                )
                .Said("drain-pools")
        );
    }

    private static DrainHolder At(double x, double z) => new(x, z, z);

    private static DrainSettling Laid(IEnumerable<double> places, double slope, double weight) =>
        DrainSettling.Along([.. places.Select(x => At(x, slope * x))], 0, weight, Stiffness)!;
}
