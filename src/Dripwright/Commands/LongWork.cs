using Dripwright.Engine;
using Dripwright.Engine.Phrases;
using Dripwright.Screen;
using Dripwright.Terminal;

namespace Dripwright.Commands;

/// <summary>Runs what may take long in the background, so that progress is shown and Ctrl-C ends the program at once.</summary>
internal static class LongWork
{
    /// <summary>The result of the work.</summary>
    /// <param name="work">The work; it tells how far it has come.</param>
    /// <param name="around">Where progress is shown.</param>
    /// <param name="stop">Asks to stop.</param>
    /// <exception cref="OperationCanceledException">A stop was asked for.</exception>
    public static async Task<T> Run<T>(
        Func<IProgress<PlanProgress>, T> work,
        Surroundings around,
        CancellationToken stop
    )
    {
        var progress = new Latest(stop);
        var task = Task.Run(() => work(progress), stop);
        await ProgressLine.Follow(task, () => progress.Last, around, stop).ConfigureAwait(false);
        return await task.WaitAsync(stop).ConfigureAwait(false);
    }

    /// <summary>Keeps the last report, and ends the work at the next one when asked to stop.</summary>
    private sealed class Latest(CancellationToken stop) : IProgress<PlanProgress>
    {
        private volatile PlanProgress _last = new(Phrase.Of("progress.start"), 0);

        public PlanProgress Last => _last;

        public void Report(PlanProgress value)
        {
            stop.ThrowIfCancellationRequested();
            _last = value;
        }
    }
}
