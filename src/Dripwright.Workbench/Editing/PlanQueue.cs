using Dripwright.Engine;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Rigs;

namespace Dripwright.Workbench.Editing;

/// <summary>Plans in the background, a few at a time, so that one large rig does not keep everyone else waiting.</summary>
internal sealed class PlanQueue(int most) : IDisposable
{
    /// <summary>A plan that takes longer is given up; five thousand pots take a few seconds.</summary>
    private static readonly TimeSpan s_longest = TimeSpan.FromSeconds(60);

    private readonly SemaphoreSlim _turns = new(most, most);

    /// <summary>Reads a rig file and plans it.</summary>
    /// <exception cref="OperationCanceledException">A stop was asked for, or it took too long.</exception>
    public async Task<Draught> Draw(
        string text,
        string name,
        PartsCatalogue catalogue,
        IReadOnlyList<OnHand> shelf,
        UnitSystem? units,
        int draws,
        CancellationToken stop
    )
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(stop);
        limit.CancelAfter(s_longest);
        await _turns.WaitAsync(limit.Token).ConfigureAwait(false);
        var work = Task.Run(() => Of(text, name, catalogue, shelf, units, draws, limit.Token), limit.Token);
        // The turn is given back when the work has really ended, also where nobody waits for it any more.
        _ = work.ContinueWith(_ => _turns.Release(), TaskScheduler.Default);
        return await work.WaitAsync(limit.Token).ConfigureAwait(false);
    }

    /// <summary>Anything else that takes long.</summary>
    public async Task<T> Run<T>(Func<CancellationToken, T> make, CancellationToken stop)
    {
        await _turns.WaitAsync(stop).ConfigureAwait(false);
        var work = Task.Run(() => make(stop), stop);
        _ = work.ContinueWith(_ => _turns.Release(), TaskScheduler.Default);
        return await work.WaitAsync(stop).ConfigureAwait(false);
    }

    public void Dispose() => _turns.Dispose();

    private static Draught Of(
        string text,
        string name,
        PartsCatalogue catalogue,
        IReadOnlyList<OnHand> shelf,
        UnitSystem? units,
        int draws,
        CancellationToken stop
    )
    {
        var reading = RigReader.Read(text, name, catalogue);
        stop.ThrowIfCancellationRequested();
        if (reading.Rig is not { } rig)
        {
            return new Draught(reading, null, null);
        }

        try
        {
            // The units are those of whoever looks; what is computed does not depend on them.
            var shown = rig with
            {
                Units = units ?? rig.Units,
                OnHand = [.. rig.OnHand, .. shelf],
            };
            var options = new PlanOptions { Draws = draws };
            return new Draught(
                reading,
                Planner.Of(shown, reading.Assumed, catalogue, options, new StopAsked(stop)),
                null
            );
        }
        catch (KeyNotFoundException lacking)
        {
            // A rig can name a pipe for which the catalogue, with the user's own laid over, has no elbow or tee.
            return new Draught(reading, null, lacking.Message);
        }
    }

    // The planner knows no stop, but it tells of each stage.
    private sealed class StopAsked(CancellationToken stop) : IProgress<PlanProgress>
    {
        public void Report(PlanProgress value) => stop.ThrowIfCancellationRequested();
    }
}

/// <summary>What came of reading and planning a text.</summary>
/// <param name="Reading">Rig, faults and what was assumed.</param>
/// <param name="Plan">The plan; null where there is any fault.</param>
/// <param name="Lacking">Why a sound rig cannot be planned; null where it can.</param>
public sealed record Draught(RigReading Reading, Plan? Plan, string? Lacking);
