using System.Globalization;
using Dripwright.Engine;
using Dripwright.Engine.Catalogue;
using Dripwright.Language;
using Dripwright.Workbench.Failing;
using Dripwright.Workbench.Hosting;
using Dripwright.Workbench.Work;
using Microsoft.AspNetCore.Http;

namespace Dripwright.Workbench.Http;

/// <summary>What a request asks, and of which rig: of the file that came with it, or of a rig of the garden.</summary>
/// <param name="context">The request.</param>
/// <param name="work">Where it is computed.</param>
/// <param name="here">The garden.</param>
/// <param name="id">The rig of the garden; null for the file that came.</param>
/// <param name="revision">Its saved revision; null for the draft.</param>
internal sealed class RigQuestion(
    HttpContext context,
    RequestWork work,
    GardenOfRequest here,
    int? id = null,
    int? revision = null
)
{
    /// <summary>Where it is computed.</summary>
    public RequestWork Work => work;

    /// <summary>Asks to stop: whoever asked is gone.</summary>
    public CancellationToken Stop => context.RequestAborted;

    /// <summary>The garden's parts.</summary>
    public async Task<PartsCatalogue> Catalogue() => (await here.Garden.CatalogueAsync(Stop)).Catalogue;

    /// <summary>Plans the rig and makes something of the plan.</summary>
    /// <param name="draws">Whether uneven and clogged emitters are drawn; null for yes.</param>
    /// <param name="make">What is made of the plan and the file it is of.</param>
    /// <exception cref="Refused">There is no such rig, or its file has faults.</exception>
    public async Task<T> Of<T>(bool? draws, Func<Plan, RigSource, T> make)
    {
        var file = await File();
        return await work.Of(file, await Catalogue(), draws ?? true, plan => make(plan, file), Stop);
    }

    /// <summary>The rig file asked for.</summary>
    /// <exception cref="Refused">There is no such rig.</exception>
    public async Task<RigSource> File()
    {
        if (id is not { } rig)
        {
            return new RigSource(Words.Of("http.rig-file"), await Body.Text(context));
        }

        var draft = await RigAddresses.Rig(here.Garden, rig, Stop);
        var onHand = await here.Garden.OnHandAsync(Stop);
        if (revision is not { } number)
        {
            Versions.Show(context, draft);
            return new RigSource(draft.Name, draft.Text, OnHand: onHand);
        }

        var saved = await here.Garden.RevisionAsync(rig, number, Stop) ?? throw Refused.NotThere("revision");
        return new RigSource(draft.Name, saved.Text, number.ToString(CultureInfo.InvariantCulture), onHand);
    }
}
