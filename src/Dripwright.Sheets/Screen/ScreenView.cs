using Dripwright.Engine;
using Dripwright.Language;
using Dripwright.Sheets.Model;
using Dripwright.Sheets.Writing;

namespace Dripwright.Sheets.Screen;

/// <summary>The views of a rig as pieces of a web page, made of the same lines as the printed sheets.</summary>
/// <remarks>
/// Every pot, run, the pump and the reservoir is a group with an id, <c>data-part</c>, <c>role</c>, <c>tabindex</c> and
/// <c>aria-label</c>; pots carry <c>data-row</c>, <c>data-spec</c> (index in the rig file's rows) and <c>data-pot</c>,
/// runs carry <c>data-run</c>. Of a rig with more than 200 such parts only the first pot of each row, and what serves all
/// rows, is a stop of the Tab key; the page moves on from there. The page brings <see cref="Styles"/>, or its own rules
/// for the same classes.
/// </remarks>
public static class ScreenView
{
    /// <summary>The view as an SVG element.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="kind">From where it is seen.</param>
    /// <param name="options">Units, colours, size.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such row, or a size under 60 mm.</exception>
    public static string Of(Plan plan, ScreenKind kind, ScreenOptions? options = null)
    {
        options ??= new();
        var sheet = Draw(plan, kind, options);
        var basis = options.Standalone ? SvgOptions.File with { MoreStyles = Ramp.Styles() } : SvgOptions.Inline;
        return SvgWriter.Write(
            sheet,
            basis with
            {
                Live = !options.Standalone,
                IdPrefix = options.IdPrefix ?? kind.ToString().ToLowerInvariant() + "-",
            }
        );
    }

    /// <summary>Everything that can be reached in the drawings of a plan: pots row by row, runs, reservoir, pump.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="options">Units of the labels.</param>
    public static IReadOnlyList<ScreenPart> Parts(Plan plan, ScreenOptions? options = null) =>
        ScreenParts.Of(plan.In(options?.Units));

    /// <summary>What an edit changed, by the names in <c>data-part</c>, so that the page can mark it for a moment.</summary>
    /// <param name="before">The plan before the edit.</param>
    /// <param name="after">The plan after it.</param>
    public static IReadOnlyList<ScreenChange> Changes(Plan before, Plan after) => ScreenChanges.Of(before, after);

    /// <summary>
    /// Style sheet for pages with these drawings: colours of light, dark and print as custom properties, the steps of the
    /// colour scale, focus and the marks of <c>.added</c>, <c>.moved</c> and <c>.changed</c> parts.
    /// </summary>
    public static string Styles() => SvgWriter.PageStyles() + Ramp.Styles() + Reach;

    // The unseen line of a run has neither pen nor fill and so no class. A crop wire hangs over the pots and lets taps through.
    private const string Reach = """
        .sheet [data-part]{cursor:pointer;outline:none}
        .sheet [data-part]>:not([class]){stroke:transparent;stroke-width:3;pointer-events:stroke}
        .sheet .wire{pointer-events:none}
        .sheet .run.feed>:not([class]){stroke-width:1.4}
        .sheet [data-part]:hover>:first-child,.sheet [data-part].chosen>:first-child{stroke:var(--sheet-ink);stroke-width:.9}
        .sheet [data-part]:focus-visible>:first-child{stroke:var(--sheet-stop);stroke-width:1.2}
        .sheet .added>:first-child,.sheet .moved>:first-child,.sheet .changed>:first-child{stroke:var(--sheet-care);stroke-width:1.4}

        """;

    /// <summary>The view as a sheet that is just as large as what is drawn.</summary>
    internal static Sheet Draw(Plan plan, ScreenKind kind, ScreenOptions options)
    {
        ArgumentNullException.ThrowIfNull(plan);
        Check(plan, options);
        var shown = plan.In(options.Units);
        var steps = StepScale.Of(shown, options.Colour);
        var (scale, picture) = new ScreenPicture(shown, kind, options).Draw();
        List<Element> elements = [.. new ScreenMarkup(shown, kind, steps).Of(picture)];
        var box = ScreenPicture.Bounds(elements).Inset(-2);
        var width = Math.Max(box.Width, options.Width);
        box = new(box.Centre.X - (width / 2), box.Y, width, box.Height);
        if (options.Legend)
        {
            var corner = new Point(box.X + 2, box.Bottom);
            var (legend, height) = ScreenLegend.Draw(shown, kind, options, scale, steps, corner, width - 4);
            elements.AddRange(legend);
            box = box with { Height = box.Height + height };
        }

        var paper = new Paper("screen", box.Width, box.Height);
        var moved = new Group(elements) { Offset = new(-box.X, -box.Y) };
        return new(paper, TitleOf(shown, kind, options), [moved]) { Description = DescriptionOf(shown, steps) };
    }

    private static void Check(Plan plan, ScreenOptions options)
    {
        if (options.Width < 60 || options.Height < 60)
        {
            throw new ArgumentOutOfRangeException(nameof(options), options, "A drawing needs at least 60 × 60 mm.");
        }

        if (options.Row < 1 || options.Row > plan.Layout.Rows.Count)
        {
            throw new ArgumentOutOfRangeException(nameof(options), options.Row, "There is no such row.");
        }
    }

    private static string TitleOf(Plan plan, ScreenKind kind, ScreenOptions options) =>
        kind switch
        {
            ScreenKind.Plan => Words.Of("screen.view.above", plan.Rig.Name),
            ScreenKind.Front => Words.Of("screen.view.front", plan.Rig.Name, options.Row),
            _ => Words.Of("screen.view.end", plan.Rig.Name),
        };

    private static string DescriptionOf(Plan plan, StepScale? steps)
    {
        var pots = plan.Layout.Rows.Sum(r => r.Pots.Count);
        var planted = plan.Layout.Rows.Sum(r => r.Pots.Count(p => p.Planted));
        var said = Words.Of(
            "screen.view.about",
            Words.Count("screen.view.rows", plan.Layout.Rows.Count),
            Words.Count("screen.view.pots", pots),
            planted
        );
        return steps is null ? said : $"{said} {Words.Of("screen.view.coloured", steps.Title)}";
    }
}
