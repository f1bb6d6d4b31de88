using System.Globalization;
using MathNet.Numerics.Interpolation;

namespace Dripwright.Engine.Water;

/// <summary>Head a pump gives against the flow it passes, from shut-off to the end of its curve.</summary>
/// <remarks>
/// Between points the head is a monotone piecewise cubic (Fritsch &amp; Carlson, SIAM J. Numer. Anal. 17(2), 1980,
/// pp. 238-246): it passes through every point and never rises. Two points alone are joined by the parabola
/// H = H₀ (1 - (Q/Q_max)²) when the second is at zero head, else by a straight line. The curve is never extended past its
/// last point: asking for head there throws. Method page: docs/methods/pump.md
/// </remarks>
public sealed class PumpCurve
{
    private readonly CubicSpline? _head;
    private readonly LinearSpline? _power;
    private readonly bool _parabola;

    private PumpCurve(IReadOnlyList<PumpPoint> points, double? ratedPower)
    {
        Points = points;
        RatedPower = ratedPower;
        var flows = points.Select(p => p.Flow).ToArray();
        if (points.Count > 2)
        {
            _head = CubicSpline.InterpolatePchipSorted(flows, points.Select(p => p.Head).ToArray());
        }
        else
        {
            _parabola = points[^1].Head == 0;
        }

        if (ratedPower is null && points.All(p => p.InputPower is not null))
        {
            // Between two published powers nothing is known but that one leads to the other: a straight line.
            _power = LinearSpline.InterpolateSorted(flows, points.Select(p => p.InputPower!.Value).ToArray());
        }
    }

    /// <summary>The points in order of flow, the first at zero flow.</summary>
    public IReadOnlyList<PumpPoint> Points { get; }

    /// <summary>[W] Electrical power taken as constant, if that is all the maker states.</summary>
    public double? RatedPower { get; }

    /// <summary>[m] Head at which the pump passes nothing.</summary>
    public double ShutOffHead => Points[0].Head;

    /// <summary>[m³/s] Flow at the end of the curve; the open flow when the curve ends at zero head.</summary>
    public double LargestFlow => Points[^1].Flow;

    /// <summary>[m] Head at the end of the curve: zero when the open flow is part of it.</summary>
    public double LowestHead => Points[^1].Head;

    /// <summary>True when the electrical power is known, by points or as one rated value.</summary>
    public bool PowerIsKnown => RatedPower is not null || _power is not null;

    /// <summary>The parabola through shut-off and open flow, for a pump of which only these two are published.</summary>
    /// <remarks>
    /// H = H₀ (1 - (Q/Q_max)²). Common practice; the shape fits small centrifugal pumps within some 15 % of the shut-off
    /// head, so published points are always better.
    /// </remarks>
    /// <param name="shutOffHead">[m] Head at zero flow, greater than 0.</param>
    /// <param name="openFlow">[m³/s] Flow at zero head, greater than 0.</param>
    /// <param name="ratedPower">[W] Electrical power, taken as constant, or null.</param>
    /// <returns>The curve.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is not positive.</exception>
    public static PumpCurve FromShutOffAndOpenFlow(double shutOffHead, double openFlow, double? ratedPower = null)
    {
        Guard.Positive(shutOffHead);
        Guard.Positive(openFlow);
        if (ratedPower is { } power)
        {
            Guard.Positive(power, nameof(ratedPower));
        }

        return new PumpCurve([new PumpPoint(0, shutOffHead), new PumpPoint(openFlow, 0)], ratedPower);
    }

    /// <summary>Reads published points, which may come in any order; faults are listed, not thrown.</summary>
    /// <remarks>
    /// Head must never rise with flow (a curve with a hump has two flows for one head, and the pump may hunt between them).
    /// A shut-off head is needed; without an open flow the curve simply ends at its last point.
    /// </remarks>
    /// <param name="points">Published points.</param>
    /// <param name="shutOffHead">[m] Head at zero flow, if it is published apart from the points.</param>
    /// <param name="openFlow">[m³/s] Flow at zero head, if it is published apart from the points.</param>
    /// <param name="ratedPower">[W] Electrical power taken as constant, or null to use the points' own.</param>
    /// <returns>The curve, or every fault found.</returns>
    public static PumpCurveReading Read(
        IEnumerable<PumpPoint> points,
        double? shutOffHead = null,
        double? openFlow = null,
        double? ratedPower = null
    )
    {
        ArgumentNullException.ThrowIfNull(points);
        var all = points.ToList();
        var faults = new List<string>();
        foreach (var p in all)
        {
            CheckPoint(p, faults);
        }

        if (shutOffHead is { } head && Check(head > 0 && double.IsFinite(head), "shut-off head", head, faults))
        {
            AddEnd(all, new PumpPoint(0, head), faults);
        }

        if (openFlow is { } flow && Check(flow > 0 && double.IsFinite(flow), "open flow", flow, faults))
        {
            AddEnd(all, new PumpPoint(flow, 0), faults);
        }

        if (ratedPower is { } watts)
        {
            Check(watts > 0 && double.IsFinite(watts), "rated power", watts, faults);
        }

        if (faults.Count == 0)
        {
            CheckOrder(all, faults);
        }

        return faults.Count > 0
            ? new PumpCurveReading(null, faults)
            : new PumpCurveReading(new PumpCurve(all, ratedPower), faults);
    }

    /// <summary>Head the pump gives at a flow.</summary>
    /// <remarks>The interpolation described at the type. Holds from 0 to <see cref="LargestFlow"/>.</remarks>
    /// <param name="flow">[m³/s] Flow within the curve.</param>
    /// <returns>[m] Head.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The flow lies outside the curve.</exception>
    public double Head(double flow) => At(flow).Head;

