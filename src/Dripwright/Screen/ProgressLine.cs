using Dripwright.Engine;
using Dripwright.Language;
using Dripwright.Terminal;
using Spectre.Console;

namespace Dripwright.Screen;

/// <summary>Shows how far a long piece of work has come: on a terminal only, and only once it has taken over a second.</summary>
internal static class ProgressLine
{
    private static readonly TimeSpan s_patience = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan s_beat = TimeSpan.FromMilliseconds(100);

    public static async Task Follow(Task work, Func<PlanProgress> latest, Surroundings around, CancellationToken stop)
    {
        if (!around.ErrorIsTerminal || await Ends(work, s_patience, stop).ConfigureAwait(false))
        {
            return;
        }

        var console = Consoles.For(around.Error, colour: false, Surroundings.PlainWidth, moves: true);
        await console
            .Progress()
            .AutoClear(true)
            .Columns(new TaskDescriptionColumn(), new ProgressBarColumn(), new PercentageColumn())
            .StartAsync(async show =>
            {
                var told = new PlanWords(default);
                var bar = show.AddTask(Markup.Escape(told.Of(latest().Stage)));
                while (!await Ends(work, s_beat, stop).ConfigureAwait(false))
                {
                    var at = latest();
                    bar.Description = Markup.Escape(told.Of(at.Stage));
                    bar.Value = at.Share * 100;
                }
            })
            .ConfigureAwait(false);
    }

    // Neither a failure nor a stop is thrown from here: whoever awaits the work gets it.
    private static async Task<bool> Ends(Task work, TimeSpan within, CancellationToken stop)
    {
        await Task.WhenAny(work, Task.Delay(within, stop)).ConfigureAwait(false);
        return work.IsCompleted || stop.IsCancellationRequested;
    }
}
