using Dripwright.Engine.Water;

namespace Dripwright.Reference.Tests.Water;

public class UniformityReferenceTests
{
    // Times to fill one container at 18 emitters, s. Data: public B.Tech examination paper IDE-2.4.8, 2023-24. The
    // paper prints no answer; the answers below were computed apart from this code, from the definitions.
    private static readonly double[] s_fillTimes =
    [
        64,
        79,
        67,
        71,
        75,
        81,
        68,
        85,
        75,
        69,
        85,
        77,
        89,
        68,
        81,
        90,
        65,
        61,
    ];

    private static double[] Flows => Array.ConvertAll(s_fillTimes, time => 1 / time);

    [Fact]
    public void Statistical_uniformity_of_the_examination_sample()
    {
        Assert.Equal(0.8814, Uniformity.Statistical(s_fillTimes), 1e-4);
        Assert.Equal(0.8819, Uniformity.Statistical(Flows), 1e-4);
    }

    [Fact]
    public void Short_method_of_the_examination_sample() =>
        Assert.Equal(0.8913, Uniformity.ByFillTimes(s_fillTimes), 1e-4);

    [Fact]
    public void Christiansen_coefficient_of_the_examination_sample() =>
        Assert.Equal(0.8994, Uniformity.Christiansen(Flows), 1e-4);

    [Fact]
    public void Low_quarter_of_eighteen_readings_takes_four_and_a_half_of_them() =>
        // Whole numbers of them, both found in use, give 0.8489 and 0.8619.
        Assert.Equal(0.8561, Uniformity.OfLowQuarter(Flows), 1e-4);

    [Theory]
    // Inputs: Indian national entrance examination, agricultural engineering (4 x 5 m trees, 40 % wetted, each emitter
    // wets 2 x 2 m, so two to a tree; x 0.6, Cv 0.06, mean 120 kPa, least 100 kPa). Answers recomputed.
    [InlineData(0.06, 2, 100.0 / 120, 0.6, 0.8481, 1e-4)]
    [InlineData(0.06, 1, 100.0 / 120, 0.6, 0.8281, 1e-4)]
    // Keller-Karmeli formula worked by hand.
    [InlineData(0.05, 1, 0.95, 1.0, 0.889675, 1e-9)]
    public void Design_emission_uniformity(
        double variation,
        int emittersPerPlant,
        double pressureRatio,
        double exponent,
        double expected,
        double tolerance
    ) =>
        Assert.Equal(
            expected,
            Uniformity.OfDesign(variation, emittersPerPlant, Math.Pow(pressureRatio, exponent), 1),
            tolerance
        );

    [Fact]
    public void Published_low_quarter_ratio() =>
        // Mean 0.48 gph, low quarter 0.44 gph, printed as 92 % (public encyclopedia page on distribution uniformity).
        Assert.Equal(0.92, Uniformity.OfLowQuarter([0.44, 0.48, 0.49, 0.51]), 0.005);

    [Theory]
    // First outputs for the seed 1234567 as listed publicly for SplitMix64 (from memory).
    [InlineData(0, 6457827717110365317UL)]
    [InlineData(1, 3203168211198807973UL)]
    [InlineData(2, 9817491932198370423UL)]
    [InlineData(3, 4593380528125082431UL)]
    [InlineData(4, 16408922859458223821UL)]
    public void Random_stream_is_the_published_generator(int skipped, ulong expected)
    {
        var stream = RandomStream.FromState(1234567);
        for (var i = 0; i < skipped; i++)
        {
            stream.NextBits();
        }

        Assert.Equal(expected, stream.NextBits());
    }
}
