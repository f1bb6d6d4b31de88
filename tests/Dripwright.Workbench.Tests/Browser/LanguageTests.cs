using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Stands.Checks;
using Dripwright.Workbench.Editing;
using Dripwright.Workbench.Methods;
using Microsoft.Playwright;

namespace Dripwright.Workbench.Tests.Browser;

/// <summary>In a language of marked and longer words it shows which words of a page do not come from the texts, and what breaks.</summary>
public sealed partial class LanguageTests(Chromium chromium)
{
    internal const string Pseudo = "qps-ploc";

    // Units, signs of elements, names of files, papers and the program are the same in every language.
    private static readonly string[] s_same =
    [
        "Dripwright",
        "rig",
        "json",
        "Letter",
        "SVG",
        "PNG",
        "CSV",
        "PDF",
        "STL",
        "MF",
        "UTC",
        "in",
        "ft",
        "gal",
        "min",
        "h",
        "day",
        "psi",
        "kPa",
        "mm",
        "cm",
        "lb",
        "lbf",
        "oz",
        "fl",
        "kg",
        "mg",
        "mL",
        "dS",
        "kWh",
        "kB",
        "MB",
        "GB",
        "pH",
        "EC",
        "µm",
        "qt",
        "gpm",
        "gph",
        "US",
        "USD",
        "dripwright",
        // Signs of elements, and of units in sources.
        "Ca",
        "Mg",
        "Fe",
        "Mn",
        "Zn",
        "Cu",
        "Mo",
        "Na",
        "Cl",
        "kN",
    ];

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Every_word_of_every_room_comes_from_the_texts_or_is_data()
    {
        await using var bench = await Bench.Open();
        await using var visit = await chromium.Visit(bench.Url, language: Pseudo);
        var others = await Others(bench);
        var rig = (await bench.Garden.RigsAsync(Stop))[^1];
        List<string> own = [];
        foreach (var stage in Stage.All)
        {
            await visit.Rig(stage.Key, rig.Id);
            await AtRest(visit.Page, stage.Key);
            own.AddRange((await Own(visit.Page, others)).Select(word => $"{stage.Key}: {word}"));
        }

        Assert.True(own.Count == 0, string.Join("\n", own));
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/garden")]
    [InlineData("/propose")]
    [InlineData("/methods")]
    [InlineData("/people")]
    [InlineData("/no-such-page")]
    public async Task Every_word_of_the_other_pages_comes_from_the_texts_or_is_data(string address)
    {
        await using var bench = await Bench.Open();
        await using var visit = await chromium.Visit(bench.Url, language: Pseudo);
        await visit.Page.GotoAsync(address);
        await visit.Page.Locator("h1").First.WaitForAsync();
        await visit.Page.WaitForTimeoutAsync(500);
        Assert.Equal(Pseudo, await visit.Page.Locator("html").GetAttributeAsync("lang"));
        Assert.Equal("", string.Join("\n", await Own(visit.Page, await Others(bench))));
    }

    [Fact]
    public async Task Every_word_of_the_page_for_signing_in_comes_from_the_texts()
    {
        await using var bench = await Bench.Open(network: true);
        await using var visit = await chromium.Visit(bench.Url, language: Pseudo);
        await visit.Page.GotoAsync("/sign-in?said=wrong");
        Assert.Equal("", string.Join("\n", await Own(visit.Page, [])));
    }

    [Fact]
    public async Task What_is_typed_and_kept_does_not_change_with_the_language()
    {
        await using var bench = await Bench.Open(withDemo: false);
        var rig = await bench.Garden.AddRigAsync("Two", """{ "rows": [{ "pots": 6 }] }""", Stop);
        await using var visit = await chromium.Visit(bench.Url, language: Pseudo);
        await visit.Rig("row", rig.Id);
        await visit.Page.Locator("#f-rows-0-pots").FillAsync("7");
        await visit.Page.Locator("#f-rows-0-pots").BlurAsync();
        await visit.Page.WaitForTimeoutAsync(1500);
        var text = (await bench.Garden.DraftAsync(rig.Id, Stop))!.Text;
        Assert.Equal("""{ "rows": [{ "pots": 7 }] }""", text);
    }

    [Fact]
    public async Task Every_fault_of_a_rig_file_is_told_in_the_readers_language()
    {
        const string Text = """{ "rows": [{ "pots": 0, "spacing": "1 foots" }], "pump": { "shutOffHead": "9 ft" } }""";
        await using var bench = await Bench.Open(withDemo: false);
        var rig = await bench.Garden.AddRigAsync("Bad", Text, Stop);
        await using var visit = await chromium.Visit(bench.Url, language: Pseudo);
        await visit.Rig("row", rig.Id);
        await visit.Page.Locator("#f-rows-0-spacing-fault-0").WaitForAsync();
        var beside = await visit.Page.Locator("p.fault").AllInnerTextsAsync();
        List<string> said = [.. await visit.Page.Locator(".finding.stop").AllInnerTextsAsync()];
        await visit.Rig("file", rig.Id);
        await visit.Page.Locator("li.fault").First.WaitForAsync();
        said.AddRange(await visit.Page.Locator("li.fault").AllInnerTextsAsync());

        using var speaking = new Language.Speaking(CultureInfo.GetCultureInfo(Pseudo));
        var told = Language.FaultTelling.Told(RigReader.Read(Text, "Bad", PartsCatalogue.Default).Faults);
        Assert.Equal(3, told.Count);
        // In the list of the room and on the page of the file.
        Assert.All(
            told,
            fault => Assert.Equal(2, said.Count(text => text.Contains(fault.Sentence(), StringComparison.Ordinal)))
        );
        // The fields of two of them are in sight, and tell theirs; one offers what was meant.
        Assert.Collection(
            beside,
            text => Assert.Equal(told[0].Problem(), text.Trim()),
            text => Assert.StartsWith(told[1].Problem(), text, StringComparison.Ordinal)
        );
        Assert.All([.. said, .. beside], text => Assert.Contains("⟦", text, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(1280)]
    [InlineData(390)]
    public async Task No_page_is_wider_than_the_screen_when_words_are_a_third_longer(int width)
    {
        await using var bench = await Bench.Open();
        await using var visit = await chromium.Visit(bench.Url, width, language: Pseudo);
        var rig = (await bench.Garden.RigsAsync(Stop))[^1];
        var folder = Environment.GetEnvironmentVariable("DRIPWRIGHT_PICTURES");
        List<string> wide = [];
        foreach (
            var room in Stage
                .All.Select(stage => string.Create(CultureInfo.InvariantCulture, $"/rigs/{rig.Id}/{stage.Key}"))
                .Concat(["/", "/garden", "/propose", "/methods", "/people"])
        )
        {
            await visit.Page.GotoAsync(room);
            await visit.Page.Locator("h1, .titleblock").First.WaitForAsync();
            await AtRest(visit.Page, room.Split('/')[^1]);
            var over = await visit.Page.EvaluateAsync<int>(
                "document.documentElement.scrollWidth - document.documentElement.clientWidth"
            );
            var cut = await visit.Page.EvaluateAsync<string[]>(Cut);
            wide.AddRange(cut.Select(text => $"{room} cuts off: {text}"));
            if (over > 0)
            {
                var first = await visit.Page.EvaluateAsync<string>(Widest);
                wide.Add($"{room} is {over.ToString(CultureInfo.InvariantCulture)} px too wide: {first}");
            }

            if (folder is not null)
            {
                Directory.CreateDirectory(folder);
                await visit.Page.ScreenshotAsync(
                    new()
                    {
                        Path = Path.Combine(
                            folder,
                            $"pseudo-{width.ToString(CultureInfo.InvariantCulture)}-{(room == "/" ? "home" : room.Split('/')[^1])}.png"
                        ),
                        FullPage = true,
                    }
                );
            }
        }

        Assert.True(wide.Count == 0, string.Join("\n", wide));
    }

    [Fact]
    public void A_word_of_its_own_would_be_found()
    {
        Assert.Equal(["pipe"], Words("⟦Cút ⟦pípé⟧⟧ 3 ½ in, pipe D1", ["drain pipe"]));
        Assert.Empty(Words("⟦Cút⟧ 3 ½ in, drain pipe D1", ["drain pipe"]));
    }

    // Buttons, links and labels whose words stick out of them.
    private const string Cut = """
        [...document.querySelectorAll('button, a, label, th, h1, h2, h3, summary, legend')]
            .filter(one => one.offsetParent && getComputedStyle(one).overflow !== 'visible' && (one.scrollWidth > one.clientWidth + 1))
            .map(one => one.textContent.trim().slice(0, 60))
        """;

    // The innermost that sticks out to the right.
    private const string Widest = """
        [...document.querySelectorAll('body *')]
            .filter(one => one.getBoundingClientRect().right > document.documentElement.clientWidth + 1)
            .filter(one => ![...one.children].some(inner => inner.getBoundingClientRect().right > document.documentElement.clientWidth + 1))
            .map(one => one.outerHTML.slice(0, 120)).slice(0, 4).join(' | ')
        """;

    private const string AllText = """
        () => {
            const said = [];
            const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT | NodeFilter.SHOW_ELEMENT);
            for (let at = walker.currentNode; at; at = walker.nextNode()) {
                if (at.nodeType === Node.TEXT_NODE) {
                    if (!['SCRIPT', 'STYLE', 'TEXTAREA', 'NOSCRIPT', 'style'].includes(at.parentNode.nodeName)) {
                        said.push(at.textContent);
                    }
                } else {
                    for (const name of ['aria-label', 'placeholder', 'title', 'alt']) {
                        if (at.hasAttribute(name)) {
                            said.push(at.getAttribute(name));
                        }
                    }
                }
            }
            said.push(document.title);
            return said.join(' ');
        }
        """;

    private static async Task AtRest(IPage page, string room)
    {
        if (room is "printed" or "pack")
        {
            await page.Locator(".facts dl, .sheetview svg").First.WaitForAsync(new() { Timeout = 60_000 });
        }

        await page.WaitForTimeoutAsync(2500);
    }

    internal static async Task<IReadOnlyList<string>> Own(IPage page, IEnumerable<string> others) =>
        Words(await page.EvaluateAsync<string>(AllText), others);

    /// <summary>The words outside of marks that are no data.</summary>
    private static IReadOnlyList<string> Words(string said, IEnumerable<string> others)
    {
        var left = new StringBuilder();
        var depth = 0;
        foreach (var letter in said)
        {
            depth += letter == '⟦' ? 1 : 0;
            left.Append(depth > 0 ? ' ' : letter);
            depth -= letter == '⟧' && depth > 0 ? 1 : 0;
        }

        var text = Space().Replace(left.ToString(), " ");
        foreach (var other in others.Where(other => text.Contains(other, StringComparison.OrdinalIgnoreCase)))
        {
            text = Regex.Replace(
                text,
                $@"(?<!\w){Regex.Escape(other)}(?!\w)",
                " ",
                RegexOptions.IgnoreCase,
                TimeSpan.FromSeconds(5)
            );
        }

        return [.. Word().Matches(text).Select(match => match.Value).Where(word => !s_same.Contains(word)).Distinct()];
    }

    /// <summary>What pages take from elsewhere: the catalogue, the grower's own words, sources, and headings of methods.</summary>
    private static async Task<IReadOnlyList<string>> Others(Bench bench)
    {
        var catalogue = (await bench.Garden.CatalogueAsync(Stop)).Catalogue;
        List<string> all =
        [
            .. CatalogueListing.Of(catalogue).SelectMany(group => group.Rows.SelectMany(row => row)),
            .. catalogue.Targets.Stages.Select(stage => stage.Crop),
            .. MethodText.All.Select(method => method.Title),
            bench.Folder,
            .. Engine
                .Proposing.BriefReader.Read("{}"u8.ToArray(), "", catalogue)
                .Assumed.Select(assumed => assumed.Value),
        ];
        foreach (var entry in await bench.Garden.RigsAsync(Stop))
        {
            var draft = (await bench.Garden.DraftAsync(entry.Id, Stop))!;
            all.Add(entry.Name);
            all.AddRange(Quoted().Matches(draft.Text).Select(match => match.Groups[1].Value));
            var reading = RigReader.Read(Encoding.UTF8.GetBytes(draft.Text), entry.Name, catalogue);
            var plan = Engine.Planner.Of(reading.Resolved!, reading.Assumed, new Engine.PlanOptions { Draws = 0 });
            all.AddRange(plan.Findings.Select(finding => finding.Source));
            all.AddRange(
                (plan.Stand?.Rows ?? [])
                    .SelectMany(row => row.Cases.Append(row.Fallen).OfType<CaseResult>())
                    .SelectMany(each => each.Loads.Shares.Select(share => share.Source))
            );
            all.AddRange(Printing(plan));
            all.AddRange(plan.Layout.Stand.Members.Select(member => member.Label));
            // Pieces of pipe are lettered, "H-A"; the rest of a length is a "spare" one.
            all.AddRange(
                plan.Parts.Cuts.SelectMany(cut => cut.Stocks)
                    .SelectMany(stock => stock.Pieces)
                    .Select(piece => piece.Label)
            );
            all.AddRange(plan.Parts.Holes.Select(hole => hole.Piece));
            all.AddRange(reading.Assumed.Select(assumed => assumed.Value));
        }

        return
        [
            .. all.Select(text => Space().Replace(text, " ").Trim())
                .Where(text => text.Length > 2)
                .Distinct(StringComparer.OrdinalIgnoreCase)
                .OrderByDescending(text => text.Length),
        ];
    }

    // What is printed says itself how to lay it and what to mind.
    private static IEnumerable<string> Printing(Engine.Plan plan) =>
        plan
            .Printed.Parts.Concat(
                Engine.Printed.PrintedParts.Small(plan.Rig, plan.Layout).SelectMany(small => small.Parts)
            )
            .SelectMany(part =>
                part.Design.Cautions.Select(caution => $"{caution}")
                    .Append($"{part.Design.Orientation}")
                    .Append($"{part.Use}")
            );

    [GeneratedRegex(@"\s+", RegexOptions.None, 5000)]
    private static partial Regex Space();

    [GeneratedRegex("(?<![\\p{L}\\d-])\\p{L}[\\p{L}'-]+", RegexOptions.None, 5000)]
    private static partial Regex Word();

    [GeneratedRegex("\"([^\"]+)\"", RegexOptions.None, 5000)]
    private static partial Regex Quoted();
}
