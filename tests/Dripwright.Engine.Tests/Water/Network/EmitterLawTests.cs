using CsCheck;
using Dripwright.Engine.Water;

namespace Dripwright.Engine.Tests.Water;

public class EmitterLawTests
{
    private static readonly Gen<EmitterLaw> s_laws = Gen.OneOf(
        from q in Gen.Double[1e-8, 1e-4]
        from x in Gen.Double[0.01, 1]
        select EmitterLaw.FromRating(q, 10, x),
        from q in Gen.Double[1e-8, 1e-4]
        from x in Gen.Double[0.01, 0.5]
        from opening in Gen.Double[0.01, 8]
        select EmitterLaw.PressureCompensating(q, 10, x, opening, 40)
    );

    [Fact]
    public void Flow_never_falls_with_head_and_has_no_jump() =>
        Gen.Select(s_laws, Gen.Double[-12, 4], Gen.Double[1e-6, 1])
            .Holds(
                (law, logHead, part) =>
                {
                    var head = Math.Exp(logHead);
                    Assert.True(law.Flow(head * (1 + part)) >= law.Flow(head));
                    Assert.Equal(law.Flow(head), law.Flow(head * (1 + 1e-12)), 1e-10 * law.Flow(head));
                },
                iter: 20_000
            );

    [Fact]
    public void The_stated_slope_is_the_slope() =>
        Gen.Select(s_laws, Gen.Double[-10, 4])
            .Where((law, logHead) => Math.Abs(Math.Exp(logHead) / Math.Max(1e-9, law.OpeningHead) - 1) > 1e-3)
            .Holds(
                (law, logHead) =>
                {
                    var head = Math.Exp(logHead);
                    var step = 1e-5 * head;
                    var secant = (law.Flow(head + step) - law.Flow(head - step)) / (2 * step);
                    Assert.Equal(secant, law.At(head).Slope, 1e-4 * secant);
                },
                iter: 10_000
            );

    [Fact]
    public void A_fifth_less_head_takes_a_tenth_of_a_turbulent_emitters_flow()
    {
        var law = EmitterLaw.FromRating(2e-6, 10, 0.5);
        Assert.Equal(1 - 0.1056, law.Flow(8) / law.Flow(10), 0.00005);
    }

    [Theory]
    [InlineData(-1, EmitterRange.NoFlow)]
    [InlineData(0, EmitterRange.NoFlow)]
    [InlineData(2, EmitterRange.BelowOpening)]
    [InlineData(5, EmitterRange.Working)]
    [InlineData(40, EmitterRange.Working)]
    [InlineData(41, EmitterRange.AboveHighest)]
    public void A_compensating_emitter_tells_its_range(double head, EmitterRange range)
    {
        var law = EmitterLaw.PressureCompensating(1e-6, 10, 0.02, 5, 40);
        Assert.Equal(range, law.RangeAt(head));
        Assert.Equal(range != EmitterRange.NoFlow, law.Flow(head) > 0);
    }

    [Fact]
    public void Head_is_shared_between_microtube_and_emitter() =>
        Gen.Select(s_laws, Gen.Double[1e-4, 40], Gen.Double[0.0005, 0.006], Gen.Double[0.1, 2], Gen.Double[0.01, 40])
            .Holds(
                (law, head, bore, multiplier, guess) =>
                {
                    var tube = new PipeLaw(new Pipe(0.5, bore, 0, 5), 1e-6);
                    var emitterHead = guess;
                    var (flow, slope) = EmitterBranch.At(law, tube, multiplier, head, ref emitterHead);
                    Assert.Equal(head, emitterHead + tube.At(flow).Head, 1e-11 * head + 1e-13);
                    Assert.Equal(multiplier * law.Flow(emitterHead), flow, 1e-12 * flow);
                    Assert.True(slope >= 0);
                    // Whatever the guess, the answer is the same.
                    var other = 0.0;
                    Assert.Equal(flow, EmitterBranch.At(law, tube, multiplier, head, ref other).Flow, 1e-9 * flow);
                },
                iter: 10_000
            );

    [Fact]
    public void Impossible_emitters_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => EmitterLaw.Plain(0, 0.5));
        Assert.Throws<ArgumentOutOfRangeException>(() => EmitterLaw.Plain(1e-6, 1.5));
        Assert.Throws<ArgumentOutOfRangeException>(() => EmitterLaw.FromRating(1e-6, double.NaN, 0.5));
        Assert.Throws<ArgumentOutOfRangeException>(() => EmitterLaw.PressureCompensating(1e-6, 4, 0.05, 5, 40));
        Assert.Throws<ArgumentOutOfRangeException>(() => EmitterLaw.PressureCompensating(1e-6, 10, 0.05, 5, 5));
    }
}
