using System.Globalization;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Chemistry.Waters;
using Dripwright.Engine.Files;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Rigs;

/// <summary>What the texts of the nutrients section must be, and waters that cannot be.</summary>
internal static class NutrientChecks
{
    // [mol/m³] Ten times what any feed holds of an element.
    private const double MostWanted = 100;

    /// <summary>The analysis as read; lines that cannot be read are left out.</summary>
    public static WaterAnalysis Analysis(NutrientWater water)
    {
        var values = new List<ReportedValue>();
        foreach (var (field, text) in NutrientText.Lines(water))
        {
            if (text is not null && NutrientText.Read(field, text).Value is { } value)
            {
                values.Add(value);
            }
        }
        if (water.Conductivity is { } conductivity)
        {
            values.Add(ReportedValue.Conductivity(conductivity * 10));
        }
        if (water.Ph is { } ph)
        {
            values.Add(ReportedValue.PH(ph));
        }
        return WaterAnalysis.Of(values);
    }

    /// <summary>[mol/m³] The grower's own amounts; lines that cannot be read are left out.</summary>
    public static IEnumerable<(Constituent Constituent, double Amount)> Wanted(NutrientWanted wanted) =>
        NutrientText
            .Lines(wanted)
            .Where(line => line.Text is not null)
            .Select(line => Wanted(line.Field, line.Text!).Value)
            .OfType<ReportedValue>()
            .Select(value => (value.Constituent, value.Value));

    private static ReportedReading Wanted(string field, string text)
    {
        var reading = NutrientText.Read(field, text);
        return reading.Value is { Value: > MostWanted or < 0 }
            ? new(null, Phrase.Of("fault.feed-amount", Measured.Millimoles(MostWanted)))
            : reading;
    }

    public static void All(NutrientMix mix, Action<string, Phrase, Phrase> say)
    {
        foreach (var (field, text) in NutrientText.Lines(mix.Wanted))
        {
            if (text is not null && Wanted(field, text) is { Value: null, Expected: var expected })
            {
                say($"nutrients.wanted.{field}", FaultList.Quote(text), expected);
            }
        }
        foreach (var (index, bag) in mix.Bags.Index())
        {
            if (BagLabel.Fault(bag) is { } expected)
            {
                say(
                    string.Create(CultureInfo.InvariantCulture, $"nutrients.bags[{index}]"),
                    FaultList.Quote(bag.Name),
                    expected
                );
            }
        }
        var readable = true;
        foreach (var (field, text) in NutrientText.Lines(mix.Water))
        {
            if (text is not null && NutrientText.Read(field, text) is { Value: null, Expected: var expected })
            {
                say($"nutrients.water.{field}", FaultList.Quote(text), expected);
                readable = false;
            }
        }
        if (!readable)
        {
            return;
        }
        foreach (var fault in WaterCheck.Read(Analysis(mix.Water)).Faults)
        {
            say(fault.Field, fault.Found, Phrase.Of("fault.water.expected", fault.Why, fault.Remedy));
        }
    }
}
