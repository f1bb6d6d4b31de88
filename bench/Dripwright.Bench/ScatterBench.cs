using BenchmarkDotNet.Attributes;
using Dripwright.Engine.Water;

namespace Dripwright.Bench;

/// <summary>How long the draws take: a ten-pot row with 10,000 draws (goal 250 ms on two cores), a thousand pots with 1,000.</summary>
[ShortRunJob]
[MemoryDiagnoser]
public class ScatterBench
{
    private ScatterModel _tenPots = null!;
    private ScatterModel _thousandPots = null!;

    [Params(1, 2)]
    public int Threads { get; set; }

    [GlobalSetup]
    public void SetUp()
    {
        _tenPots = Row(10) with { Draws = 10_000, Threads = Threads };
        _thousandPots = Row(1_000) with { Draws = 1_000, Threads = Threads };
    }

    [Benchmark]
    public ScatterResult TenPotsTenThousandDraws() => Scatter.Run(_tenPots);

    [Benchmark]
    public ScatterResult ThousandPotsThousandDraws() => Scatter.Run(_thousandPots);

    private static ScatterModel Row(int pots) =>
        new()
        {
            Emitters = [.. Enumerable.Range(0, 2 * pots).Select(i => new ScatterEmitter(1e-6, i / 2, 0.5, 0.07))],
            Clogging = new Clogging(0.05, 0.2, 0.9),
        };
}

/// <summary>How the drain's water surface grows with the number of pots.</summary>
[ShortRunJob]
public class DrainProfileBench
{
    private DrainRun _run = null!;

    [Params(10, 100, 1_000, 5_000)]
    public int Pots { get; set; }

    [GlobalSetup]
    public void SetUp() =>
        _run = new DrainRun
        {
            Diameter = 0.0525,
            Length = 0.3 * (Pots + 1),
            Slope = 0.01,
            // The same total flow whatever the count, so that the work differs by the count alone.
            Inflows = [.. Enumerable.Range(1, Pots).Select(i => new DrainInflow(0.3 * i, 3e-4 / Pots))],
        };

    [Benchmark]
    public DrainProfile Profile() => DrainProfile.Of(_run);
}
