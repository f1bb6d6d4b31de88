using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;
using Dripwright.Engine.Water;

namespace Dripwright.Engine.Proposing;

/// <summary>A placed frame with pump, emitter and strainer: a whole rig.</summary>
/// <param name="Draft">The placed frame.</param>
/// <param name="Pump">The pump; null for gravity.</param>
/// <param name="Emitter">The emitter.</param>
/// <param name="Strainer">The strainer.</param>
/// <param name="Floor">No less than this can it cost.</param>
/// <param name="Best">[-] No more uniformity than this can it reach.</param>
internal sealed record Candidate(
    FrameDraft Draft,
    PumpModel? Pump,
    EmitterType Emitter,
    StrainerType Strainer,
    decimal Floor,
    double Best
)
{
    /// <summary>The rig; null where the lowest level to keep lies over the tank's mark.</summary>
    public Rig? ToRig()
    {
        var rig = Draft.Rig;
        var whole = rig with { Feed = rig.Feed with { Emitter = Emitter.Key, Strainer = Strainer.Key } };
        var lowest = Pump is null ? rig.Reservoir.LowestLevel : LowestLevel(rig);
        if (lowest >= rig.Reservoir.Fill * Draft.Layout.Parts.Tank.Height)
        {
            return null;
        }

        return Pump is null
            ? whole
            : whole with
            {
                Pump = new Pump { Model = Pump.Key, CordSide = rig.Pump.CordSide },
                Reservoir = rig.Reservoir with { LowestLevel = lowest },
            };
    }

    // What the emitters pass at most, and what the pump gives at this lift, both bound its flow from above.
    private double LowestLevel(Rig rig)
    {
        var celsius = rig.Reservoir.WaterTemperature - 273.15;
        var law = FeedModel.LawOf(Emitter, celsius);
        var head = Math.Max(0, Pump!.Curve[0].Head - Draft.LeastLift);
        var spouts = rig.Feed.SiphonBreak
            ? PowerOff.BreakHoleFlow(SupplyPlacement.SiphonBreakDiameter, Pump.Curve[0].Head)
            : 0;
        var flow = Math.Min(Pump.Curve[^1].Flow, (Draft.Emitters * law.Flow(head)) + spouts);
        var level = Pump.InletHeight + PumpInlet.LeastSubmergence(flow, Pump.InletDiameter);
        var step = rig.Units == UnitSystem.Us ? 0.0254 / 4 : 0.005;
        return Math.Ceiling((level / step) + 1e-9) * step;
    }
}
