using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using Dripwright.Engine.Parts;

namespace Dripwright.Engine.Tests.Parts;

/// <summary>The same jobs written as a pattern program and solved by another solver, the cbc command.</summary>
public sealed class CutPlannerAgainstCbc
{
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(8)]
    [InlineData(9)]
    [InlineData(10)]
    [InlineData(11)]
    [InlineData(12)]
    public void A_random_job_buys_as_little_as_cbc_finds(int seed)
    {
        Assert.SkipUnless(HasCbc(), "The cbc command (Debian package coinor-cbc) is not installed.");
        var job = RandomJob(new Random(seed));

        var plan = CutPlanner.Plan(job).Plan!;

        Assert.True(plan.ProvenOptimal);
        Assert.Equal(LeastByCbc(job), plan.Purchase, 6);
    }

    private static CutJob RandomJob(Random random)
    {
        StockOffer[][] offers =
        [
            [new(3)],
            [new(3), new(4)],
            [new(3, 9.5m), new(6, 17.25m)],
        ];
        return new()
        {
            Material = "pipe",
            Kerf = random.Next(4) / 1000.0,
            Offers = offers[random.Next(offers.Length)],
            OnHand =
            [
                .. Enumerable
                    .Range(0, random.Next(3))
                    .Select(i => new StockOnHand("H", random.Next(500, 2500) / 1000.0, 1 + i)),
            ],
            Wanted =
            [
                .. Enumerable
                    .Range(0, random.Next(3, 7))
                    .Select(_ => new WantedPiece("P", random.Next(400, 2400) / 1000.0, random.Next(1, 12))),
            ],
        };
    }

    /// <summary>Least purchase, from all patterns of every stock as columns of an integer program in LP format.</summary>
    private static double LeastByCbc(CutJob job)
    {
        var wanted = job.Wanted.Select(piece => (Length: Millimetres(piece.Length), piece.Count)).ToArray();
        var kerf = Millimetres(job.Kerf);
        var priced = job.Offers.All(offer => offer.Price is not null);
        var stocks = job
            .Offers.Select(offer =>
                (Length: Millimetres(offer.Length), Cost: priced ? (double)offer.Price! : offer.Length, Count: -1)
            )
            .Concat(job.OnHand.Select(stock => (Length: Millimetres(stock.Length), Cost: 0.0, stock.Count)))
            .ToArray();
        var cost = new StringBuilder();
        var rows = wanted.Select(_ => new StringBuilder()).ToArray();
        var limits = stocks.Select(_ => new StringBuilder()).ToArray();
        var columns = new List<string>();
        for (var s = 0; s < stocks.Length; s++)
        {
            foreach (var pattern in Patterns([.. wanted.Select(w => w.Length + kerf)], 0, stocks[s].Length + kerf))
            {
                var name = string.Create(CultureInfo.InvariantCulture, $"x{columns.Count}");
                columns.Add(name);
                cost.Append(CultureInfo.InvariantCulture, $" + {stocks[s].Cost} {name}\n");
                limits[s].Append(CultureInfo.InvariantCulture, $" + {name}\n");
                for (var i = 0; i < pattern.Length; i++)
                {
                    if (pattern[i] > 0)
                    {
                        rows[i].Append(CultureInfo.InvariantCulture, $" + {pattern[i]} {name}\n");
                    }
                }
            }
        }

        var text = new StringBuilder("Minimize\n obj:").Append(cost).Append("Subject To\n");
        for (var i = 0; i < wanted.Length; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $" d{i}:{rows[i]} >= {wanted[i].Count}\n");
        }

        for (var s = 0; s < stocks.Length; s++)
        {
            if (stocks[s].Count >= 0 && limits[s].Length > 0)
            {
                text.Append(CultureInfo.InvariantCulture, $" s{s}:{limits[s]} <= {stocks[s].Count}\n");
            }
        }

        text.Append("Generals\n ").AppendJoin('\n', columns).Append("\nEnd\n");
        return Cbc(text.ToString());
    }

    private static IEnumerable<int[]> Patterns(int[] sizes, int i, int room)
    {
        if (i == sizes.Length)
        {
            yield return new int[sizes.Length];
            yield break;
        }

        for (var n = 0; n * sizes[i] <= room; n++)
        {
            foreach (var rest in Patterns(sizes, i + 1, room - n * sizes[i]))
            {
                rest[i] = n;
                yield return rest;
            }
        }
    }

    private static double Cbc(string program)
    {
        var path = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName());
        File.WriteAllText(path + ".lp", program);
        try
        {
            Run(path + ".lp", "ratioGap", "0", "allowableGap", "0", "solve", "solution", path + ".sol");
            // First line: "Optimal - objective value 12.00000000".
            var first = File.ReadLines(path + ".sol").First();
            Assert.StartsWith("Optimal", first, StringComparison.Ordinal);
            return double.Parse(first.Split(' ')[^1], CultureInfo.InvariantCulture);
        }
        finally
        {
            File.Delete(path + ".lp");
            File.Delete(path + ".sol");
        }
    }

    private static bool HasCbc()
    {
        try
        {
            Run("quit");
            return true;
        }
        catch (Win32Exception)
        {
            return false;
        }
    }

    private static void Run(params string[] arguments)
    {
        using var process = Process.Start(
            new ProcessStartInfo("cbc", arguments)
            {
                UseShellExecute = false,
                RedirectStandardOutput = true,
                RedirectStandardInput = true,
            }
        )!;
        process.StandardInput.Close();
        process.StandardOutput.ReadToEnd();
        process.WaitForExit();
    }

    private static int Millimetres(double metres) => (int)Math.Round(metres * 1000);
}
