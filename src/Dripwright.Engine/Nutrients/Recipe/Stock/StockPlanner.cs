using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Chemistry.Formulas;

namespace Dripwright.Engine.Nutrients.Recipe;

/// <summary>Shares a feed's fertilisers between two cans of concentrate so that nothing falls out.</summary>
/// <remarks>
/// Calcium and chelates stand in A, sulfate and phosphate in B. What may stand in either is tried in both, and halved, and stands
/// where the fuller can is emptiest. Stock g/L = feed g/L times parts of feed. Method page: docs/methods/recipe.md
/// </remarks>
public static class StockPlanner
{
    // With more free salts than this only whole placements of the heaviest are tried.
    private const int MostShared = 5;
    private static readonly double[] s_shares = [0, 0.5, 1];

    /// <summary>Plans the concentrates.</summary>
    /// <param name="job">What is asked.</param>
    /// <returns>The cans with all that is to be said of them, whether or not they keep.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than 2 or more than 1000 parts, no feed, or a temperature outside 0 to 60 °C.</exception>
    public static StockPlan Plan(StockJob job)
    {
        ArgumentNullException.ThrowIfNull(job);
        Guard.Between(job.PartsOfFeed, 2, 1000);
        Guard.Positive(job.Feed);
        Guard.Between(job.Temperature, 273.15, 333.15);
        var cans = Cans(job);
        return new StockPlan(
            job,
            cans,
            MostParts(job, cans),
            100 / job.PartsOfFeed,
            1 / job.PartsOfFeed,
            [.. StockFindings.Of(job, cans).OrderBy(finding => finding.Level)]
        );
    }

    private static List<StockCan> Cans(StockJob job)
    {
        var lines = job.Recipe.Lines;
        if (!job.TwoCans)
        {
            return [Can(job, "1", lines.Select(line => (line, 1.0)))];
        }
        List<(RecipeLine Line, double InA)> placed =
        [
            .. lines
                .Where(line => PartOf(line.Salt) != StockPart.Either)
                .Select(line => (line, PartOf(line.Salt) is StockPart.A ? 1.0 : 0.0)),
        ];
        var free = lines
            .Where(line => PartOf(line.Salt) == StockPart.Either)
            .OrderByDescending(line => line.Concentration)
            .ThenBy(line => line.Salt.Key, StringComparer.Ordinal)
            .ToList();
        // Traces that may stand in either go with the other traces, in B; acid too, away from the chelates.
        placed.AddRange(free.Skip(MostShared).Select(line => (line, 0.0)));
        var moved = free.Take(MostShared).Where(line => line.Salt.Kind != SaltKind.Acid && !Trace(line.Salt)).ToList();
        placed.AddRange(free.Take(MostShared).Except(moved).Select(line => (line, 0.0)));
        double[] best = [];
        var least = double.PositiveInfinity;
        foreach (var shares in Shares(moved.Count))
        {
            // Halving costs a weighing: it must gain something.
            var fullness = Both(shares, false).Max(can => can.Fullness) + 0.02 * shares.Count(share => share == 0.5);
            if (fullness < least - 1e-9)
            {
                (best, least) = (shares, fullness);
            }
        }
        return Both(best, true);

        List<StockCan> Both(double[] shares, bool judged)
        {
            List<(RecipeLine Line, double InA)> all = [.. placed, .. moved.Zip(shares)];
            return
            [
                Can(job, "A", all.Select(line => (line.Line, line.InA)), judged),
                Can(job, "B", all.Select(line => (line.Line, 1 - line.InA)), judged),
            ];
        }
    }

    private static IEnumerable<double[]> Shares(int count)
    {
        var whole = (int)Math.Pow(s_shares.Length, count);
        for (var i = 0; i < whole; i++)
        {
            var shares = new double[count];
            for (var (j, rest) = (0, i); j < count; j++, rest /= s_shares.Length)
            {
                shares[j] = s_shares[rest % s_shares.Length];
            }
            yield return shares;
        }
    }

    private static StockPart PartOf(Salt salt) => salt.Part;

    private static bool Trace(Salt salt) =>
        Composition.Constituents.Any(key => Charges.IsTrace(key) && salt.Brings[key] > 0);

    private static StockCan Can(
        StockJob job,
        string name,
        IEnumerable<(RecipeLine Line, double Share)> lines,
        bool judged = true
    )
    {
        var volume = job.Feed / job.PartsOfFeed;
        var scale = job.Recipe.Job.Scale;
        var made = new List<CanLine>();
        var contents = job.Recipe.Job.Water.Composition;
        foreach (var (line, share) in lines.OrderBy(line => line.Line.Salt.Key, StringComparer.Ordinal))
        {
            if (share <= 0)
            {
                continue;
            }
            var concentration = line.Concentration * share * job.PartsOfFeed;
            var mass = concentration * volume;
            contents += line.Salt.Brings * concentration;
            if (line.Salt.Density is { } density)
            {
                var measured = RecipePlanner.Rounded(mass / density, scale.MeasureStep);
                made.Add(new CanLine(line.Salt, concentration, mass, measured * density, measured));
            }
            else
            {
                made.Add(new CanLine(line.Salt, concentration, mass, RecipePlanner.Rounded(mass, scale.Step), null));
            }
        }
        var saturations =
            made.Count > 0 ? CanContents.Saturations(contents, made.Select(line => line.Salt), job.Temperature) : [];
        var molal = contents * (1000 / CanContents.Water(contents));
        return new StockCan(
            name,
            volume,
            made,
            contents,
            saturations,
            judged && made.Count > 0 ? IonProducts.Of(molal, job.PH) : []
        );
    }

    private static double? MostParts(StockJob job, IReadOnlyList<StockCan> cans)
    {
        const double Least = 2;
        const double Most = 1000;
        if (cans.All(can => can.Keeps) && job.PartsOfFeed >= Most)
        {
            return Most;
        }
        bool Keeps(double parts) =>
            cans.All(can =>
                Can(
                    job with
                    {
                        PartsOfFeed = parts,
                    },
                    can.Name,
                    can.Lines.Select(line =>
                    {
                        var whole = job.Recipe.Lines.First(other => other.Salt.Key == line.Salt.Key);
                        return (whole, line.Concentration / (whole.Concentration * job.PartsOfFeed));
                    })
                ).Keeps
            );
        if (!Keeps(Least))
        {
            return null;
        }
        var (low, high) = (Least, Most);
        // Whole parts are what injectors have; ten halvings find them.
        while (high - low > 0.5)
        {
            var middle = (low + high) / 2;
            (low, high) = Keeps(middle) ? (middle, high) : (low, middle);
        }
        return Math.Floor(low);
    }
}
