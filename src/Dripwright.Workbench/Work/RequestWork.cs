using Dripwright.Engine;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Rigs;
using Dripwright.Language;
using Dripwright.Workbench.Failing;
using Dripwright.Workbench.Hosting;

namespace Dripwright.Workbench.Work;

/// <summary>What is computed for whoever asks a garden over HTTP. Large rigs have a lane of their own.</summary>
internal sealed class RequestWork(WorkHost host, KeptPlans kept, GardenOfRequest here)
{
    /// <summary>Reads a rig file.</summary>
    /// <exception cref="LineFull">Too many are waiting.</exception>
    public Task<RigReading> Read(RigSource file, PartsCatalogue catalogue, CancellationToken stop) =>
        Run(
            _ =>
            {
                var reading = RigReader.Read(file.Text, file.Name, catalogue);
                return reading with { Resolved = reading.Resolved?.WithOnHand(file.OnHand ?? []) };
            },
            stop
        );

    /// <summary>Anything else that takes as long as the plan of a small rig.</summary>
    /// <exception cref="LineFull">Too many are waiting.</exception>
    public Task<T> Run<T>(Func<CancellationToken, T> make, CancellationToken stop) =>
        host.Run(host.Limits.Requests, here.Id, make, stop);

    /// <summary>Plans a rig file and makes something of the plan.</summary>
    /// <exception cref="Refused">The file has faults.</exception>
    /// <exception cref="LineFull">Too many are waiting.</exception>
    public async Task<T> Of<T>(
        RigSource file,
        PartsCatalogue catalogue,
        bool withDraws,
        Func<Plan, T> make,
        CancellationToken stop
    )
    {
        if (kept.Find(here.Id, file, catalogue, withDraws) is { } known)
        {
            return await host.Run(LaneFor(Pots(known.Rig)), here.Id, _ => make(known), stop);
        }

        var reading = await Read(file, catalogue, stop);
        if (reading.Rig is null)
        {
            throw new Refused(422, Words.Of("http.file.faults", file.Name)) { Faults = reading.Faults };
        }

        return await Of(
            reading,
            withDraws,
            plan =>
            {
                kept.Keep(here.Id, file, catalogue, withDraws, plan);
                return make(plan);
            },
            stop
        );
    }

    /// <summary>Plans a rig that was read without a fault.</summary>
    /// <exception cref="LineFull">Too many are waiting.</exception>
    public Task<T> Of<T>(RigReading reading, bool withDraws, Func<Plan, T> make, CancellationToken stop)
    {
        var rig = reading.Resolved!;
        var pots = Pots(rig.Rig);
        var options = new PlanOptions { Draws = withDraws ? SpreadDraws.For(pots) : 0 };
        return host.Run(
            LaneFor(pots),
            here.Id,
            token => make(Planner.Of(rig, reading.Assumed, options with { Stop = token })),
            stop
        );
    }

    /// <summary>A search, which may take longest.</summary>
    /// <exception cref="LineFull">Too many are waiting.</exception>
    public Task<T> Search<T>(Func<CancellationToken, T> make, CancellationToken stop) =>
        host.Run(host.Limits.Searches, here.Id, make, stop);

    private WorkLane LaneFor(int pots) =>
        pots < WorkLimits.LargeFromPots ? host.Limits.Requests : host.Limits.LargeRequests;

    private static int Pots(Rig rig) => Math.Max(1, rig.Rows.Sum(row => row.Pots));
}
