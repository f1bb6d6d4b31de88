using Dripwright.Engine;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Scenes;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Views;

/// <summary>A run stretched out level, not to scale: every fitting and every cut piece in order, with labels and lengths.</summary>
internal sealed class RunStrip
{
    /// <summary>[mm] From one fitting or piece to the next.</summary>
    public const double Column = 21;

    // [mm] Capitals of 0.9 mm: only a language of very long words comes so low.
    private const double LeastWord = 1.4;

    /// <summary>[mm] Height of one line of a strip below its heading.</summary>
    public const double LineHeight = 21;

    private const double HeadingHeight = 6;
    private readonly PipeRun _run;
    private readonly IReadOnlyList<Item> _items;
    private readonly IReadOnlyList<RunWay> _ways;
    private readonly Wording _words;

    /// <summary>A strip for a run and those that are just like it.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="alike">Runs with the same pieces and fittings, at least one.</param>
    public RunStrip(Plan plan, IReadOnlyList<PipeRun> alike)
    {
        _run = alike[0];
        _words = new(plan.Rig.Units);
        _ways = RunWays.Of(_run, plan.Rig);
        _items = [.. Items(plan, _run).OrderBy(i => i.Station)];
        var name = alike.Count == 1 ? _run.Label : Words.Of("sheet.strip.alike", Named(alike));
        Heading = Words.Of(
            "sheet.strip.heading",
            name,
            RunPainter.WordOf(_run),
            Wording.Sentence(_run.Pipe.Name),
            _words.MarkWithUnit(_run.Length)
        );
    }

    private RunStrip(RunStrip whole, IReadOnlyList<Item> items, bool first)
    {
        (_run, _words, _ways) = (whole._run, whole._words, whole._ways);
        this._items = items;
        Heading = first ? whole.Heading : Words.Of("sheet.strip.continued", whole.Heading);
    }

    /// <summary>The strip in pieces that are no taller than a sheet.</summary>
    public IEnumerable<RunStrip> Split(Box room)
    {
        var most = PerLine(room.Width) * (int)((room.Height - HeadingHeight) / LineHeight);
        return _items.Count <= most ? [this] : _items.Chunk(most).Select((part, i) => new RunStrip(this, part, i == 0));
    }

    /// <summary>Name, use, pipe and length.</summary>
    public string Heading { get; }

    /// <summary>[mm] Width in one line.</summary>
    public double Width => Math.Max((_items.Count * Column) + 4, TextMeasure.Width(Heading, TextStyle.Note.Bold) + 6);

    /// <summary>[mm] Height in a room so wide.</summary>
    public double Height(double width) => HeadingHeight + (Lines(width) * LineHeight);

    /// <summary>The strip.</summary>
    public Group Draw(Box box)
    {
        var elements = new List<Element>
        {
            new Text(Heading, box.TopLeft.Move(0, 4), TextMeasure.Fitted(Heading, box.Width, TextStyle.Note.Bold)),
        };
        var perLine = PerLine(box.Width);
        for (var line = 0; line < Lines(box.Width); line++)
        {
            var y = box.Y + HeadingHeight + (line * LineHeight) + 10;
            var shown = _items.Skip(line * perLine).Take(perLine).ToList();
            var end = box.X + (shown.Count * Column);
            // A line that starts or ends with a fitting stops there; it runs on where the next line goes on.
            var start = line == 0 && shown[0].Piece is null ? box.X + (Column / 2) : box.X;
            var stop = line == Lines(box.Width) - 1 && shown[^1].Piece is null ? end - (Column / 2) : end;
            elements.Add(new Line(new(start, y), new(stop, y), RunPainter.PenOf(_run)));
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
            Id = SceneNames.Run(_run.Label),
            Class = "run " + _run.Service.ToString().ToLowerInvariant(),
            Title = RunPainter.TitleOf(_run),
            Description = Heading,
        };
    }

