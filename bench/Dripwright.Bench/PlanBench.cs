using BenchmarkDotNet.Attributes;
using Dripwright.Engine;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Rigs;

namespace Dripwright.Bench;

/// <summary>One whole plan without the draws: how its cost grows with the rig.</summary>
[SimpleJob(warmupCount: 15, iterationCount: 9)]
[MemoryDiagnoser]
public class PlanBench
{
    private static readonly PlanOptions s_noDraws = new() { Draws = 0 };
    private Rig _rig = null!;

    /// <summary>Pots in each row, and rows.</summary>
    [Params("10x1", "100x1", "50x20", "100x50", "5000x1")]
    public string Size { get; set; } = "";

    [GlobalSetup]
    public void Read()
    {
        var size = Size.Split('x');
        var json = $$"""
            { "rows": [ { "pots": {{size[0]}}, "count": {{size[1]}} } ],
              "feed": { "emitter": "drip-turbulent-0.5gph", "header": { "pipe": "pvc40-2" } },
              "pump": { "shutOffHead": "60 ft", "openFlow": "20000 gph" } }
            """;
        _rig = RigReader.Read(json, "bench", PartsCatalogue.Default).Rig!;
    }

    [Benchmark]
    public int Plan() => Planner.Of(_rig, [], PartsCatalogue.Default, s_noDraws).Findings.Count;
}
