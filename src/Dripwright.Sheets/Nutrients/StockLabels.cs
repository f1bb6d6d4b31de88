using Dripwright.Engine;
using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Nutrients;

/// <summary>Labels for the cans of concentrate and the acid bottle, to cut out.</summary>
public static class StockLabels
{
    // Three of them stand on a sheet, also on the shorter Letter.
    private const double Height = 71;
    private static readonly TextStyle s_big = TextStyle.Heading with { Size = 22 };

    /// <summary>The sheets; none where nothing is to be labelled.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="paper">Size of the sheets; they stand upright.</param>
    public static IReadOnlyList<SheetDraft> Draw(Plan plan, Paper paper)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(paper);
        if (plan.Nutrients is not { } feed)
        {
            return [];
        }

        var words = new PlanWords(plan.Rig.Units);
        var flow = new Flow(paper.Portrait, Words.Of("bench.stocklabels.title"));
        var any = false;
        foreach (var can in feed.Stock?.Cans ?? [])
        {
            any = true;
            var contents = string.Join(
                "; ",
                can.Lines.Select(line =>
                    Words.Of(
                        "bench.stocklabels.line",
                        line.Salt.Name,
                        FeedWords.Number(line.Concentration, line.Concentration < 1 ? 3 : 1)
                    )
                )
            );
            Add(
                flow,
                can.Name,
                Words.Of("bench.stocklabels.concentrate", FeedWords.Number(feed.Stock!.Job.PartsOfFeed, 0)),
                contents,
                Words.Of("bench.stocklabels.beware", can.Name == "A" ? "B" : "A")
                    + " "
                    + Together(can.Lines.Select(line => line.Salt), words)
            );
        }

        foreach (var acid in feed.Recipe.Lines.Select(line => line.Salt).Where(salt => salt.Kind == SaltKind.Acid))
        {
            any = true;
            Add(
                flow,
                Words.Of("bench.stocklabels.acid"),
                acid.Name,
                Words.Of("bench.stocklabels.acid.contents"),
                Words.Of("bench.stocklabels.acid.beware") + " " + Together([acid], words)
            );
        }

        return any ? flow.Build() : [];
    }

    private static string Together(IEnumerable<Salt> salts, PlanWords words) =>
        words.Sentences(
            salts.SelectMany(salt => salt.Hazards).Distinct().Order().Select(hazard => Caution.For(hazard).What)
        );

    private static void Add(Flow flow, string mark, string what, string contents, string beware) =>
        flow.Figure(Height, box => Label(box, mark, what, contents, beware)).Space(4);

    private static Group Label(Box box, string mark, string what, string contents, string beware)
    {
        var elements = new List<Element>
        {
            new Rectangle(box, Pen.Built),
            new Text(mark, box.TopLeft.Move(5, 23), s_big),
        };
        var x = box.X + 5;
        var y = box.Y + 33;
        elements.Add(new Text(what, new(x, y), TextStyle.Body.Bold));
        y += 6;
        foreach (var line in TextMeasure.Wrap(contents, box.Width - 10, TextStyle.Note))
        {
            elements.Add(new Text(line, new(x, y), TextStyle.Note));
            y += TextStyle.Note.LineHeight;
        }

        y += 2;
        foreach (var line in TextMeasure.Wrap(beware, box.Width - 10, TextStyle.Note.Bold))
        {
            elements.Add(new Text(line, new(x, y), TextStyle.Note.Bold));
            y += TextStyle.Note.LineHeight;
        }

        elements.Add(new Text(Words.Of("bench.stocklabels.mixed"), new(x, box.Bottom - 4), TextStyle.Note));
        return new(elements) { Class = "label", Title = Words.Of("bench.stocklabels.label", mark) };
    }
}
