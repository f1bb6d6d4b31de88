using System.Globalization;
using Dripwright.Engine.Parts;

namespace Dripwright.Reference.Tests.Parts;

/// <summary>Published one-dimensional cutting-stock jobs with the least number of stocks.</summary>
public sealed class PublishedCuttingStock
{
    public sealed record Instance(string Name, int Stock, string Pieces, int Least, string Source)
    {
        public override string ToString() => Name;
    }

    /// <summary>Lengths in millimetres; only their proportion matters.</summary>
    public static TheoryData<Instance> Instances =>
        [
            new Instance(
                "Chvatal rolls",
                100,
                "45x97 36x610 31x395 14x211",
                453,
                "V. Chvátal, Linear Programming, 1983, p. 195 (data as in public optimisation notebooks)"
            ),
            new Instance(
                "Paper machine",
                5600,
                "1380x22 1520x25 1560x12 1710x14 1820x18 1880x18 1930x20 2000x10 2050x12 2100x14 2140x16 2150x18 2200x20",
                73,
                "Wikipedia, Cutting stock problem, the example with 308 patterns and 0.401 % waste"
            ),
            new Instance(
                "Woodco boards",
                17,
                "3x25 5x20 9x15",
                19,
                "W. L. Winston, Operations Research, the Woodco example (data and optimum from memory)"
            ),
            new Instance("Ten-unit rolls", 10, "7x2 5x2 3x4", 4, "MiniZinc test suite, cutstock.mzn"),
            new Instance(
                "t60_00",
                1000,
                "495 474 473 472 466 450 445 444 439 430 419 414 410 395 372 370 366 366 366 363 361 357 355 351 350 "
                    + "350 347 320 315 307 303 299 298 298 292 288 287 283 275 275 274 273 273 272 272 271 269 269 268 "
                    + "263 262 261 259 258 255 254 252 252 252 251",
                20,
                "E. Falkenauer, Journal of Heuristics 2, 1996; OR-Library, binpack5, t60_00"
            ),
            new Instance(
                "u120_00",
                150,
                "42 69 67 57 93 90 38 36 45 42 33 79 27 57 44 84 86 92 46 38 85 33 82 73 49 70 59 23 57 72 74 69 33 42 "
                    + "28 46 30 64 29 74 41 49 55 98 80 32 25 38 82 30 35 39 57 84 62 50 55 27 30 36 20 78 47 26 45 41 58 "
                    + "98 91 96 73 84 37 93 91 43 73 85 81 79 71 80 76 83 41 78 70 23 42 87 43 84 60 55 49 78 73 62 36 44 "
                    + "94 69 32 96 70 84 58 78 25 80 58 66 83 24 98 60 42 43 43 39",
                48,
                "E. Falkenauer, Journal of Heuristics 2, 1996; OR-Library, binpack1, u120_00"
            ),
        ];

    [Theory]
    [MemberData(nameof(Instances))]
    public void The_published_least_number_of_stocks_is_found_and_proven(Instance instance)
    {
        var plan = CutPlanner.Plan(Job(instance)).Plan!;

        Assert.Equal(instance.Least, plan.Stocks.Count);
        Assert.True(plan.ProvenOptimal);
        Assert.Equal(instance.Least * instance.Stock / 1000.0, plan.LowerBound, 9);
    }

    [Fact]
    public void The_paper_machine_wastes_what_is_published()
    {
        // Wikipedia, Cutting stock problem: 73 master rolls, waste 0.401 %.
        var plan = CutPlanner.Plan(Job(Instances.First(row => row.Data.Name == "Paper machine").Data)).Plan!;

        Assert.Equal(0.00401, plan.WasteShare, 5);
    }

    private static CutJob Job(Instance instance) =>
        new()
        {
            Material = instance.Name,
            Offers = [new(instance.Stock / 1000.0)],
            MinimumUsableLeftover = instance.Stock / 1000.0,
            Wanted =
            [
                .. instance
                    .Pieces.Split(' ')
                    .Select(text => text.Split('x'))
                    .Select(
                        (parts, i) =>
                            new WantedPiece(
                                "P" + i.ToString(CultureInfo.InvariantCulture),
                                int.Parse(parts[0], CultureInfo.InvariantCulture) / 1000.0,
                                parts.Length > 1 ? int.Parse(parts[1], CultureInfo.InvariantCulture) : 1
                            )
                    ),
            ],
        };
}
