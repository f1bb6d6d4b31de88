using System.Globalization;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Findings;

/// <summary>Collects findings and prints their values in the rig's units.</summary>
internal sealed class Judgement(UnitSystem units)
{
    private readonly List<Finding> _findings = [];

    /// <summary>What was found, the gravest first; among equals in the order found.</summary>
    /// <remarks>What is said in the same words of several places is said once, with all the places.</remarks>
    public IReadOnlyList<Finding> Findings =>
        [
            .. _findings
                .GroupBy(f => (f.Rule, f.What, f.Value, f.Limit, f.Remedy))
                .Select(same => same.First() with { Place = Together([.. same.Select(f => f.Place).Distinct()]) })
                .OrderBy(f => f.Level),
        ];

    /// <summary>Adds a finding under a rule of the book.</summary>
    public void Add(string rule, string place, string field, string what, string value, string limit, string remedy)
    {
        Rule from = RuleBook.Rules[rule];
        _findings.Add(new Finding(rule, from.Level, place, field, what, value, limit, remedy, from.Source));
    }

    /// <summary>Adds what was found elsewhere under rules of the book.</summary>
    public void Add(IEnumerable<Finding> findings) => _findings.AddRange(findings);

    public string Length(double metres) => QuantityText.Format(Dimension.Length, metres, units);

    /// <summary>A shift to mark: rounded up to the next sixteenth of an inch or millimetre, so that what is read still cures.</summary>
    public string Shift(double metres)
    {
        double step = units == UnitSystem.Us ? 0.0254 / 16 : 0.001;
        return QuantityText.Mark(Math.Ceiling((metres / step) - 1e-9) * step, units);
    }

    public string Force(double newtons) => QuantityText.Format(Dimension.Force, newtons, units);

    public string Mass(double kilograms) =>
        units == UnitSystem.Us
            ? string.Create(CultureInfo.InvariantCulture, $"{kilograms / 0.45359237:0} lb")
            : string.Create(CultureInfo.InvariantCulture, $"{kilograms:0} kg");

    public string Volume(double cubicMetres) => QuantityText.Format(Dimension.Volume, cubicMetres, units);

    public string Flow(double flow) => QuantityText.Format(Dimension.Flow, flow, units);

    public string Pressure(double pascals) => QuantityText.Format(Dimension.Pressure, pascals, units);

    public string Slope(double slope) => QuantityText.Format(Dimension.Slope, slope, units);

    public string Share(double share) => QuantityText.Format(Dimension.Share, share, units);

    public string Time(double seconds) => QuantityText.Format(Dimension.Duration, seconds, units);

    public string Temperature(double kelvin) => QuantityText.Format(Dimension.Temperature, kelvin, units);

    public string Power(double watts) => QuantityText.Format(Dimension.Power, watts, units);

    public string Velocity(double metresPerSecond) =>
        units == UnitSystem.Us
            ? string.Create(CultureInfo.InvariantCulture, $"{metresPerSecond / 0.3048:0.##} ft/s")
            : string.Create(CultureInfo.InvariantCulture, $"{metresPerSecond:0.##} m/s");

    public static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);

    public static string Count(int value) => value.ToString(CultureInfo.InvariantCulture);

    /// <summary>"1, 2, 5-9": a list of numbers as short as it goes.</summary>
    public static string Numbers(IEnumerable<int> numbers)
    {
        List<string> parts = [];
        int? first = null;
        int last = 0;
        foreach (int n in numbers.Order())
        {
            if (first is { } start && n == last + 1)
            {
                last = n;
                continue;
            }

            if (first is { } from)
            {
                parts.Add(Span(from, last));
            }

            first = n;
            last = n;
        }

        if (first is { } open)
        {
            parts.Add(Span(open, last));
        }

        return string.Join(", ", parts);
    }

    private const int MostPlaces = 6;

    private static string Together(IReadOnlyList<string> places)
    {
        if (places.Count == 1)
        {
            return places[0];
        }

        const string row = "row ";
        if (
            places.All(p =>
                p.StartsWith(row, StringComparison.Ordinal)
                && int.TryParse(p[row.Length..], CultureInfo.InvariantCulture, out _)
            )
        )
        {
            return $"rows {Numbers(places.Select(p => int.Parse(p[row.Length..], CultureInfo.InvariantCulture)))}";
        }

        string first = string.Join("; ", places.Take(MostPlaces));
        return places.Count > MostPlaces ? $"{first}; and {Count(places.Count - MostPlaces)} more" : first;
    }

    private static string Span(int from, int to) => from == to ? Count(from) : $"{Count(from)}-{Count(to)}";
}
