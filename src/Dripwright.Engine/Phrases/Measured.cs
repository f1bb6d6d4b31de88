using System.Runtime.InteropServices;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Phrases;

/// <summary>How a measured value is told, where its dimension alone does not decide it.</summary>
public enum MeasuredForm
{
    /// <summary>As its dimension is told: a length as "6 ft 2 1/2 in" or "1.89 m".</summary>
    Plain,

    /// <summary>A distance to mark with a pencil: sixteenths of an inch or whole millimetres.</summary>
    Mark,

    /// <summary>A shift to mark, rounded up so that what is read still cures.</summary>
    Shift,

    /// <summary>A small length that nobody marks: a drill, the width of a saw cut.</summary>
    Size,

    /// <summary>Head, in feet or metres with decimals.</summary>
    Head,

    /// <summary>A velocity; its SI value is in m/s.</summary>
    Velocity,

    /// <summary>A share in whole per cent.</summary>
    Percent,

    /// <summary>A bare number with at most two decimals.</summary>
    Number,

    /// <summary>A concentration in mg/L; its SI value is in kg/m³.</summary>
    Concentration,

    /// <summary>A pH, told with one decimal.</summary>
    PH,

    /// <summary>The EC of a solution as a meter shows it: dS/m with two decimals.</summary>
    Ec,

    /// <summary>What is weighed, in grams to the step of the scale.</summary>
    Weighed,

    /// <summary>What is measured out of a bottle or a stock tank, in millilitres: one decimal below ten.</summary>
    MeasuredOut,

    /// <summary>A concentration in mmol/L; its SI value is in mol/m³, the same number.</summary>
    Millimoles,

    /// <summary>A concentration of charge in meq/L; its SI value is in mol/m³ of charge, the same number.</summary>
    Milliequivalents,

    /// <summary>A concentration in g/L; its SI value is in kg/m³, the same number.</summary>
    GramsPerLitre,

    /// <summary>Days, with one decimal.</summary>
    Days,

    /// <summary>A difference of temperature that comes about in a day.</summary>
    Warming,

    /// <summary>A load spread on a floor, as a builder says it: pounds on a square foot, kilograms on a square metre.</summary>
    FloorLoad,

    /// <summary>An opening that grains pass, in micrometres in either system.</summary>
    Opening,

    /// <summary>The size that a tool is marked with: a fraction of an inch where it is one, else decimals; or millimetres.</summary>
    Tool,

    /// <summary>A small length in millimetres in either system, as makers of printers and plastics say it.</summary>
    Millimetres,

    /// <summary>A force in newtons in either system.</summary>
    Newtons,

    /// <summary>A bending moment in newton metres in either system; its SI value is in N m.</summary>
    NewtonMetres,

    /// <summary>A temperature in degrees Celsius in either system.</summary>
    Celsius,

    /// <summary>An angle in degrees; its SI value is in radians.</summary>
    Degrees,
}

