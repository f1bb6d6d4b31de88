using Dripwright.Engine.Wires;

namespace Dripwright.Engine.Scenes;

/// <summary>Crop wires as they hang under the full crop, with the hook at each support.</summary>
internal sealed class WirePieces(Plan plan, SceneDraft draft)
{
    /// <summary>[m] Half of a hook's width, and how far it reaches up.</summary>
    private const double Hook = 0.006;

    private const double HookUp = 0.12;

    public void Add()
    {
        foreach (var wire in plan.CropWire.Wires)
        {
            var place = wire.Place;
            draft.Begin(
                new("wire-" + place.Label, SceneKind.Wire, SceneStage.Wire, place.Label, place.Row, 0)
                {
                    Utilisation = wire.Loaded.Utilisation,
                }
            );
            var way = Way(plan, wire);
            for (var i = 1; i < way.Count; i++)
            {
                // A wire of 2 mm would not be seen from across a room.
                draft.Rod(SceneMatter.Wire, way[i - 1], way[i], 0.004);
            }

            foreach (var at in place.Supports.Select(station => At(plan, wire, station, 0)))
            {
                draft.Rod(SceneMatter.Wire, at, at + (HookUp * Vector3.Up), Hook);
            }
        }
    }

    /// <summary>Corners of the loaded wire from left to right.</summary>
    public static IReadOnlyList<Vector3> Way(Plan plan, LoadedWire wire)
    {
        List<Vector3> way = [At(plan, wire, wire.Place.Supports[0], 0)];
        for (var span = 0; span < wire.Loaded.Spans.Count; span++)
        {
            var left = wire.Place.Supports[span];
            way.AddRange(
                wire.Loaded.Spans[span].Points.Skip(1).Select(point => At(plan, wire, left + point.Station, point.Drop))
            );
        }

        return way;
    }

    private static Vector3 At(Plan plan, LoadedWire wire, double station, double drop) =>
        new(plan.Layout.Rows[wire.Place.Row - 1].OriginX + station, wire.Place.Y, wire.Place.Z - drop);
}