    private static string Named(IReadOnlyList<PipeRun> alike)
    {
        var rows = alike.Select(r => r.Row).ToList();
        return rows.Count > 2 && rows.Zip(rows.Skip(1), (a, b) => b - a).All(d => d == 1)
            ? Words.Of("sheet.to", alike[0].Label, alike[^1].Label)
            : string.Join(", ", alike.Select(r => r.Label));
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

    private int Lines(double width) => Math.Max(1, (int)Math.Ceiling((double)_items.Count / PerLine(width)));

    private IEnumerable<Element> Draw(Item item, Point at)
    {
        var style = TextStyle.Small.Middle with { Role = DrawnRole.Ink };
        if (item.Piece is { } piece)
        {
            var way = _ways.FirstOrDefault(w =>
                item.Station >= Math.Min(w.From, w.To) && item.Station <= Math.Max(w.From, w.To)
            );
            if (way != default)
            {
                var right = way.To > way.From;
                yield return RunPainter.Head(
                    at.Move(right ? 1.6 : -1.6, 0),
                    right ? 0 : 180,
                    RunPainter.PenOf(_run).Role
                );
            }

            yield return new Text(piece.Label, at.Move(0, 5), style);
            yield return new Text(_words.MarkWithUnit(piece.Length), at.Move(0, 8.4), style.Bold);
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
        // Words are drawn smaller rather than into those of the next fitting.
        yield return new Text(item.Word, at.Move(0, -6.6), TextMeasure.Fitted(item.Word, Column - 1, style, LeastWord));
    }

    private static IEnumerable<Item> Items(Plan plan, PipeRun run)
    {
        foreach (var piece in run.Pieces)
        {
            yield return new((piece.From + piece.To) / 2, piece.Label, "", null, piece);
        }

        foreach (var fitting in run.Fittings)
        {
            var joined = Joined(plan.Layout, run, fitting);
            var word = FittingSymbol.Word(fitting.Type.Kind);
            word = joined.Length > 0 ? Words.Of("sheet.strip.joined", word, joined) : word;
            yield return new(fitting.Station, fitting.Label, word, fitting.Type.Kind, null);
        }

        if (run.Service != RunService.Header || run.Label != "H")
        {
            yield break;
        }

        yield return new(
            run.Start - 1,
            plan.Layout.Parts.Pump is null ? Words.Of("sheet.strip.outlet") : Words.Of("sheet.strip.pump"),
            Words.Of("sheet.strip.from"),
            null,
            null
        );
        if (plan.Layout.Parts.Strainer is not null)
        {
            yield return new(
                run.Start - 0.5,
                Words.Of("sheet.strip.strainer"),
                Words.Of("sheet.strip.in-feed"),
                null,
                null
            );
        }

        if (plan.Layout.BreakHole is { } hole)
        {
            yield return new(
                hole.Station,
                Words.Of("sheet.strip.siphon"),
                Words.Of("sheet.strip.siphon.small"),
                null,
                null
            );
        }
    }

    /// <summary>The run that begins or ends at a fitting of this one; "" where none does.</summary>
    private static string Joined(RigLayout layout, PipeRun run, RunFitting fitting)
    {
        // Stations of a header follow the length the rig file states, so its taps are found by the links, not by place.
        var at = 0.0;
        foreach (var link in layout.Supply.Where(l => ReferenceEquals(l.Run, run)))
        {
            at += link.Length;
            if (Math.Abs(at - fitting.Station) < 1e-6)
            {
                return link.To switch
                {
                    "bypass" => "B",
                    "split" => "G",
                    "tank" => "",
                    _ => Words.Of("sheet.rows.one", link.To[(link.To.IndexOf('-', StringComparison.Ordinal) + 1)..]),
                };
            }
        }

        if (run.Service is not (RunService.Drain or RunService.Return))
        {
            return "";
        }

        var place = run.At(Math.Clamp(fitting.Station, run.Start, run.End));
        return layout
                .Runs.FirstOrDefault(r =>
                    r.Label != run.Label && (r.Path[0].DistanceTo(place) < 0.02 || r.Path[^1].DistanceTo(place) < 0.02)
                )
                ?.Label
            ?? "";
    }

    private sealed record Item(double Station, string Label, string Word, FittingKind? Kind, Piece? Piece);
}
