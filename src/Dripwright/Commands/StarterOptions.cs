using System.CommandLine;
using System.Globalization;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;
using Dripwright.Language;

namespace Dripwright.Commands;

/// <summary>The answers from which a starter file is made: given as options, or asked for.</summary>
internal sealed class StarterOptions
{
    private const int MostPots = 5000;
    private const int MostRows = 100;

    private readonly Option<string?> _name = new("--name")
    {
        Description = Words.Of("program.start.name"),
        HelpName = Words.Of("program.name.text"),
    };

    private readonly Option<string?> _units = new("--units")
    {
        Description = Words.Of("program.start.units"),
        HelpName = Words.Of("program.name.system"),
    };

    private readonly Option<int?> _rows = new("--rows")
    {
        Description = Words.Of("program.start.rows"),
        HelpName = Words.Of("program.name.count"),
    };

    private readonly Option<int?> _pots = new("--pots")
    {
        Description = Words.Of("program.start.pots"),
        HelpName = Words.Of("program.name.count"),
    };

    private readonly Option<string?> _spacing = new("--spacing")
    {
        Description = Words.Of("program.start.spacing"),
        HelpName = Words.Of("program.name.length"),
    };

    private readonly Option<bool?> _staggered = new("--staggered")
    {
        Description = Words.Of("program.start.staggered"),
    };

    private readonly Option<string?> _crop = new("--crop")
    {
        Description = Words.Of("program.start.crop"),
        HelpName = Words.Of("program.name.text"),
    };

    private readonly Option<bool?> _gravity = new("--gravity") { Description = Words.Of("program.start.gravity") };

    public StarterOptions()
    {
        _units.OneOf("us", "metric");
        _spacing.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<string?>() is { } text && LengthFault(text) is { } fault)
            {
                result.Refuse(Words.Of("program.option.wrong", "--spacing", text, fault));
            }
        });
        Between(_rows, MostRows);
        Between(_pots, MostPots);
    }

    public void AddTo(Command command)
    {
        foreach (var option in new Option[] { _name, _units, _rows, _pots, _spacing, _staggered, _crop, _gravity })
        {
            command.Add(option);
        }
    }

    /// <summary>The answers; what no option gives is asked where there is someone to ask, and assumed otherwise.</summary>
    public StarterAnswers Read(ParseResult call, Questions? ask)
    {
        var usual = new StarterAnswers();
        var name = call.GetValue(_name) ?? ask?.Text(Words.Of("program.ask.name"), usual.Name) ?? usual.Name;
        var units = call.GetValue(_units) ?? ask?.OneOf(Words.Of("program.ask.units"), "us", "us", "metric") ?? "us";
        var metric = units == "metric";
        var rows =
            call.GetValue(_rows) ?? ask?.Number(Words.Of("program.ask.rows"), usual.Rows, MostRows) ?? usual.Rows;
        var pots =
            call.GetValue(_pots) ?? ask?.Number(Words.Of("program.ask.pots"), usual.Pots, MostPots) ?? usual.Pots;
        var spacing =
            call.GetValue(_spacing)
            ?? ask?.Checked(Words.Of("program.ask.spacing"), metric ? "30 cm" : "12 in", LengthFault);
        var staggered = call.GetValue(_staggered) ?? ask?.Yes(Words.Of("program.ask.staggered")) ?? false;
        var crop = call.GetValue(_crop) ?? ask?.Text(Words.Of("program.ask.crop"), usual.Crop) ?? usual.Crop;
        var gravity = call.GetValue(_gravity) ?? ask?.Yes(Words.Of("program.ask.gravity")) ?? false;
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
        return reading.Value is null ? new PlanWords(UnitSystem.Metric).Of(reading.Expected()) : null;
    }

    private static void Between(Option<int?> option, int most) =>
        option.Validators.Add(result =>
        {
            if (result.Tokens is [{ Value: var word }] && !IsCount(word, most))
            {
                result.Refuse(Words.Of("program.option.wrong", option.Name, word, Words.Of("program.ask.whole", most)));
            }
        });

    /// <summary>Whether a word is a count from 1 to the most.</summary>
    public static bool IsCount(string word, int most) =>
        int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
        && number >= 1
        && number <= most;
}
