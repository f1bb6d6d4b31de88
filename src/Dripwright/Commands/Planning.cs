using Dripwright.Engine;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Rigs;
using Dripwright.Files;
using Dripwright.Screen;

namespace Dripwright.Commands;

/// <summary>A rig file read without a fault.</summary>
/// <param name="Bytes">The file as it is.</param>
/// <param name="Rig">The rig.</param>
/// <param name="Assumed">What it did not say.</param>
internal sealed record SoundFile(byte[] Bytes, Rig Rig, IReadOnlyList<Assumed> Assumed);

/// <summary>From a path to a plan.</summary>
internal static class Planning
{
    /// <summary>Reads a rig file.</summary>
    /// <exception cref="Refusal">It cannot be read or has faults; the message tells all of them.</exception>
    public static SoundFile Read(string path, PartsCatalogue catalogue, Surroundings around)
    {
        var bytes = SmallFile.Read(path, around);
        var reading = RigReader.Read(bytes, path, catalogue);
        if (reading.Rig is not { } rig)
        {
            throw Faults.Refusal(path, reading.Faults);
        }

        foreach (var step in reading.Upgraded)
        {
            around.Error.WriteLine(Plain.Line($"{path}: read as an older format: {step}"));
        }

        return new SoundFile(bytes, rig, reading.Assumed);
    }

    /// <summary>Plans a rig in the background, so that Ctrl-C ends the program at once and progress can be shown.</summary>
    public static async Task<Plan> Plan(
        SoundFile file,
        PartsCatalogue catalogue,
        PlanOptions options,
        Surroundings around,
        CancellationToken stop
    )
    {
        var progress = new LatestProgress(stop);
        var work = Task.Run(() => Planner.Of(file.Rig, file.Assumed, catalogue, options, progress), stop);
        await ProgressLine.Follow(work, () => progress.Latest, around, stop).ConfigureAwait(false);
        return await work.WaitAsync(stop).ConfigureAwait(false);
    }

    /// <summary>Keeps the last report, and ends the work at the next one when asked to stop.</summary>
    private sealed class LatestProgress(CancellationToken stop) : IProgress<PlanProgress>
    {
        private volatile PlanProgress _latest = new("planning", 0);

        public PlanProgress Latest => _latest;

        public void Report(PlanProgress value)
        {
            stop.ThrowIfCancellationRequested();
            _latest = value;
        }
    }
}
