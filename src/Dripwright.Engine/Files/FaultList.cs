using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Files;

/// <summary>Gathers the faults of one file; keeps a wrecked file from filling the memory with them.</summary>
internal sealed class FaultList(string file)
{
    /// <summary>Most faults told. Nobody mends more in one go.</summary>
    public const int Most = 1000;

    private readonly List<Fault> _faults = [];
    private int _untold;

    public bool Any => _faults.Count > 0;

    /// <summary>All faults so far, those that are not told among them.</summary>
    public int Count => _faults.Count + _untold;

    public void Add(string path, int line, int column, Phrase found, Phrase expected, string? nearest = null)
    {
        if (_faults.Count < Most)
        {
            _faults.Add(new Fault(file, path, line, column, found, expected, nearest));
        }
        else
        {
            _untold++;
        }
    }

    public void Add(string path, FileNode at, Phrase found, Phrase expected, string? nearest = null) =>
        Add(path, at.Line, at.Column, found, expected, nearest);

    /// <summary>True where a fault lies in the field, in one inside it, or in one around it.</summary>
    public bool Touch(string path) => _faults.Exists(fault => IsWithin(fault.Path, path) || IsWithin(path, fault.Path));

    public IReadOnlyList<Fault> InOrder()
    {
        var ordered = _faults.OrderBy(fault => fault.Line).ThenBy(fault => fault.Column).ToList();
        if (_untold > 0)
        {
            var found = Phrase.Counted("fault.more.found", _untold);
            ordered.Add(
                new Fault(file, "", ordered[^1].Line, ordered[^1].Column, found, Phrase.Of("fault.more.expected"))
            );
        }
        return ordered;
    }

    private static bool IsWithin(string inner, string outer) =>
        inner.StartsWith(outer, StringComparison.Ordinal)
        && (inner.Length == outer.Length || outer.Length == 0 || inner[outer.Length] is '.' or '[');

    /// <summary>A value as it is shown in a fault: short, on one line.</summary>
    public static Phrase Show(FileNode node) =>
        node switch
        {
            FileObject => Phrase.Of("fault.an-object"),
            FileList => Phrase.Of("fault.a-list"),
            FileText text => Quote(text.Text),
            FileNumber number => Phrase.Plain(Shorten(number.Text)),
            FileWord word => Phrase.Plain(
                word.Value switch
                {
                    true => "true",
                    false => "false",
                    null => "null",
                }
            ),
            _ => throw new ArgumentOutOfRangeException(nameof(node), node, "Not a kind of value."),
        };

    /// <summary>What stands in the file, in quotes.</summary>
    public static Phrase Quote(string text) => Phrase.Plain(Quoted(text));

    /// <summary>The same to be put into a place of another phrase.</summary>
    public static string Quoted(string text) => $"\"{Shorten(text)}\"";

    private static string Shorten(string text)
    {
        var clean = new string([
            .. text.Take(61).Select(letter => char.IsControl(letter) || char.IsSurrogate(letter) ? '�' : letter),
        ]);
        return clean.Length > 60 ? string.Concat(clean.AsSpan(0, 60), "…") : clean;
    }
}
