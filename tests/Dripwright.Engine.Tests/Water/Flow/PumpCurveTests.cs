using CsCheck;
using Dripwright.Engine.Water;

namespace Dripwright.Engine.Tests.Water;

public class PumpCurveTests
{
    private static readonly PumpPoint[] s_published = [new(1e-4, 2.8, 22), new(2e-4, 2.2, 25), new(3e-4, 1.2, 26)];

    private static readonly Gen<PumpCurve> s_curves =
        from count in Gen.Int[2, 12]
        from falls in Gen.Double[0, 1].Array[count]
        from steps in Gen.Double[1e-5, 1e-3].Array[count]
        select PumpCurve
            .Read(Enumerable.Range(0, count).Select(i => new PumpPoint(steps.Take(i).Sum(), 0.5 + falls.Skip(i).Sum())))
            .Curve;

    [Fact]
    public void Head_passes_through_every_point_and_never_rises_between() =>
        s_curves.Holds(
            curve =>
            {
                foreach (var point in curve.Points)
                {
                    Assert.Equal(point.Head, curve.Head(point.Flow), 1e-9);
                }

                var before = curve.ShutOffHead;
                for (var i = 1; i <= 200; i++)
                {
                    var (head, slope) = curve.At(Math.Min(curve.LargestFlow, curve.LargestFlow * i / 200));
                    Assert.True(head <= before + 1e-12);
                    Assert.True(slope <= 0);
                    before = head;
                }
            },
            iter: 500
        );

    [Fact]
    public void Ends_published_apart_become_points_of_the_curve()
    {
        var curve = PumpCurve.Read(s_published, shutOffHead: 3.2, openFlow: 3.8e-4).Curve!;
        Assert.Equal(3.2, curve.Head(0), 1e-12);
        Assert.Equal(0, curve.Head(3.8e-4), 1e-12);
        Assert.Equal(0, curve.LowestHead);
    }

    [Fact]
    public void Head_past_the_end_is_refused_not_guessed()
    {
        var curve = PumpCurve.Read(s_published, shutOffHead: 3.2).Curve!;
        Assert.Throws<ArgumentOutOfRangeException>(() => curve.Head(3.01e-4));
        Assert.Throws<ArgumentOutOfRangeException>(() => curve.Head(-1e-9));
        Assert.Throws<ArgumentOutOfRangeException>(() => curve.Head(double.NaN));
    }

    [Fact]
    public void All_faults_are_told_at_once()
    {
        var reading = PumpCurve.Read([new(1e-4, 2), new(2e-4, 2.5), new(3e-4, 2.7), new(3e-4, 1)]);
        Assert.Null(reading.Curve);
        Assert.Equal(4, reading.Faults.Count);
        Assert.Contains(reading.Faults, f => f.Contains("no shut-off point", StringComparison.Ordinal));
        Assert.Contains(reading.Faults, f => f.Contains("rises from 2 m to 2.5 m", StringComparison.Ordinal));
        Assert.Contains(reading.Faults, f => f.Contains("two points", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(double.NaN, 1.0)]
    [InlineData(1e-4, -1.0)]
    [InlineData(double.PositiveInfinity, 1.0)]
    public void Impossible_points_are_faults(double flow, double head) =>
        Assert.NotEmpty(PumpCurve.Read([new(0, 3), new(flow, head)]).Faults);

    [Fact]
    public void A_head_given_twice_is_a_fault() =>
        Assert.Single(PumpCurve.Read([new(0, 3), new(1e-4, 1)], shutOffHead: 3.5).Faults);

    [Fact]
    public void Nothing_at_all_is_a_fault() => Assert.Single(PumpCurve.Read([]).Faults);

    [Fact]
    public void Shut_off_and_open_flow_alone_give_the_stated_parabola()
    {
        var curve = PumpCurve.FromShutOffAndOpenFlow(4, 2e-4, 30);
        Assert.Equal(3, curve.Head(1e-4), 1e-12);
        Assert.Equal(30, curve.InputPower(1e-4));
        Assert.True(curve.PowerIsKnown);
        Assert.Equal(3, PumpCurve.Read([], 4, 2e-4).Curve!.Head(1e-4), 1e-12);
    }

    [Fact]
    public void Power_runs_straight_between_points_and_is_unknown_without_watts()
    {
        var curve = PumpCurve.Read(s_published, shutOffHead: 3.2).Curve!;
        Assert.Equal(23.5, curve.InputPower(1.5e-4)!.Value, 1e-9);
        // The shut-off point has no watts of its own and takes its neighbour's.
        Assert.Equal(22, curve.InputPower(0)!.Value, 1e-9);
        Assert.Null(PumpCurve.FromShutOffAndOpenFlow(4, 2e-4).InputPower(1e-4));
    }

    [Fact]
    public void Speeding_up_and_slowing_down_again_changes_nothing() =>
        Gen.Double[0.5, 1.5]
            .Holds(ratio =>
            {
                var curve = PumpCurve.Read(s_published, 3.2, 3.8e-4).Curve!;
                var there = curve.AtSpeed(ratio);
                Assert.Equal(curve.Head(1.3e-4) * ratio * ratio, there.Head(1.3e-4 * ratio), 1e-9);
                Assert.Equal(
                    curve.InputPower(1.3e-4)!.Value * Math.Pow(ratio, 3),
                    there.InputPower(1.3e-4 * ratio)!.Value,
                    1e-9
                );
                Assert.Equal(curve.Head(1.3e-4), there.AtSpeed(1 / ratio).Head(1.3e-4), 1e-9);
            });
}
