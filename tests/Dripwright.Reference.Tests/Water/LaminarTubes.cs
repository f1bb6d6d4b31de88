using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Water;

namespace Dripwright.Reference.Tests.Water;

/// <summary>Laminar emitters in warm and cold water, against Hagen and Poiseuille with handbook viscosities.</summary>
public sealed class LaminarTubes
{
    /// <remarks>
    /// q = π Δp d⁴ / (128 μ L), so at one pressure q(T)/q(20 °C) = μ(20 °C)/μ(T). Dynamic viscosities 1.307, 1.139, 1.002, 0.890,
    /// 0.798 mPa·s at 10 to 30 °C: Crittenden et al., MWH's Water Treatment, 3rd ed. 2012, Appendix C, Table C-1.
    /// </remarks>
    [Theory]
    [InlineData(10, 1.307)]
    [InlineData(15, 1.139)]
    [InlineData(20, 1.002)]
    [InlineData(25, 0.890)]
    [InlineData(30, 0.798)]
    public void A_laminar_emitter_gives_in_proportion_to_one_over_the_viscosity(double celsius, double viscosity)
    {
        var law = FeedModel.LawOf(Laminar, celsius);
        var usual = FeedModel.LawOf(Laminar, 20);
        Assert.Equal(1.002 / viscosity, law.Flow(1) / usual.Flow(1), 0.008);
    }

    private static EmitterType Laminar { get; } =
        new()
        {
            Key = "tube",
            Name = "Tube",
            Source = "test",
            Kind = EmitterKind.LongPath,
            RatedFlow = 1e-6,
            RatedPressure = 10_000,
            Exponent = 1,
            MinPressure = 0,
            MaxPressure = 100_000,
            Variation = 0,
            Passage = 1e-3,
            Punch = 3e-3,
        };
}
