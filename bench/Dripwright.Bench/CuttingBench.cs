using BenchmarkDotNet.Attributes;
using Dripwright.Engine.Parts;
using Sat = Google.OrTools.Sat;

namespace Dripwright.Bench;

/// <summary>The cutting planner beside the general optimiser alone, which lists all patterns and solves them as whole
/// numbers with one worker.</summary>
[ShortRunJob]
[MemoryDiagnoser]
public class CuttingBench
{
    private CutJob _job = new() { Material = "" };

    /// <summary>Job under test.</summary>
    [Params("rolls", "paper", "t60_00", "row")]
    public string Job { get; set; } = "row";

    /// <summary>Chooses the job.</summary>
    [GlobalSetup]
    public void Choose() =>
        _job = Job switch
        {
            "rolls" => Of(0.1, "45x97 36x610 31x395 14x211"),
            "paper" => Of(
                5.6,
                "1380x22 1520x25 1560x12 1710x14 1820x18 1880x18 1930x20 2000x10 2050x12 2100x14 2140x16 2150x18 2200x20"
            ),
            "t60_00" => Of(
                1.0,
                "495x1 474x1 473x1 472x1 466x1 450x1 445x1 444x1 439x1 430x1 419x1 414x1 410x1 395x1 372x1 370x1 366x3 "
                    + "363x1 361x1 357x1 355x1 351x1 350x2 347x1 320x1 315x1 307x1 303x1 299x1 298x2 292x1 288x1 287x1 "
                    + "283x1 275x2 274x1 273x2 272x2 271x1 269x2 268x1 263x1 262x1 261x1 259x1 258x1 255x1 254x1 252x3 "
                    + "251x1"
            ),
            // Ten pots at one foot: drain and feed line, stubs, legs and cross pieces of a stand.
            _ => Of(3.048, "2950x1 1400x2 760x8 610x6 305x11 152x10 95x20") with { Kerf = 0.002, FirstEndTrim = 0.005 },
        };

    /// <summary>Ours: filling and bounds first, the solver only for what stays open.</summary>
    [Benchmark(Baseline = true)]
    public int Planner() => CutPlanner.Plan(_job).Plan!.Stocks.Count;

    /// <summary>The constraint solver alone on all full patterns, with the same limit of deterministic time (t60_00 runs into it).</summary>
    [Benchmark]
    public int SolverAlone()
    {
        var model = CutModel.From(_job);
        var patterns = new List<int[]>();
        List(model, new int[model.Sizes.Length], 0, model.Kinds[0].Capacity, patterns);
        var program = new Sat.CpModel();
        var most = model.Demand.Sum();
        var numbers = patterns.ConvertAll(_ => program.NewIntVar(0, most, ""));
        for (var i = 0; i < model.Sizes.Length; i++)
        {
            program.Add(Sat.LinearExpr.WeightedSum(numbers, patterns.ConvertAll(p => p[i])) >= model.Demand[i]);
        }

        program.Minimize(Sat.LinearExpr.Sum(numbers));
        using var solver = new Sat.CpSolver
        {
            StringParameters = "num_workers:1,random_seed:1,max_deterministic_time:0.5",
        };
        solver.Solve(program);
        return (int)solver.ObjectiveValue;
    }

    private static void List(CutModel model, int[] now, int i, long room, List<int[]> patterns)
    {
        if (i == now.Length)
        {
            if (!model.Sizes.Where((size, s) => size <= room && now[s] < model.Demand[s]).Any())
            {
                patterns.Add((int[])now.Clone());
            }

            return;
        }

        for (var n = (int)Math.Min(model.Demand[i], room / model.Sizes[i]); n >= 0; n--)
        {
            now[i] = n;
            List(model, now, i + 1, room - n * model.Sizes[i], patterns);
        }

        now[i] = 0;
    }

    private static CutJob Of(double stock, string pieces) =>
        new()
        {
            Material = "pipe",
            Offers = [new(stock)],
            Wanted =
            [
                .. pieces
                    .Split(' ')
                    .Select(text => text.Split('x'))
                    .Select(parts => new WantedPiece(
                        parts[0],
                        int.Parse(parts[0], System.Globalization.CultureInfo.InvariantCulture) / 1000.0,
                        int.Parse(parts[1], System.Globalization.CultureInfo.InvariantCulture)
                    )),
            ],
        };
}
