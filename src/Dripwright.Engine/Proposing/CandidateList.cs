using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Parts;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Physics;
using Dripwright.Engine.Water;

namespace Dripwright.Engine.Proposing;

/// <summary>The rigs that can be made of a placed frame, those left out that are sure to fail.</summary>
internal sealed class CandidateList(Brief brief, SearchSpace space)
{
    private static readonly PumpModel?[] s_none = [null];

    private readonly Dictionary<string, int> _have = brief
        .OnHand.GroupBy(h => h.Part)
        .ToDictionary(g => g.Key, g => g.Sum(h => h.Count));

    /// <summary>[m] Least head by which the strongest pump fails to open an emitter; null where none failed.</summary>
    public double? HeadMissing { get; private set; }

    /// <summary>Every rig of the frame that is not sure to fail.</summary>
    public IEnumerable<Candidate> Of(FrameDraft draft)
    {
        IReadOnlyList<PumpModel?> pumps = draft.Frame.Gravity ? s_none : [.. space.Pumps];
        foreach (var pump in pumps)
        {
            var withPump = draft.Floor + (pump is null ? 0 : PumpCost(pump));
            foreach (var emitter in space.Emitters)
            {
                if (Missing(draft, pump, emitter) is > 0 and { } missing)
                {
                    HeadMissing = Math.Min(HeadMissing ?? missing, missing);
                    continue;
                }

                var withEmitters = withPump + EmitterCost(emitter, draft.Emitters);
                foreach (var strainer in space.Strainers(emitter))
                {
                    var floor = withEmitters + Cost(strainer, 1, 0);
                    yield return new(draft, pump, emitter, strainer, floor, Best(emitter, draft.Frame.Emitters));
                }
            }
        }
    }

    /// <summary>[-] Uniformity of an emitter under one pressure everywhere: no rig reaches more with it.</summary>
    public static double Best(EmitterType emitter, int perPot) => Uniformity.OfDesign(emitter.Variation, perPot, 1, 1);

    /// <summary>Cost of the pump and its spares.</summary>
    public decimal PumpCost(PumpModel pump) => Cost(pump, 1, space.Start.Spares.Pumps);

    /// <summary>Cost of emitters and their spares.</summary>
    public decimal EmitterCost(EmitterType emitter, int count) =>
        Cost(emitter, count, (int)Math.Ceiling((space.Start.Spares.Emitters * count) - 1e-9));

    /// <summary>Cost of pieces that must be bought of a part.</summary>
    public decimal Cost(CatalogueEntry part, int needed, int spares)
    {
        var have = Math.Min(needed + spares, _have.GetValueOrDefault(part.Key));
        return PartLines.Of(part, part.Key, needed, spares, have, Phrase.None, 0, Phrase.None).Price ?? 0;
    }

    /// <summary>[m] Head that is missing for every emitter to work in its range. Over zero, the rig is sure to fail.</summary>
    /// <remarks>
    /// Were every emitter in its range, together they would take their least flow at least; at that flow the pump must still
    /// give the lift and the least head. Friction is left out, so nothing that could work is lost.
    /// </remarks>
    private static double Missing(FrameDraft draft, PumpModel? pump, EmitterType emitter)
    {
        var celsius = draft.Rig.Reservoir.WaterTemperature - 273.15;
        var least = emitter.MinPressure * (1 - 1e-9) / WaterProperties.SpecificWeight(celsius);
        var wanted = draft.Lift + least;
        if (pump is null)
        {
            return wanted;
        }

        var flow = draft.Emitters * FeedModel.LawOf(emitter, celsius).Flow(least) * (1 - 1e-9);
        return wanted - HeadAtMost(pump, flow);
    }

    /// <summary>[m] No less than the pump's head at a flow: that of the point before, since heads only fall.</summary>
    private static double HeadAtMost(PumpModel pump, double flow)
    {
        if (flow >= pump.Curve[^1].Flow)
        {
            return 0;
        }

        var head = pump.Curve[0].Head;
        foreach (var point in pump.Curve.Where(p => p.Flow <= flow))
        {
            head = point.Head;
        }

        return head;
    }
}
