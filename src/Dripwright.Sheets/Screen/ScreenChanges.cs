using Dripwright.Engine;
using Dripwright.Engine.Numerics;
using Dripwright.Engine.Scenes;

namespace Dripwright.Sheets.Screen;

/// <summary>Compares two plans part by part: how things are built and where, not how the water runs.</summary>
internal static class ScreenChanges
{
    public static IReadOnlyList<ScreenChange> Of(Plan before, Plan after)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        var (old, now) = (Things(before), Things(after));
        List<ScreenChange> changes = [];
        foreach (var (part, thing) in now)
        {
            if (!old.TryGetValue(part, out var was))
            {
                changes.Add(new(part, ChangeKind.Added));
            }
            else if (!was.Build.SequenceEqual(thing.Build))
            {
                changes.Add(new(part, ChangeKind.Changed));
            }
            else if (!was.Place.SequenceEqual(thing.Place))
            {
                changes.Add(new(part, ChangeKind.Moved));
            }
        }

        changes.AddRange(
            old.Keys.Where(part => !now.ContainsKey(part)).Select(p => new ScreenChange(p, ChangeKind.Removed))
        );
        return changes;
    }

    private sealed record Thing(IReadOnlyList<object?> Build, IReadOnlyList<(double, double, double)> Place);

    private static Dictionary<string, Thing> Things(Plan plan)
    {
        var (layout, tank) = (plan.Layout, plan.Layout.Tank);
        var things = new Dictionary<string, Thing>(StringComparer.Ordinal);
        foreach (var row in layout.Rows)
        {
            foreach (var pot in row.Pots)
            {
                things[SceneNames.Pot(row.Number, pot.Number)] = new(
                    [row.Pot, pot.Crop, pot.Plants, pot.Emitters, pot.ValveOpen, layout.Parts.Emitter],
                    [At(pot.Base)]
                );
            }
        }

        foreach (var run in layout.Runs)
        {
            things[SceneNames.Run(run.Label)] = new(
                [
                    run.Service,
                    run.Pipe,
                    Tenth(run.Length),
                    .. run.Fittings.Select(f => (object)(f.Type.Name, Tenth(f.Station))),
                    .. run.Holes.Select(h => (object)(h.Use, h.Pot, Tenth(h.Station), Tenth(h.Diameter))),
                ],
                [.. run.Path.Select(At)]
            );
        }

        things["reservoir"] = new(
            [
                layout.Parts.Tank,
                Tenth(tank.Right - tank.Left),
                Tenth(tank.Back - tank.Front),
                Tenth(tank.Rim - tank.Floor),
                Tenth(tank.Full - tank.Floor),
                Tenth(tank.Lowest - tank.Floor),
            ],
            [(Tenth(tank.Left), Tenth(tank.Front), Tenth(tank.Floor))]
        );
        things["pump"] = new([plan.Rig.Pump], [At(tank.PumpOutlet)]);
        return things;
    }

    // Tenths of a millimetre: nobody sees less.
    private static double Tenth(double metres) => Math.Round(metres * 1e4);

    private static (double, double, double) At(Vector3 p) => (Tenth(p.X), Tenth(p.Y), Tenth(p.Z));
}
