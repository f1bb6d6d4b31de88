using System.Globalization;
using Dripwright.Engine;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Screen;

/// <summary>Turns the drawing's groups into things a page can reach, press and colour.</summary>
internal sealed class ScreenMarkup
{
    /// <summary>[mm] A smaller pot is one shape without mark or number.</summary>
    private const double RoomForMarks = 1.6;

    /// <summary>[mm] A pot so large has room for its value under its number.</summary>
    private const double RoomForValue = 6.5;

    /// <summary>[mm] A pot so large has room for the number of its step.</summary>
    private const double RoomForStep = 2.2;

    /// <summary>Of more parts than this only the first pot of each row, and what serves all rows, is a stop of the Tab key.</summary>
    private const int MostStops = 200;

    private readonly Dictionary<string, ScreenPart> _parts;
    private readonly StepScale? _scale;
    private readonly ScreenKind _kind;
    private readonly bool _fewStops;

    public ScreenMarkup(Plan plan, ScreenKind kind, StepScale? scale)
    {
        var all = ScreenParts.Of(plan);
        _parts = all.ToDictionary(p => p.Part, StringComparer.Ordinal);
        _fewStops = all.Count > MostStops;
        this._kind = kind;
        this._scale = scale;
    }

    /// <summary>The same drawing with what a page needs.</summary>
    public IEnumerable<Element> Of(IEnumerable<Element> elements) => elements.Select(e => e is Group g ? Of(g) : e);

    private Group Of(Group group) =>
        group.Id is { } id && _parts.TryGetValue(id, out var part)
            ? part.Kind == "pot"
                ? Pot(group, part)
                : part.Kind == "run"
                    ? Run(group, part)
                    : Named(group, part, group.Class!)
            : group with
            {
                Children = [.. Of(group.Children)],
            };

    private Group Pot(Group group, ScreenPart part)
    {
        var shape = BoundsOf(group.Children[0]);
        var small = Math.Min(shape.Width, shape.Height) < RoomForMarks;
        List<Element> children = small ? [group.Children[0]] : [.. group.Children];
        var look = group.Class!;
        if (_scale is not null)
        {
            var value = part.Flow is { } flow && part.Pressure is { } pressure ? _scale.Value(flow, pressure) : null;
            var step = _scale.StepOf(value);
            look += $"{(_kind == ScreenKind.Plan ? " above" : "")} step-{Wording.Count(step)}";
            children = Coloured(children, shape, step, value);
        }

        return Named(group with { Children = children }, part, look);
    }

    // The value where there is room for it, else the number of its step, which the legend tells.
    private List<Element> Coloured(List<Element> children, Box shape, int step, double? value)
    {
        // A number beside the pot does not stand on its colour: in a group of its own it keeps the colour of ink.
        List<Element> kept =
        [
            .. children.Select(e =>
                e is Text text && !shape.Holds(TextMeasure.Bounds(text), 0.5) ? new Group([text]) : e
            ),
        ];
        var style = TextStyle.Small.Middle.Bold with { Role = DrawnRole.Ink };
        if (value is { } known && shape.Width >= RoomForValue && shape.Height >= RoomForValue + 0.5)
        {
            var text = _scale!.Text(known);
            var width = TextMeasure.Width(text, style);
            style = width > shape.Width - 0.6 ? style with { Size = style.Size * (shape.Width - 0.6) / width } : style;
            kept.Add(new Text(text, new(shape.Centre.X, Math.Min(shape.Centre.Y + 3, shape.Bottom - 0.8)), style));
        }
        else if (step > 0 && Math.Min(shape.Width, shape.Height) >= RoomForStep)
        {
            // One figure has room: the step's; and in a pot from above it stands over the feed line.
            var above = _kind == ScreenKind.Plan;
            kept.RemoveAll(e => e is Text || (above && e is Circle { Pen.Role: DrawnRole.Plant }));
            style = style with
            {
                Size = Math.Min(style.Size, Math.Min(shape.Width, shape.Height) * (above ? 0.55 : 0.8)),
            };
            var foot = above ? -0.4 : style.CapHeight / 2;
            kept.Add(new Text(Wording.Count(step), shape.Centre.Move(0, foot), style));
        }

        return kept;
    }

    private Group Run(Group group, ScreenPart part)
    {
        // A line half a millimetre wide is hard to hit: the same line once more, wide and unseen.
        var reach = group.Children.OfType<Polyline>().Take(1).Select(line => line with { Pen = null, Fill = null });
        return Named(group with { Children = [.. reach, .. group.Children] }, part, group.Class!);
    }

    private Group Named(Group group, ScreenPart part, string look)
    {
        var stop = !_fewStops || (part.Kind == "run" ? part.Row == 0 : part.Pot <= 1);
        List<(string, string)> attributes =
        [
            ("data-part", part.Part),
            .. part.Row > 0
                ? new[] { ("data-row", Wording.Count(part.Row)), ("data-spec", Wording.Count(part.Spec)) }
                : [],
        ];
        if (part.Pot > 0)
        {
            attributes.Add(("data-pot", Wording.Count(part.Pot)));
        }

        if (part.Run.Length > 0)
        {
            attributes.Add(("data-run", part.Run));
        }

        attributes.AddRange([("role", "button"), ("tabindex", stop ? "0" : "-1"), ("aria-label", part.Label)]);
        return group with { Class = look, Title = null, Description = null, Attributes = attributes };
    }

    private static Box BoundsOf(Element element) =>
        element switch
        {
            Circle c => new(c.Centre.X - c.Radius, c.Centre.Y - c.Radius, 2 * c.Radius, 2 * c.Radius),
            Rectangle r => r.Area,
            Polyline p => Box.Around(p.Points),
            _ => throw new ArgumentOutOfRangeException(
                nameof(element),
                string.Create(CultureInfo.InvariantCulture, $"{element.GetType().Name} is no outline of a pot.")
            ),
        };
}
