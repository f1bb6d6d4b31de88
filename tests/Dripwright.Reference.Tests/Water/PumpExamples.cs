using Dripwright.Engine.Physics;
using Dripwright.Engine.Water;

namespace Dripwright.Reference.Tests.Water;

/// <summary>Worked examples on pumps; textbooks as transcribed in a public collection of textbook companions.</summary>
public class PumpExamples
{
    private const double Litre = 1e-3;
    private static readonly double[] s_heads = [40.0, 39.5, 38.0, 35.0, 30.0, 20.0];

    [Fact]
    public void Duty_point_of_Schaschke_chapter_9()
    {
        // Schaschke, ch. 9: lift 10 m, pipe 50 mm x 100 m, Fanning 0.005, one exit loss; 6.6 L/s and 34 m off a graph. 1.5 %.
        var (flow, head) = DutyPoint(Curve());
        Assert.Equal(6.6 * Litre, flow, 0.015 * 6.6 * Litre);
        Assert.Equal(34, head, 0.015 * 34);
    }

    [Fact]
    public void Slower_by_a_quarter_of_the_flow_of_Schaschke_chapter_9()
    {
        // The book scales head alone, from 34 to 23 m, and gets 987 rpm; the homologous point gives 980. 1 %.
        const double Wanted = 0.75 * 6.589e-3;
        var (low, high) = (0.5, 1.0);
        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = DutyPoint(Curve().AtSpeed(middle)).Flow < Wanted ? (middle, high) : (low, middle);
        }

        Assert.Equal(987, 1200 * high, 0.01 * 987);
    }

    [Fact]
    public void Affinity_laws_of_Crane_example_7_33()
    {
        // Crane TP-410, ex. 7-33: 126 ft, 400 gpm, 17.5 hp at 3500 rpm; at 1700 rpm 29.7 ft, 194.3 gpm, 2.01 hp.
        var slow = PumpCurve.FromShutOffAndOpenFlow(126, 400, 17.5).AtSpeed(1700.0 / 3500);
        Assert.Equal(29.7, slow.ShutOffHead, 0.05);
        Assert.Equal(194.3, slow.LargestFlow, 0.05);
        Assert.Equal(2.01, slow.RatedPower!.Value, 0.005);
    }

    [Fact]
    public void Wire_to_water_cost_of_Crane_example_7_34()
    {
        // Crane TP-410, ex. 7-34: 700 gpm against 428 ft, 62.364 lb/ft3, efficiencies 0.707, 0.95, 0.96, 8000 h a year at
        // 0.12 a kilowatt hour: 83 970 a year.
        const double Flow = 700 * 6.30902e-5;
        const double Head = 428 * 0.3048;
        var curve = PumpCurve.Read([new(0, 2 * Head), new(Flow, Head), new(2 * Flow, 0)]).Curve!;
        var hydraulic = curve.HydraulicPower(Flow, 62.364 * 157.0874);
        var cost = hydraulic / (0.707 * 0.95 * 0.96) / 1000 * 8000 * 0.12;
        Assert.Equal(83_970, cost, 0.002 * 83_970);
    }

    [Fact]
    public void Orifice_against_a_polynomial_curve_of_Schaschke()
    {
        // Same source: H = 12 - 70 Q - 4300 Q², d 100 mm, 2 m/s, 12 m recirculating, Fanning 0.005: orifice K 44.86.
        // The transcription does not list it, but its numbers close only with one velocity head lost back in the tank.
        var points = Enumerable
            .Range(0, 39)
            .Select(i => i * 0.001)
            .Select(q => new PumpPoint(q, 12 - 70 * q - 4300 * q * q));
        var curve = PumpCurve.Read(points).Curve!;
        var velocityHead = LocalLoss.Head(1, 2);
        var k = curve.Head(2 * Math.PI / 4 * 0.01) / velocityHead - 4 * 0.005 * 12 / 0.1 - LocalLoss.Exit;
        // The book's g is 9.81.
        Assert.Equal(44.86, k, 0.001 * 44.86);
    }

    [Fact]
    public void Hydraulic_power_of_ten_litres_a_minute_at_two_metres() =>
        // P [W] = 9.79 Q [L/s] H [m] at 20 °C: 3.26 W.
        Assert.Equal(
            3.26,
            PumpCurve
                .FromShutOffAndOpenFlow(8.0 / 3, 20e-3 / 60)
                .HydraulicPower(10e-3 / 60, WaterProperties.SpecificWeight(20)),
            0.005
        );

    private static PumpCurve Curve() =>
        PumpCurve.Read(s_heads.Select((h, i) => new PumpPoint(2 * i * Litre, h))).Curve!;

    private static (double Flow, double Head) DutyPoint(PumpCurve curve)
    {
        var bore = new Pipe(0, 0.050, 0);
        var k = 4 * 0.005 * 100 / 0.050 + 1;
        var (low, high) = (0.0, curve.LargestFlow);
        for (var i = 0; i < 80; i++)
        {
            var q = (low + high) / 2;
            (low, high) = curve.Head(q) > 10 + LocalLoss.Head(k, bore.Velocity(q)) ? (q, high) : (low, q);
        }

        return (low, curve.Head(low));
    }
}
