using System.Text.RegularExpressions;
using Dripwright.Engine;
using Dripwright.Sheets.Drawing;

namespace Dripwright.Sheets.Tests;

/// <summary>Finds the words that do not come from the texts of the pseudo-language, but for names and units.</summary>
internal sealed partial class PseudoWords
{
    // Units, symbols of elements, the name of the program and of a paper, and plastics are the same in every language.
    private static readonly HashSet<string> s_same = new(StringComparer.Ordinal)
    {
        "in",
        "gal",
        "min",
        "oz",
        "meq",
        "day",
        "per",
        "kPa",
        "psi",
        "Ca",
        "Fe",
        "Cu",
        "Mo",
        "Na",
        "Dripwright",
        "Letter",
        "PLA",
        "PETG",
        "ABS",
        "ASA",
        "USD",
    };

    private static readonly TimeSpan s_patience = TimeSpan.FromSeconds(5);

    private readonly IReadOnlyList<string> _data;

    public PseudoWords(Plan plan)
    {
        var layout = plan.Layout;
        IEnumerable<string> data =
        [
            // What a shop calls a thing is the catalogue's.
            .. layout.Parts.Catalogue.All.Select(entry => entry.Name),
            .. layout.Parts.Catalogue.Salts.Salts.Values.Select(salt => salt.Name),
            .. layout.Parts.Catalogue.Crops.Values.Select(crop => crop.Name),
            .. layout.Parts.Catalogue.Media.Values.Select(medium => medium.Name),
            // Marks that are written on the pieces: "S1-rail", "H-AA".
            .. layout.Stand.Members.Select(member => member.Label),
            .. layout.Wires.Select(wire => wire.Label),
            .. layout.Runs.SelectMany(run => run.Pieces).Select(piece => piece.Label),
            // What the grower wrote.
            plan.Rig.Name,
            plan.Rig.Site.Name,
            plan.Rig.Notes,
            .. layout.Rows.SelectMany(row => row.Pots).Select(pot => pot.Crop),
            // Who says so: authors, titles and tables.
            .. plan.Findings.Select(finding => finding.Source),
            .. plan.Feed.Uniformity.Select(measure => measure.Source),
            .. plan.Nutrients is { } nutrients ? new[] { nutrients.Recipe.Job.Target.Source } : [],
            // What a file left out is told in the words of the rig file's own fields.
            .. plan.Assumed.SelectMany(assumed => new[] { assumed.Value, assumed.How }),
        ];
        _data =
        [
            .. data.SelectMany(text => new[] { Spaced(text), Spaced(Wording.Sentence(text)) })
                .SelectMany(text => new[] { text, Small(text) })
                .Where(text => text.Length > 0)
                .Distinct()
                .OrderByDescending(text => text.Length),
        ];
    }

    /// <summary>Words of a text that are neither from the texts nor data.</summary>
    public IEnumerable<string> Own(string said)
    {
        // A long name is broken after its hyphen; what a cure writes into the rig file is the file's own.
        var left = FileText().Replace(Spaced(said).Replace("- ", "-", StringComparison.Ordinal), " ");
        foreach (var one in _data.Where(one => left.Contains(one, StringComparison.Ordinal)))
        {
            left = Regex.Replace(left, $@"(?<!\w){Regex.Escape(one)}(?!\w)", " ", RegexOptions.None, s_patience);
        }

        return Word().Matches(left).Select(match => match.Value).Where(word => !s_same.Contains(word));
    }

    private static string Small(string name) => name.Length == 0 ? name : char.ToLowerInvariant(name[0]) + name[1..];

    private static string Spaced(string text) => Space().Replace(text, " ").Trim();

    [GeneratedRegex(@"\[\{.*?\}\]", RegexOptions.None, 5000)]
    private static partial Regex FileText();

    [GeneratedRegex(@"\s+", RegexOptions.None, 5000)]
    private static partial Regex Space();

    // Every English word that the pseudo-language has not touched holds a vowel without an accent. Labels such as D1 and AA are no
    // words; what is cut short with an ellipsis is the beginning of a name.
    [GeneratedRegex(@"(?<![\w\p{M}])(?=\p{L}*[aeiouAEIOU])(?![A-Z]{2}\b)\p{L}{2,}(?![\w…])", RegexOptions.None, 5000)]
    private static partial Regex Word();
}
