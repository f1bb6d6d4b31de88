using Dripwright.Engine.Layout;

namespace Dripwright.Engine.Scenes;

/// <summary>Plants as simple forms: a stem with leaves by turns; on its string up to the wire where the crop hangs.</summary>
internal sealed class PlantPieces(Plan plan, SceneDraft draft)
{
    /// <summary>[m] Stem between two leaves of a vine. Common practice: some 0.25 m; drawn wider apart so that the rig is seen.</summary>
    private const double Internode = 0.3;

    /// <summary>[m] A leaf's length.</summary>
    private const double LeafLength = 0.22;

    /// <summary>[m] Height of a plant that stands by itself.</summary>
    private const double Bush = 0.35;

    /// <summary>Beyond so many plants each gets few leaves: a large rig is looked at from afar, and must not be slow to come.</summary>
    private const int Many = 120;

    private const int Few = 2;

    private readonly bool _isMany = plan.Layout.Rows.Sum(row => row.Pots.Sum(pot => pot.Plants)) > Many;

    public void Add()
    {
        var wires = plan
            .CropWire.Wires.SelectMany(wire => wire.Place.Hanging.Select(plant => (wire, plant)))
            .ToDictionary(on => (on.wire.Place.Row, on.plant.Pot), on => WirePieces.Way(plan, on.wire));
        foreach (var row in plan.Layout.Rows)
        {
            foreach (var pot in row.Pots.Where(pot => pot.Planted))
            {
                draft.Begin(
                    new(
                        SceneNames.OfPot("plants", row.Number, pot.Number),
                        SceneKind.Plants,
                        SceneStage.Plants,
                        "",
                        row.Number,
                        pot.Number
                    )
                );
                var way = wires.GetValueOrDefault((row.Number, pot.Number));
                for (var plant = 0; plant < pot.Plants; plant++)
                {
                    One(row, pot, plant, way);
                }
            }
        }
    }

    private void One(RowLayout row, PotPlace pot, int plant, IReadOnlyList<Vector3>? way)
    {
        // Side by side along the row, within the middle half of the pot.
        var share = (plant + 0.5) / pot.Plants - 0.5;
        var root = pot.Base + new Vector3(share * row.Pot.Length / 2, 0, 0.9 * row.Pot.Height);
        var top = way is null ? root.Z + Bush : HeightAt(way, root.X);
        var tip = root with { Z = Math.Max(top, root.Z + (Bush / 2)) };
        draft.Rod(SceneMatter.Stem, root, tip, 0.006);
        var step = way is null ? Internode / 3 : Internode;
        var leaves = _isMany ? Few : Math.Max(Few, (int)Math.Round((tip.Z - root.Z - 0.1) / step));
        for (var leaf = 0; leaf < leaves; leaf++)
        {
            // A third of a turn and a bit from leaf to leaf, as most plants set them (golden angle).
            var turn = (leaf * 2.39996) + pot.Number + plant;
            var stalk = root with { Z = root.Z + 0.1 + ((tip.Z - root.Z - 0.1) * leaf / leaves) };
            var reach = LeafLength * (1 - (0.4 * leaf / leaves));
            var end = stalk + new Vector3(reach * Math.Cos(turn), reach * Math.Sin(turn), 0.05);
            draft.Leaf(stalk, end, reach * 0.3, 0.012);
        }
    }

    private static double HeightAt(IReadOnlyList<Vector3> way, double x)
    {
        for (var i = 1; i < way.Count; i++)
        {
            if (x <= way[i].X)
            {
                var (a, b) = (way[i - 1], way[i]);
                var share = b.X > a.X ? Math.Clamp((x - a.X) / (b.X - a.X), 0, 1) : 0;
                return a.Z + (share * (b.Z - a.Z));
            }
        }

        return way[^1].Z;
    }
}
