using Dripwright.Engine.Layout;
using Dripwright.Engine.Strength.Frame;
using Dripwright.Engine.Strength.Loads;

namespace Dripwright.Engine.Strength.Checks;

/// <summary>What the sagging stand does to the drain that hangs on its rail.</summary>
/// <param name="LaidSlope">[-] Lowest slope as laid, towards the outlet.</param>
/// <param name="LowestSlope">[-] Lowest slope between two neighbouring saddles, towards the outlet; negative where it runs back.</param>
/// <param name="At">[m] X of the middle of that piece.</param>
/// <param name="PoolDepth">[m] Depth of the deepest pool that stands in the sag; 0 where all runs off.</param>
public sealed record DrainSettling(double LaidSlope, double LowestSlope, double At, double PoolDepth)
{
    /// <summary>Saddles to a module, with those at the frames counted once.</summary>
    private const int SaddlesPerModule = 4;

    /// <summary>Follows the drain along its rail.</summary>
    /// <remarks>
    /// The drain hangs in saddles at the frames and at quarters of the rail between; it is limp against the rail and goes
    /// down with it.
    /// </remarks>
    /// <param name="frame">The stand.</param>
    /// <param name="solution">The stand under its loads.</param>
    /// <returns>Null where the drain does not run along the stand.</returns>
    public static DrainSettling? Of(StandFrame frame, FrameSolution solution)
    {
        ArgumentNullException.ThrowIfNull(frame);
        ArgumentNullException.ThrowIfNull(solution);
        RowLayout row = frame.Row;
        RailLine rail = StandLoads.DrainRail(frame);
        List<(double X, double Laid, double Z)> saddles = [];
        IReadOnlyList<double> frames = frame.FrameStations;
        for (int i = 0; i < frames.Count; i++)
        {
            int parts = i + 1 < frames.Count ? SaddlesPerModule : 1;
            double step = parts > 1 ? (frames[i + 1] - frames[i]) / parts : 0;
            for (int k = 0; k < parts; k++)
            {
                double x = frames[i] + (k * step);
                double station = x - row.OriginX;
                if (station >= row.Drain.Start && station <= row.Drain.End)
                {
                    double laid = row.Drain.At(station).Z;
                    var (element, at) = rail.Place(x, frame.Model);
                    saddles.Add((x, laid, laid + solution.ShiftAt(element, at).Z));
                }
            }
        }

        if (saddles.Count < 2)
        {
            return null;
        }

        // From the outlet upstream.
        double exit = row.OriginX + row.DrainExit;
        if (Math.Abs(saddles[^1].X - exit) < Math.Abs(saddles[0].X - exit))
        {
            saddles.Reverse();
        }

        double lowest = double.PositiveInfinity;
        double straight = double.PositiveInfinity;
        double where = 0;
        double sill = saddles[0].Z;
        double pool = 0;
        for (int i = 1; i < saddles.Count; i++)
        {
            double run = Math.Abs(saddles[i].X - saddles[i - 1].X);
            double slope = (saddles[i].Z - saddles[i - 1].Z) / run;
            straight = Math.Min(straight, (saddles[i].Laid - saddles[i - 1].Laid) / run);
            if (slope < lowest)
            {
                (lowest, where) = (slope, (saddles[i].X + saddles[i - 1].X) / 2);
            }

            sill = Math.Max(sill, saddles[i].Z);
            pool = Math.Max(pool, sill - saddles[i].Z);
        }

        return new DrainSettling(straight, lowest, where, pool);
    }
}
