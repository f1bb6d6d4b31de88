using Dripwright.Engine;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Layout;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Views;

/// <summary>A run stretched out level, not to scale: every fitting and every cut piece in order, with labels and lengths.</summary>
internal sealed class RunStrip
{
    /// <summary>[mm] From one fitting or piece to the next.</summary>
    public const double Column = 21;

    /// <summary>[mm] Height of one line of a strip below its heading.</summary>
    public const double LineHeight = 21;

    private const double HeadingHeight = 6;
    private readonly PipeRun run;
    private readonly IReadOnlyList<Item> items;
    private readonly IReadOnlyList<RunWay> ways;
    private readonly Wording words;

    /// <summary>A strip for a run and those that are just like it.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="alike">Runs with the same pieces and fittings, at least one.</param>
    public RunStrip(Plan plan, IReadOnlyList<PipeRun> alike)
    {
        run = alike[0];
        words = new(plan.Rig.Units);
        ways = RunWays.Of(run, plan.Rig);
        items = [.. Items(plan, run).OrderBy(i => i.Station)];
        var name = alike.Count == 1 ? run.Label : $"{run.Label} to {alike[^1].Label}, alike";
        Heading =
            $"{name}: {RunPainter.TitleOf(run).Split(' ')[0].ToLowerInvariant()}, {run.Pipe.Name}, {words.MarkWithUnit(run.Length)}";
    }

    /// <summary>Name, use, pipe and length.</summary>
    public string Heading { get; }

    /// <summary>[mm] Width in one line.</summary>
    public double Width => Math.Max((items.Count * Column) + 4, TextMeasure.Width(Heading, TextStyle.Note.Bold) + 6);

    /// <summary>[mm] Height in a room so wide.</summary>
    public double Height(double width) => HeadingHeight + (Lines(width) * LineHeight);

    /// <summary>The strip.</summary>
    public Group Draw(Box box)
    {
        var elements = new List<Element>
        {
            new Text(
                TextMeasure.Shorten(Heading, box.Width, TextStyle.Note.Bold),
                box.TopLeft.Move(0, 4),
                TextStyle.Note.Bold
            ),
        };
        var perLine = PerLine(box.Width);
        for (var line = 0; line < Lines(box.Width); line++)
        {
            var y = box.Y + HeadingHeight + (line * LineHeight) + 10;
            var shown = items.Skip(line * perLine).Take(perLine).ToList();
            var end = box.X + (shown.Count * Column);
            elements.Add(new Line(new(box.X, y), new(end, y), RunPainter.PenOf(run)));
            if (line > 0)
            {
                elements.Add(new Text("…", new(box.X - 0.5, y - 1), TextStyle.Note));
            }

            for (var i = 0; i < shown.Count; i++)
            {
                elements.AddRange(Draw(shown[i], new(box.X + ((i + 0.5) * Column), y)));
            }
        }

        return new(elements)
        {
            Id = "run-" + run.Label,
            Class = "run " + run.Service.ToString().ToLowerInvariant(),
            Title = RunPainter.TitleOf(run),
            Description = Heading,
        };
    }

    /// <summary>Runs that are cut and fitted alike, whatever their number.</summary>
    public static string Signature(PipeRun run) =>
        string.Join(
            '|',
            [
                new string([.. run.Label.Where(c => !char.IsDigit(c))]),
                run.Pipe.Key,
                .. run.Pieces.Select(p => Wording.Count((int)Math.Round(p.Length * 10000))),
                .. run.Fittings.Select(f => f.Type.Key),
            ]
        );

    private static int PerLine(double width) => Math.Max(1, (int)(width / Column));

    private int Lines(double width) => Math.Max(1, (int)Math.Ceiling((double)items.Count / PerLine(width)));

    private IEnumerable<Element> Draw(Item item, Point at)
    {
        var style = TextStyle.Small.Middle with { Role = Role.Ink };
        if (item.Piece is { } piece)
        {
            var way = ways.FirstOrDefault(w =>
                item.Station >= Math.Min(w.From, w.To) && item.Station <= Math.Max(w.From, w.To)
            );
            if (way != default)
            {
                var right = way.To > way.From;
                yield return RunPainter.Head(
                    at.Move(right ? 1.6 : -1.6, 0),
                    right ? 0 : 180,
                    RunPainter.PenOf(run).Role
                );
            }

            yield return new Text(piece.Label, at.Move(0, 5), style);
            yield return new Text(words.MarkWithUnit(piece.Length), at.Move(0, 8.4), style.Bold);
            yield break;
        }

        foreach (
            var element in item.Kind is { } kind
                ? FittingSymbol.Draw(kind, at)
                : [new Circle(at, 1.4, Pen.Thin, Fill.Paper)]
        )
        {
            yield return element;
        }

        yield return new Text(item.Label, at.Move(0, -3.6), style.Bold);
        yield return new Text(item.Word, at.Move(0, -6.6), style);
    }

    private static IEnumerable<Item> Items(Plan plan, PipeRun run)
    {
        foreach (var piece in run.Pieces)
        {
            yield return new((piece.From + piece.To) / 2, piece.Label, "", null, piece);
        }

        foreach (var fitting in run.Fittings)
        {
            yield return new(
                fitting.Station,
                fitting.Label,
                FittingSymbol.Word(fitting.Type.Kind),
                fitting.Type.Kind,
                null
            );
        }

        if (run.Service != RunService.Header || run.Label != "H")
        {
            yield break;
        }

        var pump = plan.Layout.Tank.PumpOutlet;
        yield return new(run.Start - 1, plan.Layout.Parts.Pump is null ? "outlet" : "pump", "from the", null, null);
        if (plan.Layout.Parts.Strainer is not null)
        {
            yield return new(run.Start - 0.5, "strainer", "in the feed", null, null);
        }

        if (plan.Rig.Feed.SiphonBreak)
        {
            // Just above the highest water, within the pipe that rises from the pump.
            var above = Math.Max(plan.Layout.Tank.Rim - pump.Z, 0.02);
            yield return new(Math.Min(run.Start + above, run.End), "siphon break", "small hole", null, null);
        }
    }

    private sealed record Item(double Station, string Label, string Word, FittingKind? Kind, Piece? Piece);
}
