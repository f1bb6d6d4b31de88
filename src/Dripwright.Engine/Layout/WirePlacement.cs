using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Layout;

/// <summary>The vines of one pot on the wire over it.</summary>
/// <remarks>A crop that stands by itself has none.</remarks>
/// <param name="Pot">Pot of the row, from 1.</param>
/// <param name="Station">[m] Where they hang, along the row.</param>
/// <param name="Plants">Plants.</param>
public sealed record HangingPlants(int Pot, double Station, int Plants);

/// <summary>One crop wire in its place: over a row, or over one line of a staggered row.</summary>
/// <param name="Label">As in the drawings: <c>W1</c>, or <c>W1-front</c> and <c>W1-back</c> over a staggered row.</param>
/// <param name="Row">Row, from 1.</param>
/// <param name="Y">[m] Over which line across the room it runs.</param>
/// <param name="Z">[m] Height of its supports.</param>
/// <param name="Supports">[m] Stations of its supports along the row, left to right.</param>
/// <param name="Hanging">What hangs on it, left to right.</param>
public sealed record WirePlace(
    string Label,
    int Row,
    double Y,
    double Z,
    IReadOnlyList<double> Supports,
    IReadOnlyList<HangingPlants> Hanging
);

/// <summary>Puts crop wires over the rows.</summary>
/// <remarks>A wire is as long as the row's stand, with its supports evenly spaced and none farther apart than the rig says.</remarks>
internal static class WirePlacement
{
    public static IReadOnlyList<WirePlace> Place(Rig rig, RigParts parts, IReadOnlyList<RowPlace> rows)
    {
        if (parts.Wire is null)
        {
            return [];
        }

        List<WirePlace> wires = [];
        foreach (var row in rows)
        {
            var spans = Math.Max(1, (int)Math.Ceiling((row.Length / rig.CropWire.Supports) - 1e-9));
            double[] supports = [.. Enumerable.Range(0, spans + 1).Select(i => row.Length * i / spans)];
            var staggered = row.Spec.Arrangement == Arrangement.Staggered && row.Pots.Any(p => p.BackLine);
            foreach (var line in row.Pots.GroupBy(p => p.BackLine).OrderBy(g => g.Key))
            {
                var side =
                    !staggered ? ""
                    : line.Key ? "-back"
                    : "-front";
                wires.Add(
                    new WirePlace(
                        $"W{Labels.Of(row.Number)}{side}",
                        row.Number,
                        line.First().Base.Y,
                        row.Floor + rig.CropWire.Height,
                        supports,
                        [
                            .. line.Where(p => p.CropType is { Hangs: true })
                                .Select(p => new HangingPlants(p.Number, p.Station, p.Plants)),
                        ]
                    )
                );
            }
        }

        return wires;
    }
}