/// <summary>A value with its dimension, told in the reader's units only at the edge.</summary>
/// <param name="Dimension">What it measures.</param>
/// <param name="Value">[SI] The value in the dimension's SI unit.</param>
/// <param name="Form">How it is told.</param>
/// <param name="Step">[SI] The step it can be told to, such as that of a scale; 0 where the form decides.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct Measured(
    Dimension Dimension,
    double Value,
    MeasuredForm Form = MeasuredForm.Plain,
    double Step = 0
)
{
    /// <summary>A length.</summary>
    /// <param name="metres">[m] The length.</param>
    public static Measured Length(double metres) => new(Dimension.Length, metres);

    /// <summary>A distance to mark.</summary>
    /// <param name="metres">[m] The distance.</param>
    public static Measured Mark(double metres) => new(Dimension.Length, metres, MeasuredForm.Mark);

    /// <summary>A shift to mark, rounded up.</summary>
    /// <param name="metres">[m] The shift.</param>
    public static Measured Shift(double metres) => new(Dimension.Length, metres, MeasuredForm.Shift);

    /// <summary>A small length that nobody marks.</summary>
    /// <param name="metres">[m] The length.</param>
    public static Measured Size(double metres) => new(Dimension.Length, metres, MeasuredForm.Size);

    /// <summary>Head.</summary>
    /// <param name="metres">[m] The head.</param>
    public static Measured Head(double metres) => new(Dimension.Length, metres, MeasuredForm.Head);

    /// <summary>A volume.</summary>
    /// <param name="cubicMetres">[m³] The volume.</param>
    public static Measured Volume(double cubicMetres) => new(Dimension.Volume, cubicMetres);

    /// <summary>A flow.</summary>
    /// <param name="cubicMetresPerSecond">[m³/s] The flow.</param>
    public static Measured Flow(double cubicMetresPerSecond) => new(Dimension.Flow, cubicMetresPerSecond);

    /// <summary>A velocity.</summary>
    /// <param name="metresPerSecond">[m/s] The velocity.</param>
    public static Measured Velocity(double metresPerSecond) =>
        new(Dimension.Length, metresPerSecond, MeasuredForm.Velocity);

    /// <summary>A pressure.</summary>
    /// <param name="pascals">[Pa] The pressure.</param>
    public static Measured Pressure(double pascals) => new(Dimension.Pressure, pascals);

    /// <summary>A slope.</summary>
    /// <param name="ratio">[-] Fall over length.</param>
    public static Measured Slope(double ratio) => new(Dimension.Slope, ratio);

    /// <summary>A share with three figures, to hold against a limit.</summary>
    /// <param name="share">[-] The share.</param>
    public static Measured Share(double share) => new(Dimension.Share, share);

    /// <summary>A share in whole per cent.</summary>
    /// <param name="share">[-] The share.</param>
    public static Measured Percent(double share) => new(Dimension.Share, share, MeasuredForm.Percent);

    /// <summary>A force.</summary>
    /// <param name="newtons">[N] The force.</param>
    public static Measured Force(double newtons) => new(Dimension.Force, newtons);

    /// <summary>A mass.</summary>
    /// <param name="kilograms">[kg] The mass.</param>
    public static Measured Mass(double kilograms) => new(Dimension.Mass, kilograms);

    /// <summary>A power.</summary>
    /// <param name="watts">[W] The power.</param>
    public static Measured Power(double watts) => new(Dimension.Power, watts);

    /// <summary>A voltage.</summary>
    /// <param name="volts">[V] The voltage.</param>
    public static Measured Voltage(double volts) => new(Dimension.Voltage, volts);

    /// <summary>A time.</summary>
    /// <param name="seconds">[s] The time.</param>
    public static Measured Time(double seconds) => new(Dimension.Duration, seconds);

    /// <summary>A temperature.</summary>
    /// <param name="kelvin">[K] The temperature.</param>
    public static Measured Temperature(double kelvin) => new(Dimension.Temperature, kelvin);

    /// <summary>An electrical conductivity at 25 °C: the EC of a solution.</summary>
    /// <param name="siemensPerMetre">[S/m] The conductivity.</param>
    public static Measured Conductivity(double siemensPerMetre) => new(Dimension.Conductivity, siemensPerMetre);

    /// <summary>A concentration, told in mg/L.</summary>
    /// <param name="kilogramsPerCubicMetre">[kg/m³] The concentration.</param>
    public static Measured Concentration(double kilogramsPerCubicMetre) =>
        new(Dimension.Share, kilogramsPerCubicMetre, MeasuredForm.Concentration);

    /// <summary>A pH.</summary>
    /// <param name="value">[-] The pH.</param>
    public static Measured PH(double value) => new(Dimension.Share, value, MeasuredForm.PH);

    /// <summary>The EC of a solution at 25 °C, as a meter shows it.</summary>
    /// <param name="siemensPerMetre">[S/m] The conductivity.</param>
    public static Measured Ec(double siemensPerMetre) => new(Dimension.Conductivity, siemensPerMetre, MeasuredForm.Ec);

    /// <summary>What is weighed.</summary>
    /// <param name="kilograms">[kg] The mass.</param>
    /// <param name="step">[kg] Smallest step of the scale.</param>
    public static Measured Weighed(double kilograms, double step) =>
        new(Dimension.Mass, kilograms, MeasuredForm.Weighed, step);

    /// <summary>What is measured out of a bottle.</summary>
    /// <param name="cubicMetres">[m³] The volume.</param>
    public static Measured MeasuredOut(double cubicMetres) =>
        new(Dimension.Volume, cubicMetres, MeasuredForm.MeasuredOut);

    /// <summary>A concentration, told in mmol/L.</summary>
    /// <param name="concentration">[mol/m³] The concentration.</param>
    public static Measured Millimoles(double concentration) =>
        new(Dimension.Share, concentration, MeasuredForm.Millimoles);

    /// <summary>A concentration of charge, told in meq/L.</summary>
    /// <param name="charge">[mol/m³ of charge] The concentration.</param>
    public static Measured Milliequivalents(double charge) =>
        new(Dimension.Share, charge, MeasuredForm.Milliequivalents);

    /// <summary>A concentration, told in g/L.</summary>
    /// <param name="kilogramsPerCubicMetre">[kg/m³] The concentration.</param>
    public static Measured GramsPerLitre(double kilogramsPerCubicMetre) =>
        new(Dimension.Share, kilogramsPerCubicMetre, MeasuredForm.GramsPerLitre);

    /// <summary>A bare number.</summary>
    /// <param name="value">[-] The number.</param>
    public static Measured Number(double value) => new(Dimension.Share, value, MeasuredForm.Number);

    /// <summary>A time told in days.</summary>
    /// <param name="seconds">[s] The time.</param>
    public static Measured Days(double seconds) => new(Dimension.Duration, seconds, MeasuredForm.Days);

    /// <summary>A current.</summary>
    /// <param name="amperes">[A] The current.</param>
    public static Measured Current(double amperes) => new(Dimension.Current, amperes);

    /// <summary>A difference of temperature that comes about in a day.</summary>
    /// <param name="kelvins">[K] The difference.</param>
    public static Measured Warming(double kelvins) => new(Dimension.Temperature, kelvins, MeasuredForm.Warming);

    /// <summary>A load spread on a floor.</summary>
    /// <param name="pascals">[Pa] The load.</param>
    public static Measured FloorLoad(double pascals) => new(Dimension.Pressure, pascals, MeasuredForm.FloorLoad);

    /// <summary>The size of a tool.</summary>
    /// <param name="metres">[m] Its diameter.</param>
    public static Measured Tool(double metres) => new(Dimension.Length, metres, MeasuredForm.Tool);

    /// <summary>A small length in millimetres, as makers of printers and plastics say it.</summary>
    /// <param name="metres">[m] The length.</param>
    public static Measured Millimetres(double metres) => new(Dimension.Length, metres, MeasuredForm.Millimetres);

    /// <summary>A force in newtons.</summary>
    /// <param name="newtons">[N] The force.</param>
    public static Measured Newtons(double newtons) => new(Dimension.Force, newtons, MeasuredForm.Newtons);

    /// <summary>A bending moment.</summary>
    /// <param name="newtonMetres">[N m] The moment.</param>
    public static Measured NewtonMetres(double newtonMetres) =>
        new(Dimension.Force, newtonMetres, MeasuredForm.NewtonMetres);

    /// <summary>A temperature in degrees Celsius.</summary>
    /// <param name="kelvin">[K] The temperature.</param>
    public static Measured Celsius(double kelvin) => new(Dimension.Temperature, kelvin, MeasuredForm.Celsius);

    /// <summary>An angle.</summary>
    /// <param name="radians">[rad] The angle.</param>
    public static Measured Degrees(double radians) => new(Dimension.Share, radians, MeasuredForm.Degrees);

    /// <summary>An opening that grains pass.</summary>
    /// <param name="metres">[m] Its width.</param>
    public static Measured Opening(double metres) => new(Dimension.Length, metres, MeasuredForm.Opening);
}
