using Dripwright.Language;
using Dripwright.Sheets.Drawing;

namespace Dripwright.Sheets.Plots;

/// <summary>SI values as numbers on an axis of one system of units.</summary>
internal sealed class PlotUnits(bool us)
{
    public string FlowUnit { get; } = us ? "gph" : "L/h";

    public string HeadUnit { get; } = us ? "ft" : "m";

    public string PressureUnit { get; } = us ? "psi" : "kPa";

    public string WayUnit { get; } = us ? "ft" : "m";

    public string HeightUnit { get; } = us ? "in" : "mm";

    public Axis FlowAxis => new(Words.Of("plot.axis.flow", FlowUnit));

    public Axis HeadAxis => new(Words.Of("plot.axis.head", HeadUnit));

    public Axis PressureAxis => new(Words.Of("plot.axis.pressure", PressureUnit));

    public Axis WayAxis => new(Words.Of("plot.axis.way", WayUnit));

    public Axis HeightAxis => new(Words.Of("plot.axis.height", HeightUnit));

    public double Flow(double si) => us ? si * 3600 / 3.785411784e-3 : si * 3.6e6;

    public double Head(double si) => us ? si / 0.3048 : si;

    public double Pressure(double si) => us ? si / 6894.757293168 : si / 1000;

    public double Way(double si) => us ? si / 0.3048 : si;

    public double Height(double si) => us ? si / 0.0254 : si * 1000;
}
