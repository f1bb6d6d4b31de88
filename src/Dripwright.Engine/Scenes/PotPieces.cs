using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Layout;

namespace Dripwright.Engine.Scenes;

/// <summary>Pots with their medium, and the elbow from each to its hole in the drain.</summary>
internal sealed class PotPieces(Plan plan, SceneDraft draft)
{
    /// <summary>[-] Level of the medium over the pot's height: it settles below the rim. Common practice.</summary>
    private const double MediumShare = 0.92;

    public void Add()
    {
        var flows = plan.Feed.Pots.ToDictionary(pot => (pot.Row, pot.Pot));
        var weakest = plan.Feed.Weakest;
        foreach (var row in plan.Layout.Rows)
        {
            foreach (var pot in row.Pots)
            {
                var water = flows.GetValueOrDefault((row.Number, pot.Number));
                draft.Begin(
                    new(
                        SceneNames.Pot(row.Number, pot.Number),
                        SceneKind.Pot,
                        SceneStage.Pots,
                        "",
                        row.Number,
                        pot.Number
                    )
                    {
                        Flow = water?.Flow,
                        Pressure = water?.Pressure,
                        IsWeakest = weakest is not null && (weakest.Row, weakest.Pot) == (row.Number, pot.Number),
                    }
                );
                Pot(row.Pot, pot);
                Elbow(row, pot);
            }
        }
    }

    private void Pot(PotType type, PotPlace pot)
    {
        var ratio = type.BaseRatio;
        draft.Upright(
            type.Round ? SceneForm.Tub : SceneForm.Crate,
            SceneMatter.Pot,
            pot.Base,
            type.Height,
            Wide(type, ratio),
            Wide(type, 1)
        );
        // Only its upper face is seen, so a thin slice stands for the filling.
        var share = ratio + ((1 - ratio) * MediumShare);
        var slice = 0.02 * type.Height;
        draft.Upright(
            type.Round ? SceneForm.Rod : SceneForm.Block,
            SceneMatter.Medium,
            pot.Base + (((MediumShare * type.Height) - slice) * Vector3.Up),
            slice,
            Wide(type, share * 0.99),
            Wide(type, share * 0.99)
        );
    }

    private static SceneWidth Wide(PotType type, double share) => new(share * type.Length / 2, share * type.Width / 2);

    private void Elbow(RowLayout row, PotPlace pot)
    {
        var hole = row.Drain.Holes.FirstOrDefault(h => h.Use == HoleUse.PotOutlet && h.Pot == pot.Number);
        if (hole is null)
        {
            return;
        }

        var pipe = row.Drain.At(hole.Station);
        var radius = Math.Min(hole.Diameter, row.Drain.Pipe.OutsideDiameter) / 2;
        var sill = pot.Base.Z + row.Pot.DrainHeight;
        // From the pot's wall level out to over the pipe, then down into it.
        var over = pipe with
        {
            Z = sill,
        };
        var toPipe = new Vector3(0, pipe.Y - pot.Base.Y, 0);
        var reach = Math.Min(Math.Abs(toPipe.Y), row.Pot.Width / 2);
        var wall = pot.Base with { X = pipe.X, Y = pot.Base.Y + (Math.Sign(toPipe.Y) * reach), Z = sill };
        draft.Rod(SceneMatter.Return, wall, over, radius);
        draft.Rod(SceneMatter.Return, over, pipe, radius);
    }
}
