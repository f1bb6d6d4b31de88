using Dripwright.Engine.Water;

namespace Dripwright.Reference.Tests.Water;

/// <summary>Check values from the documentation and tables of a public fluids library, which names the sources below.</summary>
public class LocalLossTables
{
    private const double Inch = 0.0254;

    [Fact]
    public void Hooper_two_K_of_a_globe_valve() => Assert.Equal(6.15, LocalLoss.TwoK(1500, 4, 2 * Inch, 1e4), 0.005);

    [Fact]
    public void Hooper_two_K_of_a_given_pair() => Assert.Equal(6.09, LocalLoss.TwoK(900, 4, 2 * Inch, 1e4), 0.005);

    [Fact]
    public void Darby_three_K_in_twelve_inches() =>
        Assert.Equal(0.81951, LocalLoss.ThreeK(950, 0.25, 4, 12, 1e4), 0.000006);

    [Theory]
    [InlineData(0.622, 0.5, 1.123, 0.909)]
    [InlineData(1.049, 1.0, 0.861, 0.780)]
    public void Two_K_and_three_K_of_a_small_threaded_elbow(double inches, double nominal, double two, double three)
    {
        // Constants as in the same library: Hooper 800, 0.40; Darby 800, 0.14, 4.0; Re 1e4. The values are recomputed: what
        // they show is how far two published models of one elbow lie apart in small pipe.
        Assert.Equal(two, LocalLoss.TwoK(800, 0.40, inches * Inch, 1e4), 0.0006);
        Assert.Equal(three, LocalLoss.ThreeK(800, 0.14, 4.0, nominal, 1e4), 0.0006);
    }

    [Theory]
    [InlineData(0.5, 0.5625)]
    [InlineData(0.8, 0.1296)]
    public void Borda_enlargement(double ratio, double published) =>
        Assert.Equal(published, LocalLoss.SuddenEnlargement(ratio, 1), 1e-12);

    [Fact]
    public void Sudden_contraction_is_near_the_rival_form_of_Rennels() =>
        // Rennels & Hudson give 0.5301 at β = 0.4, Crane's form 0.42: handbooks differ by this much.
        Assert.InRange(LocalLoss.SuddenContraction(0.4, 1), 0.42 - 1e-9, 0.5301);

    [Fact]
    public void K_from_a_valve_coefficient() =>
        // 15.153 in the source uses the rounded factor 1.6e9 for 1.59888e9.
        Assert.Equal(15.153, LocalLoss.FromKv(2.312, 0.015), 0.001 * 15.153);

    [Theory]
    [InlineData(0.013, 19.7, 0.21)]
    [InlineData(0.013, 31.63, 0.38)]
    [InlineData(0.0163, 23.59, 0.15)]
    public void Emitter_barb_in_a_small_line(double bore, double squareMillimetres, double expected) =>
        // Formula from the BIOENG (UNESP) abstract, article 19; values recomputed from it, two digits.
        Assert.Equal(expected, LocalLoss.EmitterBarb(squareMillimetres * 1e-6, bore), 0.0051);
}
