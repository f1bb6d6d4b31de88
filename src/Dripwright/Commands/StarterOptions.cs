using System.CommandLine;
using System.Globalization;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;

namespace Dripwright.Commands;

/// <summary>The answers from which a starter file is made: given as options, or asked for.</summary>
internal sealed class StarterOptions
{
    private const int MostPots = 5000;
    private const int MostRows = 100;

    private readonly Option<string?> _name = new("--name") { Description = "Name of the rig.", HelpName = "text" };

    private readonly Option<string?> _units = new("--units")
    {
        Description = "Units to show: us or metric.",
        HelpName = "system",
    };

    private readonly Option<int?> _rows = new("--rows") { Description = "How many rows.", HelpName = "count" };

    private readonly Option<int?> _pots = new("--pots")
    {
        Description = "How many pots in each row.",
        HelpName = "count",
    };

    private readonly Option<string?> _spacing = new("--spacing")
    {
        Description = "Distance from pot centre to pot centre, such as \"12 in\" or \"30 cm\".",
        HelpName = "length",
    };

    private readonly Option<bool?> _staggered = new("--staggered")
    {
        Description = "Every second pot set back, in two lines.",
    };

    private readonly Option<string?> _crop = new("--crop")
    {
        Description = "What grows in the pots.",
        HelpName = "text",
    };

    private readonly Option<bool?> _gravity = new("--gravity")
    {
        Description = "Fed by gravity from a raised reservoir, without a pump.",
    };

    public StarterOptions()
    {
        _units.AcceptOnlyFromAmong("us", "metric");
        _spacing.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<string?>() is { } text && LengthFault(text) is { } fault)
            {
                result.AddError($"Option '--spacing': found \"{text}\"; expected {fault}.");
            }
        });
        Between(_rows, MostRows);
        Between(_pots, MostPots);
    }

    public void AddTo(Command command)
    {
        foreach (Option option in new Option[] { _name, _units, _rows, _pots, _spacing, _staggered, _crop, _gravity })
        {
            command.Add(option);
        }
    }

    /// <summary>The answers; what no option gives is asked where there is someone to ask, and assumed otherwise.</summary>
    public StarterAnswers Read(ParseResult call, Questions? ask)
    {
        var usual = new StarterAnswers();
        var name = call.GetValue(_name) ?? ask?.Text("What do you call the rig?", usual.Name) ?? usual.Name;
        var units = call.GetValue(_units) ?? ask?.OneOf("Units: us or metric?", "us", "us", "metric") ?? "us";
        var metric = units == "metric";
        var rows = call.GetValue(_rows) ?? ask?.Number("How many rows?", usual.Rows, MostRows) ?? usual.Rows;
        var pots = call.GetValue(_pots) ?? ask?.Number("Pots in each row?", usual.Pots, MostPots) ?? usual.Pots;
        var spacing =
            call.GetValue(_spacing)
            ?? ask?.Checked("Distance from pot centre to pot centre?", metric ? "30 cm" : "12 in", LengthFault);
        var staggered = call.GetValue(_staggered) ?? ask?.Yes("Staggered in two lines?") ?? false;
        var crop = call.GetValue(_crop) ?? ask?.Text("What grows in the pots?", usual.Crop) ?? usual.Crop;
        var gravity = call.GetValue(_gravity) ?? ask?.Yes("Gravity feed, without a pump?") ?? false;
        return new StarterAnswers(
            name,
            metric ? UnitSystem.Metric : UnitSystem.Us,
            rows,
            pots,
            spacing is null ? null : QuantityText.Read(Dimension.Length, spacing).Value,
            staggered ? Arrangement.Staggered : Arrangement.Single,
            crop,
            gravity
        );
    }

    private static string? LengthFault(string text)
    {
        var reading = QuantityText.Read(Dimension.Length, text);
        return reading.Value is null ? reading.Expected : null;
    }

    private static void Between(Option<int?> option, int most) =>
        option.Validators.Add(result =>
        {
            if (result.Tokens is [{ Value: var word }] && !IsCount(word, most))
            {
                result.AddError(
                    $"Option '{option.Name}': found \"{word}\"; expected a whole number from 1 to "
                        + $"{most.ToString(CultureInfo.InvariantCulture)}."
                );
            }
        });

    /// <summary>Whether a word is a count from 1 to the most.</summary>
    public static bool IsCount(string word, int most) =>
        int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
        && number >= 1
        && number <= most;
}
