using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Physics;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Wires;

/// <summary>Loads the crop wires of a rig.</summary>
internal sealed class CropWirePlanner(Rig rig, RigLayout layout)
{
    /// <summary>[m] Stem between two clips. Common practice: 20 to 25 cm.</summary>
    private const double ClipSpacing = 0.2;

    public CropWirePlan Plan()
    {
        if (layout.Parts.Wire is not { } type || layout.Wires.Count == 0)
        {
            return new CropWirePlan([], null, null, null);
        }

        var kind = new WireKind(
            type.Key,
            type.Name,
            type.Stiffness,
            type.MassOfMetre * StandardGravity.Value,
            type.BreakingForce,
            type.Source
        );
        LoadedWire[] wires = [.. layout.Wires.Select(w => Load(w, kind))];
        var heaviest = layout
            .Rows.SelectMany(row =>
                row.Pots.Select(pot => pot.CropType)
                    .Where(crop => crop is { Hangs: true })
                    .Distinct()
                    .Select(crop => PlantOf(row, crop!, 1))
            )
            .MaxBy(load => load.Force);
        if (heaviest is not { } plant)
        {
            return new CropWirePlan(wires, null, null, Hook());
        }

        var rim = layout.Rows.Min(r => r.Base + r.Pot.Height - r.Floor);
        var strings = VineStrings.Of(
            plant.Force,
            rig.CropWire.Strings,
            Math.Max(rig.CropWire.Height - rim, ClipSpacing),
            ClipSpacing,
            rig.CropWire.Height
        );
        return new CropWirePlan(wires, plant, strings, Hook());
    }

    private LoadedWire Load(WirePlace place, WireKind kind)
    {
        var row = layout.Rows[place.Row - 1];
        PlantLoad[] plants = [.. place.Hanging.Select(h => PlantOf(row, row.Pots[h.Pot - 1].CropType!, h.Plants))];
        WireLoad[] loads =
        [
            .. place.Hanging.Zip(
                plants,
                // A pot may stand out over the end of its row; its vines then hang on the wire's last hook.
                (h, load) => new WireLoad(Math.Clamp(h.Station, place.Supports[0], place.Supports[^1]), load.Force)
            ),
        ];
        var loaded = SpannedWirePlan.Of(
            new SpannedWire
            {
                Kind = kind,
                Supports = place.Supports,
                Height = rig.CropWire.Height,
                // What pulls less than a tenth of its own weight is not tightened, it lies there.
                Tightened = Math.Clamp(
                    rig.CropWire.Tightened,
                    Math.Min(kind.Weight * rig.CropWire.Supports / ElasticCatenary.MostSagging, kind.BreakingForce),
                    kind.BreakingForce
                ),
                Loads = loads,
            }
        );
        var byArea = plants.Count(p => p.Basis == CropLoadBasis.Area) * 2 > plants.Length;
        return new LoadedWire(
            place,
            loaded,
            plants.Sum(p => p.Force),
            byArea ? CropLoadBasis.Area : CropLoadBasis.Plant
        );
    }

    /// <summary>Load of one pot's plants, against the floor that belongs to the pot: its share of row and aisle.</summary>
    private PlantLoad PlantOf(RowLayout row, CropType crop, int plants) =>
        CropLoad.Of(
            layout.Resolved.PlantMass(crop) * plants,
            row.Spec.Spacing * (row.Depth + row.Spec.Aisle),
            crop.AreaLoad
        );

    private double? Hook()
    {
        double? gravity = rig.CropWire.Timber switch
        {
            Timber.Light => 0.36,
            Timber.Framing => 0.42,
            Timber.Heavy => 0.50,
            _ => null,
        };
        return gravity is { } g
            ? HookWithdrawal.Reference(g, rig.CropWire.HookDiameter, rig.CropWire.HookThread)
                * HookWithdrawal.LongTerm
                * (rig.CropWire.WetTimber ? HookWithdrawal.Wet : 1)
            : null;
    }
}
