using CsCheck;
using Dripwright.Engine.Water;

namespace Dripwright.Engine.Tests.Water;

/// <summary>
/// Networks no grower would build: bores of a millimetre beside a hand's breadth, booster pumps anywhere, emitters that pass
/// a bucket a second. A valid network must be solved all the same.
/// </summary>
public class ExtremeNetworkTests
{
    [Fact]
    public void Whatever_is_thrown_together_is_solved() =>
        Gen.Int[0, 100_000_000]
            .Holds(
                seed =>
                {
                    var solution = new NetworkSolver(Any(new Random(seed))).Solve();
                    Assert.True(solution.Converged, solution.Reason);
                    Assert.True(solution.MassResidual < 1e-9);
                    Assert.True(solution.EnergyResidual < 1e-6);
                },
                iter: 300
            );

    internal static Network Any(Random random)
    {
        double Between(double low, double high) => Math.Exp(Math.Log(low) + random.NextDouble() * Math.Log(high / low));
        Pipe AnyPipe()
        {
            var bore = Between(0.001, 0.1);
            var length = random.Next(6) == 0 ? 0 : Between(0.001, 200);
            return new Pipe(length, bore, random.Next(2) * 0.049 * bore, random.Next(3) * Between(0.01, 1000));
        }

        var junctions = 1 + random.Next(60);
        var tanks = 1 + random.Next(3);
        var network = new Network(Between(0.4e-6, 1.8e-6));
        for (var i = 0; i < junctions; i++)
        {
            network.AddJunction(3 * random.NextDouble());
        }

        for (var i = 1; i < junctions; i++)
        {
            network.AddPipe(random.Next(2) == 0 ? i - 1 : random.Next(i), i, AnyPipe());
        }

        for (var i = 0; i < tanks; i++)
        {
            var tank = network.AddFixedHead(4 * random.NextDouble() - 1);
            var at = random.Next(junctions);
            var setting = new PumpSetting(random.Next(4) > 0, random.Next(2) == 0, 0.015, 5);
            _ =
                random.Next(2) == 0
                    ? network.AddPipe(tank, at, AnyPipe())
                    : network.AddPump(tank, at, AnyCurve(), setting);
        }

        for (var i = 0; i < junctions / 3; i++)
        {
            var a = random.Next(junctions);
            var b = random.Next(network.NodeCount);
            if (a == b)
            {
                continue;
            }

            var booster = new PumpSetting(true, random.Next(2) == 0, 0.02, 5);
            _ = random.Next(4) switch
            {
                0 => network.AddValve(a, b, Between(0.002, 0.05), Between(0.01, 1e6), random.Next(3) > 0),
                1 => network.AddCheckValve(a, b, 0.02, 2),
                2 => network.AddPump(a, b, AnyCurve(), booster),
                _ => network.AddPipe(a, b, AnyPipe()),
            };
        }

        for (var i = 0; i < junctions; i++)
        {
            for (var left = random.Next(3); left > 0; left--)
            {
                var law =
                    random.Next(2) == 0
                        ? EmitterLaw.PressureCompensating(
                            Between(1e-8, 1e-4),
                            10,
                            Between(0.01, 0.1),
                            Between(0.1, 9),
                            40
                        )
                        : EmitterLaw.FromRating(Between(1e-8, 1e-3), 10, Between(0.05, 1));
                Pipe? tube = random.Next(2) == 0 ? new Pipe(random.NextDouble(), Between(0.0005, 0.006), 0, 3) : null;
                var multiplier = random.Next(8) == 0 ? 0 : 1;
                network.AddEmitter(
                    i,
                    new Emitter(law, 3 * random.NextDouble(), i, 1 + random.Next(3), multiplier, tube)
                );
            }
        }

        return network;

        PumpCurve AnyCurve()
        {
            // With flat stretches, and often ending well above zero head.
            var points = new List<PumpPoint>();
            var (flow, head) = (0.0, Between(0.5, 60));
            for (var i = 0; i < 6; i++)
            {
                points.Add(new PumpPoint(flow, head));
                flow += Between(1e-5, 1e-3);
                head *= random.Next(4) == 0 ? 1 : random.NextDouble();
            }

            return PumpCurve.Read(points).Curve!;
        }
    }
}
