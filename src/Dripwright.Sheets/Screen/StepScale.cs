using System.Globalization;
using Dripwright.Engine;
using Dripwright.Engine.Units;
using Dripwright.Language;
using Dripwright.Sheets.Plots;

namespace Dripwright.Sheets.Screen;

/// <summary>The values behind the colours: six equal steps with round edges.</summary>
/// <param name="Title">What is coloured, with its unit: "Flow to each pot, L/h".</param>
/// <param name="Unit">The unit alone.</param>
/// <param name="Edges">Seven edges of the six steps, rising, in that unit; empty where no pot gets water.</param>
public sealed record StepScale(string Title, string Unit, IReadOnlyList<double> Edges)
{
    /// <summary>Steps of the scale.</summary>
    public const int Steps = 6;

    private ScreenColour Colour { get; init; }

    private PlotUnits Units { get; init; } = new(us: false);

    /// <summary>The scale of a plan; null where nothing is coloured.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="colour">What the colour says.</param>
    /// <param name="units">Units to show; those of the rig where null.</param>
    public static StepScale? Of(Plan plan, ScreenColour colour, UnitSystem? units = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        if (colour is ScreenColour.None or ScreenColour.Load)
        {
            return null;
        }

        var us = (units ?? plan.Rig.Units) == UnitSystem.Us;
        var flow = colour == ScreenColour.Flow;
        var unit = (flow, us) switch
        {
            (true, true) => "gph",
            (true, false) => "L/h",
            (false, true) => "psi",
            _ => "kPa",
        };
        var scale = new StepScale(Words.Of(flow ? "screen.scale.flow" : "screen.scale.pressure", unit), unit, [])
        {
            Colour = colour,
            Units = new(us),
        };
        var values = plan
            .Feed.Pots.Select(p => scale.Value(p.Flow, p.Pressure))
            .Where(v => v is not null)
            .Select(v => v!.Value)
            .ToList();
        return values.Count == 0 ? scale : scale with { Edges = EdgesOf(values.Min(), values.Max()) };
    }

    /// <summary>The value of a pot in the unit; null where it gets no water.</summary>
    /// <param name="flow">[m³/s] Flow.</param>
    /// <param name="pressure">[Pa] Pressure at its emitters.</param>
    public double? Value(double flow, double pressure) =>
        flow <= 0 ? null
        : Colour == ScreenColour.Flow ? Units.Flow(flow)
        : Units.Pressure(pressure);

    /// <summary>The step of a value, from 1 to 6; 0 for no water.</summary>
    /// <param name="value">[-] In the unit of the scale.</param>
    public int StepOf(double? value) =>
        value is not { } known || Edges.Count == 0
            ? 0
            : Math.Clamp((int)Math.Floor((known - Edges[0]) / (Edges[1] - Edges[0]) + 1e-9) + 1, 1, Steps);

    /// <summary>A value as it is written in a pot or at an edge.</summary>
    /// <param name="value">[-] In the unit of the scale.</param>
    public string Text(double value) => value.ToString(Format, CultureInfo.InvariantCulture);

    private string Format
    {
        get
        {
            var step = Edges.Count > 1 ? Edges[1] - Edges[0] : 1;
            // Half steps such as 0.25 need one more digit than their size says.
            var digits = Math.Max(0, -(int)Math.Floor(Math.Log10(step) + 1e-9));
            return "F"
                + (IsRound(step * Math.Pow(10, digits)) ? digits : digits + 1).ToString(CultureInfo.InvariantCulture);
        }
    }

    private static bool IsRound(double value) => Math.Abs(value - Math.Round(value)) < 1e-6;

    // An even rig must not look uneven: the scale is never narrower than a tenth of its values.
    private static List<double> EdgesOf(double low, double high)
    {
        var least = Math.Max(high - low, Math.Max(Math.Abs(low), Math.Abs(high)) / 10);
        var middle = (low + high) / 2;
        var power = Math.Pow(10, Math.Floor(Math.Log10(Math.Max(least, 1e-12) / Steps)));
        foreach (var step in new[] { 1, 2, 2.5, 5, 10, 20, 25, 50 }.Select(n => n * power))
        {
            var first = Math.Round((middle / step) - (Steps / 2.0));
            // Water never runs backwards out of an emitter: a scale of flows does not start under 0.
            first = low >= 0 ? Math.Max(first, 0) : first;
            if (
                step * Steps >= least * (1 - 1e-9)
                && first * step <= low + (step * 1e-9)
                && (first + Steps) * step >= high - (step * 1e-9)
            )
            {
                return [.. Enumerable.Range(0, Steps + 1).Select(i => (double)(decimal)((first + i) * step))];
            }
        }

        throw new ArgumentOutOfRangeException(nameof(high), high, "No round steps cover the values.");
    }
}
