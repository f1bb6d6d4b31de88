using CsCheck;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Tests.Layout;

/// <summary>Braces are clamped where nothing else is: a grower cannot put two things around one place of a leg.</summary>
public sealed class StandBracesTests
{
    [Fact]
    public void No_clamp_meets_a_hanger_of_the_drain() =>
        Gen.Select(
                Gen.Double[0.75, 1.2],
                Gen.Double[0, 0.01],
                Gen.Double[0, 0.08],
                Gen.Bool.Select(front => front ? Side.Front : Side.Back),
                Gen.Int[1, 30],
                Gen.Int[1, 3].Select(braces => (Bracing)braces)
            )
            .Holds(
                (height, slope, below, side, pots, bracing) =>
                {
                    var layout = Braced(height, slope, below, side, pots, bracing);
                    StandJoint[] clamps = [.. layout.Stand.Joints.Where(joint => joint.Part == StandLayout.Clamp)];
                    Assert.NotEmpty(clamps);
                    // A hanger is 36 mm long; half of it, and half a clamp round the tube on each side of the brace.
                    var apart = 0.018 + layout.Stand.Tube.Outside;
                    foreach (var hanger in layout.Stand.Hangers)
                    {
                        Assert.All(
                            clamps.Where(c => Math.Abs(c.At.X - hanger.At.X) + Math.Abs(c.At.Y - hanger.At.Y) < 1e-6),
                            clamp => Assert.True(Math.Abs(clamp.At.Z - hanger.At.Z) >= apart - 2e-6)
                        );
                    }

                    Assert.False(layout.Stand.HasClampAtHanger(1));
                }
            );

    [Theory]
    [InlineData(Side.Front)]
    [InlineData(Side.Back)]
    public void Braces_across_rise_to_the_side_away_from_the_drain(Side side)
    {
        var layout = Braced(0.7, 0.01, 0.02, side, 10, Bracing.Across);

        var drain = layout.Rows[0].Drain.Path[0].Y;
        Assert.All(
            layout.Stand.Members.Where(m => m.Role == MemberRole.Brace),
            brace => Assert.True(Math.Abs(brace.To.Y - drain) > Math.Abs(brace.From.Y - drain))
        );
    }

    [Fact]
    public void Braces_of_a_row_are_cut_alike_though_the_drain_slopes()
    {
        var layout = Braced(0.7, 0.02, 0.02, Side.Back, 30, Bracing.Both);

        Assert.All(
            layout.Stand.Members.Where(m => m.Role == MemberRole.Brace).GroupBy(m => m.Label),
            alike => Assert.All(alike, brace => Assert.Equal(alike.First().Length, brace.Length, 1e-9))
        );
        Assert.Equal(2, layout.Stand.Members.Where(m => m.Role == MemberRole.Brace).DistinctBy(m => m.Label).Count());
    }

    [Fact]
    public void A_stand_too_low_for_clamp_and_hanger_says_so_and_keeps_its_braces()
    {
        var layout = Braced(0.45, 0.05, 0.1, Side.Back, 20, Bracing.Along);

        Assert.True(layout.Stand.HasClampAtHanger(1));
        Assert.Contains(layout.Stand.Members, m => m.Role == MemberRole.Brace);
    }

    private static RigLayout Braced(double height, double slope, double below, Side side, int pots, Bracing bracing)
    {
        var rig = TestRigs.TenPots.WithPots(pots).WithRow(row => row with { StandHeight = height, DrainSide = side });
        return TestRigs.Layout(
            rig with
            {
                Stand = rig.Stand with { Bracing = bracing, ExtraFrames = 1 },
                Drain = rig.Drain with { Slope = slope, BelowPots = below },
            }
        );
    }
}
