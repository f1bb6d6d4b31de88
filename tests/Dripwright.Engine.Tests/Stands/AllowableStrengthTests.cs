using Dripwright.Engine.Stands.Checks;
using Dripwright.Engine.Stands.Frame;
using Dripwright.Engine.Stands.Sections;

namespace Dripwright.Engine.Tests.Stands;

public sealed class AllowableStrengthTests
{
    private static readonly SectionProperties s_tube = TestFrames.Tube.Properties;

    // Worked by hand from AISC 360 E3 with E = 200 GPa, Fy = 221 MPa: one column on each side of KL/r = 141.7 and one at 60.
    [Theory]
    [InlineData(0.5, 13_817)]
    [InlineData(1.0, 8_413)]
    [InlineData(2.0, 2_261)]
    public void Columns_bear_what_the_formula_gives_by_hand(double length, double expected)
    {
        var steel = Steels.Weakest with { Young = 200e9, Yield = 221e6 };

        Assert.Equal(expected, AllowableStrength.Compression(s_tube, steel, length), 1.0);
    }

    [Fact]
    public void A_column_never_gains_by_being_longer()
    {
        var last = double.PositiveInfinity;
        for (var length = 0.05; length < 4; length += 0.01)
        {
            var now = AllowableStrength.Compression(s_tube, Steels.Weakest, length);
            Assert.True(now < last);
            last = now;
        }
    }

    [Fact]
    public void Bending_alone_and_push_alone_reach_one_at_their_own_limit()
    {
        var moment = Steels.Weakest.Yield * s_tube.ModulusY / 1.67;
        var push = AllowableStrength.Compression(s_tube, Steels.Weakest, 1);

        Assert.Equal(1, Combined(new SectionForces(0, 0, 0, 0, 0.6 * moment, 0.8 * moment)), 1e-12);
        Assert.Equal(1, Combined(new SectionForces(-push, 0, 0, 0, 0, 0)), 1e-12);
        // H1-1 has no step where its two lines meet.
        Assert.Equal(
            Combined(new SectionForces(-0.2 * push, 0, 0, 0, 0.9 * moment, 0)),
            Combined(new SectionForces(-0.1999999 * push, 0, 0, 0, 0.9 * moment, 0)),
            1e-6
        );
    }

    private static double Combined(SectionForces forces) =>
        AllowableStrength.Combined(s_tube, Steels.Weakest, forces, 1);
}
