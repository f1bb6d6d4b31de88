using Dripwright.Engine.Layout;
using Dripwright.Engine.Stands.Frame;
using Dripwright.Engine.Stands.Loads;

namespace Dripwright.Engine.Stands.Checks;

/// <summary>A place at which the drain is held.</summary>
/// <param name="X">[m] Place along the row.</param>
/// <param name="Laid">[m] Height at which it was laid.</param>
/// <param name="Z">[m] Height to which it went down with the stand.</param>
public readonly record struct DrainHolder(double X, double Laid, double Z);

/// <summary>What the sagging stand and the pipe's own sag do to the drain.</summary>
/// <param name="LaidSlope">[-] Lowest slope as laid, towards the outlet.</param>
/// <param name="LowestSlope">[-] Lowest slope anywhere, towards the outlet; negative where it runs back.</param>
/// <param name="At">[m] X of that place.</param>
/// <param name="PoolDepth">[m] Depth of the deepest pool that stands in the sag; 0 where all runs off.</param>
public sealed record DrainSettling(double LaidSlope, double LowestSlope, double At, double PoolDepth)
{
    /// <summary>Follows the drain from hanger to hanger.</summary>
    /// <remarks>
    /// It hangs at every frame along it, beside a leg, under a cross-member or under the end of a rail, goes down with what
    /// holds it, and sags between, full of water and after years of its own weight.
    /// </remarks>
    /// <param name="frame">The stand.</param>
    /// <param name="solution">The stand under its loads.</param>
    /// <returns>Null where fewer than two frames hold it.</returns>
    public static DrainSettling? Of(StandFrame frame, FrameSolution solution)
    {
        ArgumentNullException.ThrowIfNull(frame);
        ArgumentNullException.ThrowIfNull(solution);
        var row = frame.Row;
        var across = row.Hangers.Any(hanger => hanger.Mount != HangerMount.Leg);
        var rail = StandLoads.DrainRail(frame);
        List<DrainHolder> holders = [];
        foreach (var x in frame.FrameStations)
        {
            var station = x - row.OriginX;
            if (station >= row.Drain.Start - 1e-9 && station <= row.Drain.End + 1e-9)
            {
                var laid = row.Drain.At(Math.Clamp(station, row.Drain.Start, row.Drain.End));
                var (element, at) = across
                    ? Cross(frame, x, laid.Y) ?? rail.Place(x, frame.Model)
                    : rail.Place(x, frame.Model);
                holders.Add(new(x, laid.Z, laid.Z + solution.ShiftAt(element, at).Z));
            }
        }

        var weight = PipeBeam.LastingWeight(row.Drain.Pipe, frame.Options.Loads.PipeDensity);
        return Along(holders, row.OriginX + row.DrainExit, weight, PipeBeam.Stiffness(row.Drain.Pipe));
    }

    /// <summary>Follows a pipe over its holders.</summary>
    /// <remarks>
    /// Between two holders it is a simple beam, which sags more than one that runs on over its holders: on the safe side, and
    /// one more holder then never makes a pool deeper. The slope is least where the pipe leaves a holder upstream; a pool's
    /// sill is the highest holder downstream of it, since a sagging pipe is nowhere higher than at its holders.
    /// </remarks>
    /// <param name="holders">Where it is held, in the order of x, each at another.</param>
    /// <param name="exit">[m] X of its outlet, at or beyond one end.</param>
    /// <param name="weight">[N/m] Its weight, 0 or more.</param>
    /// <param name="stiffness">[N·m²] Its stiffness E I, over 0.</param>
    /// <returns>Null where fewer than two holders are given.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The weight is negative or the stiffness not over 0.</exception>
    public static DrainSettling? Along(IReadOnlyList<DrainHolder> holders, double exit, double weight, double stiffness)
    {
        ArgumentNullException.ThrowIfNull(holders);
        ArgumentOutOfRangeException.ThrowIfNegative(weight);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(stiffness);
        if (holders.Count < 2)
        {
            return null;
        }

        // From the outlet upstream, on both sides where it lies in the middle.
        DrainHolder[] right = [.. holders.Where(h => h.X >= exit - 1e-9)];
        DrainHolder[] left = [.. holders.Where(h => h.X <= exit + 1e-9).Reverse()];
        return Worse(Upstream(left, weight, stiffness), Upstream(right, weight, stiffness));
    }

    private static DrainSettling? Worse(DrainSettling? a, DrainSettling? b) =>
        a is null ? b
        : b is null ? a
        : (b.LowestSlope < a.LowestSlope ? b : a) with
        {
            LaidSlope = Math.Min(a.LaidSlope, b.LaidSlope),
            PoolDepth = Math.Max(a.PoolDepth, b.PoolDepth),
        };

    private static DrainSettling? Upstream(DrainHolder[] holders, double weight, double stiffness)
    {
        if (holders.Length < 2)
        {
            return null;
        }

        var lowest = double.PositiveInfinity;
        var straight = double.PositiveInfinity;
        double where = 0;
        var sill = holders[0].Z;
        double pool = 0;
        for (var i = 1; i < holders.Length; i++)
        {
            var run = Math.Abs(holders[i].X - holders[i - 1].X);
            var rise = (holders[i].Z - holders[i - 1].Z) / run;
            var slope = rise - PipeBeam.SagSlope(weight, stiffness, run, 0);
            straight = Math.Min(straight, (holders[i].Laid - holders[i - 1].Laid) / run);
            if (slope < lowest)
            {
                (lowest, where) = (slope, holders[i - 1].X);
            }

            var deep = Deepest(rise, weight, stiffness, run);
            var bottom = holders[i - 1].Z + (rise * deep) - PipeBeam.Sag(weight, stiffness, run, deep);
            pool = Math.Max(pool, sill - bottom);
            sill = Math.Max(sill, holders[i].Z);
        }

        return new DrainSettling(straight, lowest, where, pool);
    }

    /// <summary>[m] From the lower holder to the lowest place of a span that rises by a slope: where the sag's slope equals it.</summary>
    private static double Deepest(double rise, double weight, double stiffness, double run)
    {
        // The sag's slope falls all along the span, from its greatest to its negative.
        (double low, var high) = (0, run);
        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            if (PipeBeam.SagSlope(weight, stiffness, run, middle) > rise)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return low;
    }

    private static (int Element, double At)? Cross(StandFrame frame, double x, double y)
    {
        foreach (var tube in frame.Tubes)
        {
            if (
                tube.Member.Role == MemberRole.Cross
                && Math.Abs(tube.Member.From.X - x) < 1e-6
                && y >= Math.Min(tube.Member.From.Y, tube.Member.To.Y)
                && y <= Math.Max(tube.Member.From.Y, tube.Member.To.Y)
            )
            {
                var along = Math.Abs(y - tube.Member.From.Y);
                foreach (var e in tube.Elements)
                {
                    var length = frame.Model.LengthOf(e);
                    if (along <= length || e == tube.Elements[^1])
                    {
                        return (e, Math.Min(along, length));
                    }

                    along -= length;
                }
            }
        }

        return null;
    }
}
