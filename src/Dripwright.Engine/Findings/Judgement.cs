using System.Globalization;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Findings;

/// <summary>Collects findings; their values are worded in the rig's units.</summary>
internal sealed class Judgement(UnitSystem units)
{
    private readonly List<Finding> _findings = [];

    /// <summary>Values and limits in the rig's units.</summary>
    public QuantityWords Words { get; } = new(units);

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
            return $"rows {QuantityWords.Numbers(places.Select(p => int.Parse(p[row.Length..], CultureInfo.InvariantCulture)))}";
        }

        string first = string.Join("; ", places.Take(MostPlaces));
        return places.Count > MostPlaces
            ? $"{first}; and {QuantityWords.Count(places.Count - MostPlaces)} more"
            : first;
    }
}
