using System.Globalization;

namespace Dripwright.Workbench.Tests.Browser;

/// <summary>How long a page takes to answer an edit. A measurement, made only where asked for: it fails nothing.</summary>
public sealed class AnswerTimes(Chromium chromium)
{
    // From the letter typed to the new drawing in the page, on one machine, browser and server together.
    private const string Typing = """
        async () => {
          const times = [];
          const input = document.getElementById("f-rows-0-spacing");
          for (let i = 0; i < 25; i++) {
            const start = performance.now();
            const drawn = new Promise((done) => {
              const watcher = new MutationObserver((all) => {
                if (all.some((one) => [...one.addedNodes].some((node) => node instanceof SVGSVGElement))) {
                  watcher.disconnect();
                  done(performance.now());
                }
              });
              watcher.observe(document.getElementById("paper"), { childList: true, subtree: true });
            });
            input.value = i % 2 ? "12 in" : "13 in";
            input.dispatchEvent(new Event("input", { bubbles: true }));
            times.push((await drawn) - start);
            await new Promise((done) => setTimeout(done, 1200));
          }
          return times;
        }
        """;

    [Fact]
    public async Task The_time_from_a_letter_to_the_new_drawing_is_told_where_asked_for()
    {
        Assert.SkipWhen(
            Environment.GetEnvironmentVariable("DRIPWRIGHT_MEASURE") is null,
            "DRIPWRIGHT_MEASURE is not set."
        );
        await using var bench = await Bench.Open(withDemo: false);
        await bench.Garden.AddRigAsync(
            "Ten",
            """{ "rows": [{ "pots": 10 }] }""",
            TestContext.Current.CancellationToken
        );
        await using var visit = await chromium.Visit(bench);
        await visit.Rig("row");
        await visit.Drawing.WaitForAsync();
        await visit.Page.WaitForTimeoutAsync(3000);
        var times = (await visit.Page.EvaluateAsync<double[]>(Typing)).Skip(3).Order().ToList();
        Console.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"Edit of ten pots, ms: least {times[0]:0}, median {times[times.Count / 2]:0}, 90 % {times[times.Count * 9 / 10]:0}, most {times[^1]:0}"
            )
        );
    }
}
