using Dripwright.Store;
using Dripwright.Workbench.Setup;

namespace Dripwright.Workbench.Hosting;

/// <summary>Opens the garden; a new one gets the demo rigs, so that the first page has something to show.</summary>
internal static class DemoGarden
{
    private const string Mark = "demo";

    public static async Task<Garden> OpenAsync(WorkbenchOptions options, CancellationToken stop)
    {
        var garden = await Garden.OpenAsync(options.Garden, options.Time, stop).ConfigureAwait(false);
        var settings = await garden.SettingsAsync(stop).ConfigureAwait(false);
        // Only once: who throws the demo away does not want it back at the next start.
        if (!options.WithDemo || settings.More.ContainsKey(Mark))
        {
            return garden;
        }

        if ((await garden.RigsAsync(stop).ConfigureAwait(false)).Count == 0)
        {
            foreach (
                var (file, name) in new[]
                {
                    ("school", "Demo: sixteen staggered pots"),
                    ("food-bank", "Demo: the back room"),
                }
            )
            {
                await garden.AddRigAsync(name, Resource.Text($"demo/{file}.rig.json"), stop).ConfigureAwait(false);
            }
        }

        var more = new Dictionary<string, string>(settings.More) { [Mark] = "given" };
        await garden.KeepSettingsAsync(settings with { More = more }, stop).ConfigureAwait(false);
        return garden;
    }
}
