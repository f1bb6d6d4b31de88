using Dripwright.Engine;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Rigs;
using Dripwright.Language;

namespace Dripwright.Sheets.Views;

/// <summary>The drain's height at one frame of the stand.</summary>
/// <param name="Frame">Frame, from 1 at the left end.</param>
/// <param name="Station">[m] From the row's left end.</param>
/// <param name="Drop">[m] From the rails' top, on which the pots stand, down to the top of the drain pipe.</param>
/// <param name="Height">[m] From the row's floor up to the lower edge of the drain pipe, on which it lies in its hanger.</param>
internal sealed record HeldPlace(int Frame, double Station, double Drop, double Height);

/// <summary>Heights at which a drain is hung.</summary>
internal static class HeldPlaces
{
    /// <summary>One for each frame along the drain.</summary>
    public static IReadOnlyList<HeldPlace> Of(RowLayout row)
    {
        var drain = row.Drain;
        var half = drain.Pipe.OutsideDiameter / 2;
        List<HeldPlace> held = [];
        var frames = row.Frames.Count > 0 ? row.Frames : row.Joints;
        foreach (var station in row.HeldAt)
        {
            var centre = Centre(drain, row.OriginX + station);
            held.Add(new(Nearest(frames, station), station, row.Base - centre - half, centre - half - row.Floor));
        }

        return held;
    }

    /// <summary>[m] Greatest drop from end to end.</summary>
    public static double Fall(RowLayout row) => row.Drain.Path.Max(p => p.Z) - row.Drain.Path.Min(p => p.Z);

    /// <summary>Which end is high, in words.</summary>
    public static string HighEnd(Plan plan) =>
        plan.Rig.Drain.Exit == DrainExit.Middle ? Words.Of("sheet.drain.from.both")
        : plan.Rig.Reservoir.At == RowEnd.Left ? Words.Of("sheet.drain.from.right")
        : Words.Of("sheet.drain.from.left");

    /// <summary>The frame nearest to a station, from 1.</summary>
    private static int Nearest(IReadOnlyList<double> frames, double station) =>
        Enumerable.Range(0, frames.Count).MinBy(i => Math.Abs(frames[i] - station)) + 1;

    // A station counts level distance, so the height follows from the corners on both sides.
    private static double Centre(PipeRun drain, double x)
    {
        for (var i = 1; i < drain.Path.Count; i++)
        {
            var (a, b) = (drain.Path[i - 1], drain.Path[i]);
            if (x >= Math.Min(a.X, b.X) - 1e-9 && x <= Math.Max(a.X, b.X) + 1e-9 && a.X != b.X)
            {
                return a.Z + ((b.Z - a.Z) * (x - a.X) / (b.X - a.X));
            }
        }

        return drain.Path[0].Z;
    }
}