    /// <summary>Head at a flow, and the slope of the curve there.</summary>
    /// <remarks>The slope is dH/dQ and never positive.</remarks>
    /// <param name="flow">[m³/s] Flow within the curve.</param>
    /// <returns>[m], [s/m²] Head and its derivative by flow.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The flow lies outside the curve.</exception>
    public (double Head, double Slope) At(double flow)
    {
        Guard.Between(flow, 0, LargestFlow);
        if (_head is not null)
        {
            // The spline's own rounding can leave a slope of +1e-17 on a flat stretch.
            return (_head.Interpolate(flow), Math.Min(0, _head.Differentiate(flow)));
        }

        var part = flow / LargestFlow;
        var fall = ShutOffHead - LowestHead;
        return _parabola
            ? (ShutOffHead - fall * part * part, -2 * fall * part / LargestFlow)
            : (ShutOffHead - fall * part, -fall / LargestFlow);
    }

    /// <summary>Power handed to the water at a flow.</summary>
    /// <remarks>P = γ Q H.</remarks>
    /// <param name="flow">[m³/s] Flow within the curve.</param>
    /// <param name="specificWeight">[N/m³] Specific weight of the water, greater than 0.</param>
    /// <returns>[W] Hydraulic power.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The flow lies outside the curve, or the weight is not positive.</exception>
    public double HydraulicPower(double flow, double specificWeight)
    {
        Guard.Positive(specificWeight);
        return specificWeight * flow * Head(flow);
    }

    /// <summary>Electrical power drawn at a flow.</summary>
    /// <remarks>The rated power, or a straight line between the powers of the neighbouring points.</remarks>
    /// <param name="flow">[m³/s] Flow within the curve.</param>
    /// <returns>[W] Electrical power, or null when no power was given.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The flow lies outside the curve.</exception>
    public double? InputPower(double flow)
    {
        Guard.Between(flow, 0, LargestFlow);
        return _power is not null ? _power.Interpolate(flow) : RatedPower;
    }

    /// <summary>The same pump at another speed, by the affinity laws.</summary>
    /// <remarks>
    /// Q ∝ n, H ∝ n², P ∝ n³, for equal efficiency. Holds for moderate changes, roughly half to one and a half of the
    /// speed. Source: common to all pump texts, e.g. Crane TP-410, ex. 7-33.
    /// </remarks>
    /// <param name="ratio">[-] New speed over the old, greater than 0.</param>
    /// <returns>The curve at the new speed.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The ratio is not positive.</exception>
    public PumpCurve AtSpeed(double ratio)
    {
        Guard.Positive(ratio);
        var cube = ratio * ratio * ratio;
        var scaled = Points
            .Select(p => new PumpPoint(p.Flow * ratio, p.Head * ratio * ratio, p.InputPower * cube))
            .ToArray();
        return new PumpCurve(scaled, RatedPower * cube);
    }

    private static void CheckPoint(PumpPoint p, List<string> faults)
    {
        Check(p.Flow >= 0 && double.IsFinite(p.Flow), "flow of a point", p.Flow, faults);
        Check(p.Head >= 0 && double.IsFinite(p.Head), "head of a point", p.Head, faults);
        if (p.InputPower is { } power)
        {
            Check(power > 0 && double.IsFinite(power), "input power of a point", power, faults);
        }
    }

    private static bool Check(bool good, string what, double value, List<string> faults)
    {
        if (!good)
        {
            faults.Add(string.Create(CultureInfo.InvariantCulture, $"The pump's {what} is not possible: {value}."));
        }

        return good;
    }

    private static void AddEnd(List<PumpPoint> all, PumpPoint end, List<string> faults)
    {
        var same = all.FindIndex(p => p.Flow == end.Flow);
        if (same < 0)
        {
            all.Add(end with { InputPower = NearestPower(all, end.Flow) });
        }
        else if (all[same].Head != end.Head)
        {
            faults.Add(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The pump's head at {end.Flow} m³/s is given twice: {all[same].Head} m and {end.Head} m."
                )
            );
        }
    }

    // An end that is published without watts takes those of the nearest point; without any, none.
    private static double? NearestPower(List<PumpPoint> all, double flow) =>
        all.Count == 0 ? null : all.MinBy(p => Math.Abs(p.Flow - flow)).InputPower;

    private static void CheckOrder(List<PumpPoint> all, List<string> faults)
    {
        all.Sort((a, b) => a.Flow.CompareTo(b.Flow));
        if (all.Count < 2)
        {
            faults.Add("A pump curve needs at least two points, or a shut-off head and an open flow.");
            return;
        }

        if (all[0].Flow > 0)
        {
            faults.Add("The pump curve has no shut-off point: give the head at zero flow.");
        }

        if (!(all[0].Head > 0))
        {
            faults.Add("The pump's shut-off head must be greater than zero.");
        }

        for (var i = 1; i < all.Count; i++)
        {
            if (all[i].Flow == all[i - 1].Flow)
            {
                faults.Add(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"The pump curve has two points at a flow of {all[i].Flow} m³/s."
                    )
                );
            }
            else if (all[i].Head > all[i - 1].Head)
            {
                faults.Add(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"The pump curve rises from {all[i - 1].Head} m to {all[i].Head} m between {all[i - 1].Flow} and {all[i].Flow} m³/s; head must fall as flow grows."
                    )
                );
            }
        }
    }
}
