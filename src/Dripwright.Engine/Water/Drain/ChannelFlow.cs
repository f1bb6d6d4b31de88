using Dripwright.Engine.Physics;

namespace Dripwright.Engine.Water;

/// <summary>
/// Energy, force and friction in a channel, and the four steps a water surface is built of: up or down a stretch of
/// constant flow (energy), up or down past an inflow (momentum).
/// </summary>
/// <remarks>
/// Stretch: E(y) = y + Q²/(2gA²), E₁ + S₀ Δx = E₂ + S_f Δx, with S_f taken at the end that is sought. That is first order
/// in Δx, but each step then answers in one direction only: a deeper start or a flatter slope never gives a shallower
/// end. The laws that the profile promises rest on this.
/// Inflow: M(y) + Q²/(gA) is the same on both sides; the water that drops in brings no push along the pipe.
/// </remarks>
internal readonly struct ChannelFlow<T>(T section, double slope, double roughness)
    where T : struct, IFlowSection
{
    public T Section => section;

    public double Energy(double depth, double flow)
    {
        if (flow == 0)
        {
            return depth;
        }

        var velocity = flow / section.At(depth).Area;
        return depth + velocity * velocity / (2 * StandardGravity.Value);
    }

    public double Force(double depth, double flow) =>
        section.SurfaceMoment(depth) + (flow == 0 ? 0 : flow * flow / (StandardGravity.Value * section.At(depth).Area));

    /// <summary>Depth at the upper end of a stretch, from the lower end; not under the critical depth.</summary>
    public double SlowUp(double below, double flow, double critical, double length)
    {
        if (length == 0)
        {
            return below;
        }

        var sought = Energy(below, flow) - slope * length;
        if (flow == 0)
        {
            return Math.Max(sought, 0);
        }

        var balance = new StretchBalance(this, flow, length, -1, sought);
        var atCritical = balance.At(critical);
        if (atCritical >= 0)
        {
            return critical;
        }

        var height = section.Height;
        if (double.IsFinite(height) && balance.At(height) is var left && left <= 0)
        {
            // Full: velocity and friction no longer change with pressure, so the balance is a straight line.
            return height - left;
        }

        // A hair more than theory asks, lest rounding leave the root outside.
        var high = Math.Min(height, (Energy(critical, flow) - atCritical) * (1 + 1e-9));
        return Bracket.RootNear(balance, true, below, 0.02 * below, critical, high);
    }

    /// <summary>Depth at the lower end of a stretch, from the upper end; not over the critical depth.</summary>
    public double FastDown(double above, double flow, double critical, double length)
    {
        if (flow == 0 || length == 0)
        {
            return flow == 0 ? 0 : above;
        }

        var balance = new StretchBalance(this, flow, length, 1, Energy(above, flow) + slope * length);
        if (balance.At(critical) >= 0)
        {
            return critical;
        }

        var low = above;
        while (balance.At(low) < 0)
        {
            low /= 2;
        }

        return Bracket.RootNear(balance, false, above, 0.02 * above, low, critical);
    }

    /// <summary>Depth just above an inflow, from the depth just below it.</summary>
    public double SlowPastInflow(double below, double flowBelow, double flowAbove, double criticalAbove)
    {
        var force = Force(below, flowBelow);
        if (flowBelow == flowAbove || force == 0)
        {
            return below;
        }

        var balance = new ForceBalance(this, flowAbove, force);
        var low = Math.Max(below, criticalAbove);
        if (balance.At(low) >= 0)
        {
            return low;
        }

        var high = double.IsFinite(section.Height) ? Math.Max(section.Height, low) : 2 * low;
        if (double.IsFinite(section.Height) && balance.At(high) is var left && left <= 0)
        {
            return high - left / section.At(high).Area;
        }

        while (balance.At(high) < 0)
        {
            high *= 2;
        }

        return Bracket.RootNear(balance, true, below, 0.02 * below, low, high);
    }

    /// <summary>Depth just below an inflow where fast flow comes from above; the critical depth if its push is too small.</summary>
    public double FastPastInflow(double above, double flowAbove, double flowBelow, double criticalBelow)
    {
        if (flowBelow == flowAbove)
        {
            return above;
        }

        var balance = new ForceBalance(this, flowBelow, Force(above, flowAbove));
        if (flowAbove == 0 || balance.At(criticalBelow) >= 0)
        {
            return criticalBelow;
        }

        var low = Math.Min(above, criticalBelow);
        while (balance.At(low) < 0)
        {
            low /= 2;
        }

        return Bracket.Root(balance, low, criticalBelow);
    }

    private double FrictionSlope(in SectionGeometry water, double depth, double flow)
    {
        var root = roughness * flow / section.Conveyance(water, depth);
        return root * root;
    }

    // E(y) ± S_f(y) Δx less the energy sought.
    private readonly struct StretchBalance(
        ChannelFlow<T> channel,
        double flow,
        double length,
        double sign,
        double sought
    ) : IOneNumber
    {
        public double At(double x)
        {
            var water = channel.Section.At(x);
            var velocity = flow / water.Area;
            return x
                + velocity * velocity / (2 * StandardGravity.Value)
                + sign * channel.FrictionSlope(water, x, flow) * length
                - sought;
        }
    }

    private readonly struct ForceBalance(ChannelFlow<T> channel, double flow, double force) : IOneNumber
    {
        public double At(double x) => channel.Force(x, flow) - force;
    }
}
