using Dripwright.Engine;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Extending;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;
using Dripwright.Workbench.Failing;
using Dripwright.Workbench.Hosting;

namespace Dripwright.Workbench.Work;

/// <summary>What the pages of a garden have computed in the background.</summary>
/// <remarks>A page never gives up because the line is full: it goes on waiting, and comes again.</remarks>
internal sealed class PageWork(WorkHost host, GardenOfRequest here)
{
    /// <summary>Reads a rig file and plans it, but for the strength of its stands and the draws.</summary>
    /// <exception cref="OperationCanceledException">A stop was asked for, or it took too long.</exception>
    public Task<Draught> Draw(
        string text,
        string name,
        PartsCatalogue catalogue,
        IReadOnlyList<OnHand> onHand,
        UnitSystem? units,
        CancellationToken stop
    ) => In(host.Limits.Typing, token => Of(text, name, catalogue, onHand, units, token), stop);

    /// <summary>A plan with the strength of its stands, and with so many draws.</summary>
    /// <exception cref="OperationCanceledException">A stop was asked for, or it took too long.</exception>
    public Task<Plan> Complete(Plan plan, int draws, CancellationToken stop) =>
        Run(token => Planner.Completed(plan, new PlanOptions { Draws = draws, Stop = token }), stop);

    /// <summary>What must be bought to get from one rig to another. Joints are made for what their stand asks of them, so both are worked out first.</summary>
    /// <exception cref="OperationCanceledException">A stop was asked for, or it took too long.</exception>
    public async Task<Expansion> Expand(Plan from, Plan to, CancellationToken stop)
    {
        var before = Complete(from, 0, stop);
        var after = Complete(to, 0, stop);
        var (old, wanted) = (await before.ConfigureAwait(false), await after.ConfigureAwait(false));
        return await Run(_ => Expansion.Of(old, wanted), stop).ConfigureAwait(false);
    }

    /// <summary>Anything else that takes long.</summary>
    public Task<T> Run<T>(Func<CancellationToken, T> make, CancellationToken stop) => In(host.Limits.Pages, make, stop);

    /// <summary>A search for rigs.</summary>
    public Task<T> Search<T>(Func<CancellationToken, T> make, CancellationToken stop) =>
        In(host.Limits.PageSearches, make, stop);

    private async Task<T> In<T>(WorkLane lane, Func<CancellationToken, T> make, CancellationToken stop)
    {
        while (true)
        {
            try
            {
                return await host.Run(lane, here.Id, make, stop).ConfigureAwait(false);
            }
            catch (LineFull full)
            {
                await Task.Delay(full.RetryAfter, stop).ConfigureAwait(false);
            }
        }
    }

    private static Draught Of(
        string text,
        string name,
        PartsCatalogue catalogue,
        IReadOnlyList<OnHand> onHand,
        UnitSystem? units,
        CancellationToken stop
    )
    {
        stop.ThrowIfCancellationRequested();
        var reading = RigReader.Read(text, name, catalogue);
        if (reading.Resolved is not { } rig)
        {
            return new Draught(reading, null);
        }

        // The units are those of whoever looks; what is computed does not depend on them.
        var shown = rig.In(units ?? rig.Rig.Units).WithOnHand(onHand);
        var options = new PlanOptions
        {
            Draws = 0,
            Strength = false,
            Stop = stop,
        };
        return new Draught(reading, Planner.Of(shown, reading.Assumed, options));
    }
}

/// <summary>What came of reading and planning a text.</summary>
/// <param name="Reading">Rig, faults and what was assumed.</param>
/// <param name="Plan">The plan, without the strength of its stands and without draws; null where there is any fault.</param>
public sealed record Draught(RigReading Reading, Plan? Plan);
