using Dripwright.Engine;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Rigs;
using Dripwright.Workbench.Editing;

namespace Dripwright.Workbench.Http;

/// <summary>A rig file as it came.</summary>
/// <param name="Name">Name of the file, for its faults.</param>
/// <param name="Text">Its text.</param>
/// <param name="Revision">Revision for the title blocks; empty for a draft.</param>
/// <param name="Shelf">Parts that lie in the garden, for a rig of the garden: they are used first, as on the pages.</param>
internal sealed record RigText(string Name, string Text, string Revision = "", IReadOnlyList<OnHand>? Shelf = null);

/// <summary>Plans for whoever asks over HTTP. Large rigs have a lane of their own, so that they keep nobody else waiting.</summary>
internal sealed class Plans : IDisposable
{
    private const int LargeFrom = 600;

    private readonly KeptPlans _kept = new();
    private readonly Turns _small = new(Math.Max(2, Environment.ProcessorCount), 200, TimeSpan.FromSeconds(30));
    private readonly Turns _large = new(1, 8, TimeSpan.FromSeconds(60));
    private readonly Turns _search = new(1, 4, TimeSpan.FromSeconds(90));

    /// <summary>Reads a rig file.</summary>
    public Task<RigReading> Read(RigText file, PartsCatalogue catalogue, CancellationToken stop) =>
        _small.Run(
            _ =>
            {
                var reading = RigReader.Read(file.Text, file.Name, catalogue);
                return reading.Rig is { } rig && file.Shelf is { Count: > 0 } shelf
                    ? reading with
                    {
                        Rig = rig with { OnHand = [.. rig.OnHand, .. shelf] },
                    }
                    : reading;
            },
            stop
        );

    /// <summary>Anything else that takes as long as the plan of a small rig.</summary>
    public Task<T> Run<T>(Func<CancellationToken, T> make, CancellationToken stop) => _small.Run(make, stop);

    /// <summary>Plans a rig file and makes something of the plan.</summary>
    /// <exception cref="Refused">The file has faults.</exception>
    public async Task<T> Of<T>(
        RigText file,
        PartsCatalogue catalogue,
        bool withDraws,
        Func<Plan, T> make,
        CancellationToken stop
    )
    {
        if (_kept.Find(file, catalogue, withDraws) is { } kept)
        {
            return await TurnsFor(Pots(kept.Rig)).Run(_ => make(kept), stop);
        }

        var reading = await Read(file, catalogue, stop);
        if (reading.Rig is null)
        {
            throw new Refused(422, $"{file.Name} has faults.") { Faults = reading.Faults };
        }

        return await Of(
            reading,
            catalogue,
            withDraws,
            plan =>
            {
                _kept.Keep(file, catalogue, withDraws, plan);
                return make(plan);
            },
            stop
        );
    }

    /// <summary>Plans a rig that was read without a fault.</summary>
    public async Task<T> Of<T>(
        RigReading reading,
        PartsCatalogue catalogue,
        bool withDraws,
        Func<Plan, T> make,
        CancellationToken stop
    )
    {
        var rig = reading.Rig!;
        var pots = Pots(rig);
        var options = new PlanOptions { Draws = withDraws ? SpreadDraws.For(pots) : 0 };
        try
        {
            return await TurnsFor(pots)
                .Run(token => make(Planner.Of(rig, reading.Assumed, catalogue, options with { Stop = token })), stop);
        }
        catch (KeyNotFoundException lacking)
        {
            // A rig can name a pipe for which the catalogue, with the user's own laid over, has no elbow or tee.
            throw new Refused(422, $"It cannot be planned: {lacking.Message}");
        }
    }

    /// <summary>A search, which may take longest.</summary>
    public Task<T> Search<T>(Func<CancellationToken, T> make, CancellationToken stop) => _search.Run(make, stop);

    private Turns TurnsFor(int pots) => pots < LargeFrom ? _small : _large;

    private static int Pots(Rig rig) => Math.Max(1, rig.Rows.Sum(row => row.Pots));

    public void Dispose()
    {
        _small.Dispose();
        _large.Dispose();
        _search.Dispose();
    }
}
