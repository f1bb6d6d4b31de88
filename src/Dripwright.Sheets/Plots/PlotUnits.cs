using Dripwright.Sheets.Drawing;

namespace Dripwright.Sheets.Plots;

/// <summary>SI values as numbers on an axis of the rig's units.</summary>
internal sealed class PlotUnits(bool us)
{
    public Axis FlowAxis { get; } = new(us ? "Flow, gph" : "Flow, L/h");

    public Axis HeadAxis { get; } = new(us ? "Head, ft" : "Head, m");

    public Axis PressureAxis { get; } = new(us ? "Pressure, psi" : "Pressure, kPa");

    public Axis WayAxis { get; } = new(us ? "From the row's left end, ft" : "From the row's left end, m");

    public Axis HeightAxis { get; } = new(us ? "Height over the lowest point, in" : "Height over the lowest point, mm");

    public double Flow(double si) => us ? si * 3600 / 3.785411784e-3 : si * 3.6e6;

    public double Head(double si) => us ? si / 0.3048 : si;

    public double Pressure(double si) => us ? si / 6894.757293168 : si / 1000;

    public double Way(double si) => us ? si / 0.3048 : si;

    public double Height(double si) => us ? si / 0.0254 : si * 1000;
}
