using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Water;

/// <summary>Why planted pots stay dry, found by changing one thing and solving the feed again.</summary>
internal enum DryCause
{
    /// <summary>The valve in the header is shut, or nearly.</summary>
    Throttle,

    /// <summary>The bypass lets the water back before it is lifted.</summary>
    Bypass,

    /// <summary>Nothing but a greater head lifts the water so high.</summary>
    Lift,
}

/// <summary>Tries what would bring water to planted pots that get none.</summary>
/// <remarks>Only rigs with dry pots pay for it: each trial costs a layout and a solution of the feed.</remarks>
internal sealed class WaterTrials(Rig rig, RigLayout layout, bool proposes = true)
{
    private PartsCatalogue Catalogue => layout.Parts.Catalogue;

    /// <summary>The cause, with the change that was seen to bring water to every planted pot whose valves are open.</summary>
    public (DryCause Cause, IReadOnlyList<Cure> Cures) Find()
    {
        if (!proposes)
        {
            return (DryCause.Lift, []);
        }

        var feed = rig.Feed;
        if (feed.Throttle < 1 && Waters(rig with { Feed = feed with { Throttle = null } }))
        {
            return (DryCause.Throttle, [Cure.Field("feed.throttle", null)]);
        }

        if (feed.Bypass > 0 && Waters(rig with { Feed = feed with { Bypass = null } }))
        {
            return (DryCause.Bypass, [Cure.Field("feed.bypass", null)]);
        }

        return (DryCause.Lift, Stronger() is { } pump ? [Cure.Of([RigCure.Text("pump.model", pump.Key)])] : []);
    }

    // A pump with figures of its own is the grower's: none of the catalogue takes its place.
    private PumpModel? Stronger()
    {
        var own = rig.Pump is not { Curve: null, ShutOffHead: null, OpenFlow: null, Power: null };
        return own || layout.Parts.Pump is not { } now
            ? null
            : Catalogue
                .Pumps.Values.Where(p => p.Curve[0].Head > now.Curve[0].Head)
                .OrderBy(p => p.Power)
                .ThenBy(p => p.Key, StringComparer.Ordinal)
                .FirstOrDefault(p => Waters(rig with { Pump = rig.Pump with { Model = p.Key } }));
    }

    private bool Waters(Rig changed)
    {
        if (RigLayout.TryOf(changed, Catalogue) is not { } placed)
        {
            return false;
        }

        var feed = new FeedPlanner(changed, placed).Plan();
        return feed.Solved && feed.Dry.All(feed.IsShut);
    }
}
