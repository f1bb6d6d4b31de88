using System.Runtime.InteropServices;
using Dripwright.Engine.Physics;

namespace Dripwright.Engine.Water;

/// <summary>
/// A channel's cross-section. Over its height the "depth" is the pressure head over the invert and the geometry that
/// of the full section, so that a running-full reach is the same calculation.
/// </summary>
internal interface IFlowSection
{
    /// <summary>[m] Inside height; infinite for an open channel.</summary>
    double Height { get; }

    SectionGeometry At(double depth);

    /// <summary>[m³] First moment of the area about the water surface.</summary>
    double SurfaceMoment(double depth);

    /// <summary>[m] Depth of least energy at a flow.</summary>
    double CriticalDepth(double flow);

    /// <summary>[m^(8/3)] A R^(2/3): flow at Manning's n 1 and slope 1. Must not fall as depth grows.</summary>
    double Conveyance(in SectionGeometry geometry, double depth);
}

/// <summary>A round pipe.</summary>
/// <remarks>
/// Between 0.82 D and full a round pipe would carry up to 7.6 % more than full. That gain is not counted on: it is
/// unsteady (the pipe slams full), and without it friction never grows with depth, which gives one water surface only.
/// </remarks>
[StructLayout(LayoutKind.Auto)]
internal readonly struct RoundSection : IFlowSection
{
    private readonly double _diameter;
    private readonly SectionGeometry _full;
    private readonly double _fullConveyance;

    public RoundSection(double diameter)
    {
        _diameter = diameter;
        _full = CircularSection.At(diameter, diameter);
        _fullConveyance = _full.Area * TwoThirds(_full.Area / _full.Perimeter);
    }

    public double Height => _diameter;

    public SectionGeometry At(double depth) =>
        depth >= _diameter ? _full : CircularSection.At(Math.Max(depth, 0), _diameter);

    public double SurfaceMoment(double depth) =>
        depth >= _diameter
            ? _full.Area * (depth - _diameter / 2)
            : CircularSection.SurfaceMoment(Math.Max(depth, 0), _diameter);

    public double CriticalDepth(double flow) => PartlyFullPipe.CriticalDepth(flow, _diameter);

    public double Conveyance(in SectionGeometry geometry, double depth) =>
        depth >= 0.8 * _diameter
            ? Math.Min(_fullConveyance, geometry.Area * TwoThirds(geometry.Area / geometry.Perimeter))
            : geometry.Area * TwoThirds(geometry.Area / geometry.Perimeter);

    private static double TwoThirds(double value)
    {
        var root = Math.Cbrt(value);
        return root * root;
    }
}
