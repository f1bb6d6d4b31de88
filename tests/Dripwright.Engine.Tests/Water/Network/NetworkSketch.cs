using Dripwright.Engine.Water;

namespace Dripwright.Engine.Tests.Water;

/// <summary>A network on paper, which tests can alter and renumber before it is built.</summary>
internal sealed record NetworkSketch
{
    public const double Viscosity = 1.0e-6;

    /// <summary>Elevations of the junctions; node -1 is the reservoir's surface.</summary>
    public required double[] Elevations { get; init; }

    public required (int From, int To, Pipe Pipe)[] Pipes { get; init; }

    public required (int Node, Emitter Emitter)[] Emitters { get; init; }

    public double Surface { get; init; }

    /// <summary>Null: gravity feed through a plain pipe.</summary>
    public PumpCurve? Pump { get; init; }

    public bool PumpHasCheckValve { get; init; }

    public bool PumpRuns { get; init; } = true;

    /// <summary>Builds with junction i as the order[i]-th; the reservoir comes first or last.</summary>
    public Network Build(int[]? order = null, bool reservoirLast = false)
    {
        var network = new Network(Viscosity);
        var n = Elevations.Length;
        order ??= Enumerable.Range(0, n).ToArray();
        var ids = new int[n];
        var reservoir = reservoirLast ? -1 : network.AddFixedHead(Surface);
        foreach (var at in Enumerable.Range(0, n).OrderBy(i => order[i]))
        {
            ids[at] = network.AddJunction(Elevations[at]);
        }

        reservoir = reservoirLast ? network.AddFixedHead(Surface) : reservoir;
        if (Pump is null)
        {
            network.AddPipe(reservoir, ids[0], new Pipe(1, 0.02, 1.5e-6, 1.5));
        }
        else
        {
            network.AddPump(reservoir, ids[0], Pump, new PumpSetting(PumpRuns, PumpHasCheckValve, 0.02, 10));
        }

        foreach (var (from, to, pipe) in Pipes)
        {
            network.AddPipe(ids[from], ids[to], pipe);
        }

        foreach (var (node, emitter) in Emitters)
        {
            network.AddEmitter(ids[node], emitter);
        }

        return network;
    }

    /// <summary>A random network from a seed: a tree of junctions, some extra pipes that close loops, mixed emitters.</summary>
    public static NetworkSketch Random(int seed, int junctions, int loops)
    {
        var random = new Random(seed);
        double Between(double low, double high) => low + random.NextDouble() * (high - low);
        var elevations = Enumerable.Range(0, junctions).Select(_ => Between(0, 1.5)).ToArray();
        Pipe AnyPipe() =>
            new(Between(0.05, 8), Between(0.004, 0.04), Between(0, 2e-5), random.Next(3) == 0 ? Between(0, 10) : 0);
        var pipes = new List<(int, int, Pipe)>();
        for (var i = 1; i < junctions; i++)
        {
            var parent = random.Next(2) == 0 ? i - 1 : random.Next(i);
            pipes.Add(random.Next(2) == 0 ? (parent, i, AnyPipe()) : (i, parent, AnyPipe()));
        }

        for (var i = 0; i < loops && junctions > 1; i++)
        {
            var a = random.Next(junctions);
            var b = (a + 1 + random.Next(junctions - 1)) % junctions;
            pipes.Add((a, b, AnyPipe()));
        }

        var emitters = new List<(int, Emitter)>();
        for (var i = 0; i < junctions; i++)
        {
            for (var e = random.Next(3); e > 0; e--)
            {
                emitters.Add((i, AnyEmitter(random, elevations[i] + Between(0, 0.4), emitters.Count)));
            }
        }

        return new NetworkSketch
        {
            Elevations = elevations,
            Pipes = [.. pipes],
            Emitters = [.. emitters],
            Surface = Between(-0.5, 2),
            Pump = random.Next(4) == 0 ? null : PumpCurve.FromShutOffAndOpenFlow(Between(0.5, 12), Between(1e-4, 1e-3)),
            PumpHasCheckValve = random.Next(2) == 0,
            PumpRuns = random.Next(5) > 0,
        };
    }

    private static Emitter AnyEmitter(Random random, double outlet, int tag)
    {
        var flow = Math.Exp(random.NextDouble() * 4) * 1e-3 / 3600;
        var law = random.Next(4) switch
        {
            0 => EmitterLaw.FromRating(flow, 10, 1),
            1 => EmitterLaw.PressureCompensating(flow, 10, 0.05, 5, 35),
            2 => EmitterLaw.FromRating(flow, 10, 0.72),
            _ => EmitterLaw.FromRating(flow, 10, 0.5),
        };
        Pipe? branch =
            random.Next(2) == 0 ? new Pipe(random.NextDouble(), 0.002 + 0.002 * random.NextDouble(), 0, 3) : null;
        var multiplier = random.Next(10) == 0 ? 0 : 0.5 + random.NextDouble();
        return new Emitter(law, outlet, tag, 1 + random.Next(3), multiplier, branch);
    }
}
