using Dripwright.Workbench.Hosting;
using Dripwright.Workbench.Work;

namespace Dripwright.Workbench.Tests.Work;

/// <summary>The work of a page without a page.</summary>
internal static class Works
{
    /// <summary>For a garden of which only the id counts.</summary>
    public static PageWork Of(WorkHost host, string garden = ServedGarden.Only)
    {
        var here = new GardenOfRequest();
        here.Choose(
            new ServedGarden(garden, null!, () => throw new InvalidOperationException("Nobody signs in."), null!)
        );
        return new PageWork(host, here);
    }
}
