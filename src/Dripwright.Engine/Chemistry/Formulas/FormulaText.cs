using System.Globalization;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Chemistry.Formulas;

/// <summary>One reading of a formula's text, from left to right.</summary>
internal sealed class FormulaText(string text)
{
    private const int Longest = 120;
    private const int Deepest = 8;
    private const int MostAtoms = 10_000;

    private readonly bool _pointsAreDecimals = text.AsSpan().ContainsAny('·', '*', '•');
    private int _at;
    private FormulaFault? _fault;

    public FormulaReading Read()
    {
        if (text.Length > Longest)
        {
            return new(
                null,
                new(Longest + 1, Phrase.Of("formula.long.found"), Phrase.Of("formula.long.expected", Longest))
            );
        }
        var sum = new Sum();
        do
        {
            Part(sum);
        } while (_fault is null && Separator());
        if (_fault is null && _at < text.Length)
        {
            Wrong(Phrase.Of("formula.next"));
        }
        if (_fault is null && sum.Atoms.Values.Any(count => count > MostAtoms))
        {
            _fault = new(1, Phrase.Of("formula.many.found"), Phrase.Of("formula.many.expected", MostAtoms));
        }
        return _fault is null ? new(new Formula(text, sum.Atoms, sum.Groups), null) : new(null, _fault);
    }

    /// <summary>What one bracket or part adds up to.</summary>
    private sealed class Sum
    {
        public Dictionary<string, double> Atoms { get; } = new(StringComparer.Ordinal);

        public Dictionary<AtomGroup, double> Groups { get; } = [];

        public void Add(Sum other, double times)
        {
            foreach (var (symbol, count) in other.Atoms)
            {
                Atoms[symbol] = Atoms.GetValueOrDefault(symbol) + count * times;
            }
            foreach (var (group, count) in other.Groups)
            {
                Groups[group] = Groups.GetValueOrDefault(group) + count * times;
            }
        }
    }

    private char Here => _at < text.Length ? text[_at] : '\0';

    private bool Separator()
    {
        if (Here is '·' or '*' or '•' or '.')
        {
            _at++;
            return true;
        }
        return false;
    }

    // A part may have a number before it, as hydrate water has; there a point between digits is a decimal.
    private void Part(Sum into)
    {
        var times = Digit(Here) is null ? 1 : Number(decimals: true);
        var part = new Sum();
        Units(part, 0);
        into.Add(part, times);
    }

    private void Units(Sum into, int depth)
    {
        var start = _at;
        var run = new List<(string Symbol, double Count)>();
        while (_fault is null)
        {
            if (Here is '(' or '[' or '{')
            {
                Name(run, into);
                Bracket(into, depth);
            }
            else if (Symbol() is { } symbol)
            {
                var count = Digit(Here) is null ? 1 : Number(decimals: false);
                into.Atoms[symbol] = into.Atoms.GetValueOrDefault(symbol) + count;
                run.Add((symbol, count));
            }
            else
            {
                break;
            }
        }
        Name(run, into);
        if (_fault is null && _at == start)
        {
            Wrong(Phrase.Of("formula.start"));
        }
    }

    private void Bracket(Sum into, int depth)
    {
        if (depth == Deepest)
        {
            Wrong(Phrase.Of("formula.deep", Deepest));
            return;
        }
        var close = Here switch
        {
            '(' => ')',
            '[' => ']',
            _ => '}',
        };
        _at++;
        var inside = new Sum();
        Units(inside, depth + 1);
        if (_fault is not null)
        {
            return;
        }
        if (Here != close)
        {
            Wrong(Phrase.Plain($"\"{close}\""));
            return;
        }
        _at++;
        into.Add(inside, Digit(Here) is null ? 1 : Number(decimals: false));
    }

    /// <summary>Finds the groups in a run of atoms: an element followed by the hydrogen or oxygen that makes it.</summary>
    private static void Name(List<(string Symbol, double Count)> run, Sum into)
    {
        for (var i = 0; i + 1 < run.Count; i++)
        {
            AtomGroup? group = (run[i].Symbol, run[i].Count, run[i + 1].Symbol, run[i + 1].Count) switch
            {
                ("N", 1, "O", 3) => AtomGroup.Nitrate,
                ("N", 1, "H", 4 or 3) => AtomGroup.Ammonium,
                ("P", 1, "O", 4) => AtomGroup.Phosphate,
                ("S", 1, "O", 4) => AtomGroup.Sulfate,
                ("C", 1, "O", 3) => AtomGroup.Carbonate,
                _ => null,
            };
            if (group is { } found)
            {
                into.Groups[found] = into.Groups.GetValueOrDefault(found) + 1;
            }
        }
        run.Clear();
    }

    private string? Symbol()
    {
        if (Here is < 'A' or > 'Z')
        {
            return null;
        }
        var length = _at + 1 < text.Length && text[_at + 1] is >= 'a' and <= 'z' ? 2 : 1;
        var symbol = text.Substring(_at, length);
        if (!AtomicMasses.All.ContainsKey(symbol))
        {
            Wrong(Phrase.Of("formula.symbol"), symbol);
            return null;
        }
        _at += length;
        return symbol;
    }

    private double Number(bool decimals)
    {
        var start = _at;
        var number = new System.Text.StringBuilder();
        Digits(number);
        var pointIsDecimal = decimals || _pointsAreDecimals || number is { Length: 1 } && number[0] == '0';
        if (pointIsDecimal && Here == '.' && _at + 1 < text.Length && Digit(text[_at + 1]) is not null)
        {
            _at++;
            number.Append('.');
            Digits(number);
        }
        var value = double.Parse(number.ToString(), NumberStyles.Float, CultureInfo.InvariantCulture);
        if (value <= 0 || value > MostAtoms)
        {
            _at = start;
            Wrong(Phrase.Of("formula.number", MostAtoms));
            return 1;
        }
        return value;
    }

    private void Digits(System.Text.StringBuilder number)
    {
        while (Digit(Here) is { } digit)
        {
            number.Append(digit);
            _at++;
        }
    }

    private static char? Digit(char letter) =>
        letter switch
        {
            >= '0' and <= '9' => letter,
            >= '₀' and <= '₉' => (char)('0' + (letter - '₀')),
            _ => null,
        };

    private void Wrong(Phrase expected, string? symbol = null)
    {
        if (_fault is not null)
        {
            return;
        }
        var letter = Here;
        var found =
            symbol is not null ? Phrase.Plain($"\"{symbol}\"")
            : _at >= text.Length ? Phrase.Of("formula.end")
            : char.IsControl(letter) || char.IsSurrogate(letter) ? Phrase.Of("formula.strange-letter")
            : Phrase.Plain($"\"{letter}\"");
        _fault = new(_at + 1, found, expected);
    }
}
