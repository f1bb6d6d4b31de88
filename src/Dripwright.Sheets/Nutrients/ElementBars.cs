using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Nutrients.Recipe;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Nutrients;

/// <summary>Each element's result against its target: water's part hatched, the salts' part full, the tolerance as a band.</summary>
internal static class ElementBars
{
    private const double RowHeight = 6.4;
    private const double Head = 7;
    private const double NameWidth = 20;
    private const double Most = 1.5;
    private static readonly TextStyle s_style = TextStyle.Note with { Size = 3.2 };

    public static Flow Add(Flow flow, NutrientRecipe recipe, PlanWords words)
    {
        List<ElementResult> asked = [.. recipe.Elements.Where(element => element.Wanted is > 0)];
        if (asked.Count == 0)
        {
            return flow;
        }

        flow.Heading(Words.Of("bench.elements.title"))
            .Paragraph(Words.Of("bench.elements.how"), leads: true)
            .Figure(Head + (RowHeight * asked.Count), box => Draw(box, recipe, asked, words));
        var brought = string.Join(
            ", ",
            recipe
                .Elements.Where(element =>
                    element.Wanted is null
                    && element.Constituent is not (Constituent.InorganicCarbon or Constituent.AmmoniumNitrogen)
                    && element.Result > 0
                )
                .Select(element =>
                    $"{words.Of(Elements.Short(element.Constituent))} {FeedWords.Milligrams(element.Constituent, element.Result)}"
                )
        );
        return brought.Length > 0 ? flow.Paragraph(Words.Of("bench.elements.brought", brought)) : flow;
    }

    private static Group Draw(Box box, NutrientRecipe recipe, List<ElementResult> asked, PlanWords words)
    {
        var left = box.X + NameWidth;
        var full = box.Width - NameWidth - 62;
        double At(double share) => left + (full * Math.Min(share, Most) / Most);
        var elements = new List<Element>();
        foreach (var (share, label) in new[] { (0.0, "0"), (0.5, "50 %"), (1.0, "100 %"), (1.5, "150 %") })
        {
            elements.Add(new Text(label, new(At(share), box.Y + 3.5), s_style.Middle));
            elements.Add(new Line(new(At(share), box.Y + 5), new(At(share), box.Bottom), Pen.Faint));
        }

        var columns = new[]
        {
            (box.Right - 42, Words.Of("bench.elements.wanted")),
            (box.Right - 22, Words.Of("bench.elements.reached")),
            (box.Right, Words.Of("bench.elements.water")),
        };
        elements.AddRange(
            columns.Select(column => new Text(column.Item2, new(column.Item1, box.Y + 3.5), s_style.End))
        );
        for (var i = 0; i < asked.Count; i++)
        {
            elements.AddRange(
                Row(asked[i], Name(asked[i], recipe, words), box, box.Y + Head + (i * RowHeight), At, columns)
            );
        }

        return new(elements)
        {
            Class = "bars",
            Title = Words.Of("bench.elements.figure"),
            Description = string.Join("; ", asked.Select(element => Told(element, Name(element, recipe, words)))),
        };
    }

    private static IEnumerable<Element> Row(
        ElementResult element,
        string name,
        Box box,
        double y,
        Func<double, double> at,
        (double X, string Label)[] columns
    )
    {
        var wanted = element.Wanted!.Value;
        var water = element.FromWater / wanted;
        var result = element.Result / wanted;
        var foot = y + 4.2;
        var off = element.Verdict is not ElementVerdict.Reached;
        var (from, to) = (at(1 - element.Tolerance), at(1 + element.Tolerance));
        yield return new Text(name, new(box.X, foot), off ? s_style.Bold : s_style);
        yield return new Rectangle(new(from, y + 0.2, to - from, RowHeight - 0.8), Pen.Explain);
        if (at(result) > at(water))
        {
            yield return new Rectangle(
                new(at(water), y + 1.2, at(result) - at(water), RowHeight - 2.8),
                Pen.Thin,
                new Fill(DrawnRole.Faint)
            );
        }

        if (water > 0)
        {
            yield return new Rectangle(new(at(0), y + 1.2, at(water) - at(0), RowHeight - 2.8), Pen.Thin, Fill.Section);
        }

        if (result > Most)
        {
            yield return new Text(">", new(at(Most) + 1.2, foot), s_style.Bold);
        }

        string[] values =
        [
            FeedWords.Milligrams(element.Constituent, wanted),
            FeedWords.Milligrams(element.Constituent, element.Result),
            FeedWords.Milligrams(element.Constituent, element.FromWater),
        ];
        for (var i = 0; i < values.Length; i++)
        {
            yield return new Text(values[i], new(columns[i].X, foot), off && i == 1 ? s_style.Bold.End : s_style.End);
        }
    }

    private static string Name(ElementResult element, NutrientRecipe recipe, PlanWords words) =>
        words.Of(Elements.Short(element.Constituent, recipe.Job.Target.NitrogenIsSum));

    private static string Told(ElementResult element, string name) =>
        Words.Of(
            "bench.elements.told",
            name,
            FeedWords.Milligrams(element.Constituent, element.Result),
            FeedWords.Milligrams(element.Constituent, element.Wanted!.Value)
        );
}
