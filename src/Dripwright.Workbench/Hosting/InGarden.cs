using Dripwright.Store;
using Dripwright.Store.Keeping;
using Dripwright.Workbench.Household;
using Microsoft.AspNetCore.Components;

namespace Dripwright.Workbench.Hosting;

/// <summary>A piece of a page that asks the garden itself.</summary>
public abstract class InGarden : ComponentBase
{
    /// <summary>The garden that the page is about.</summary>
    protected Garden Garden => Here.Garden;

    /// <summary>Its daily backups.</summary>
    protected BackupFolder Daily => Here.Backups;

    /// <summary>Whether who looks at the page has a right just now.</summary>
    /// <param name="right">The right.</param>
    internal bool May(Right right) => Here.Actor.Has(right);

    [Inject]
    private GardenOfRequest Here { get; set; } = null!;

    /// <summary>Does something for which nobody waits on the page's own thread. Where it fails the page shows that, with a number.</summary>
    /// <param name="work">What to do.</param>
    protected Task OnPage(Func<Task> work) =>
        InvokeAsync(async () =>
        {
            try
            {
                await work();
            }
#pragma warning disable CA1031 // The layout's net shows it; it would else be lost without a word.
            catch (Exception why)
#pragma warning restore CA1031
            {
                await DispatchExceptionAsync(why);
            }
        });
}
