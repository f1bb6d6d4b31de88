using System.Globalization;

namespace Dripwright.Workbench.Tests.Browser;

/// <summary>How long a page takes to answer an edit. A measurement, made only where asked for: it fails nothing.</summary>
public sealed class AnswerTimes(Chromium chromium)
{
    // From the last letter typed to the drawing of what was typed, on one machine, browser and server together.
    private const string Typing = """
        async ([rounds, letters]) => {
          const times = [];
          const input = document.getElementById("f-rows-0-spacing");
          const wait = (ms) => new Promise((done) => setTimeout(done, ms));
          for (let i = 0; i < rounds; i++) {
            const last = i % 2 ? "12 in" : "13 in";
            for (let letter = 1; letter < letters; letter++) {
              input.value = `${14 + letter} in`;
              input.dispatchEvent(new Event("input", { bubbles: true }));
              await wait(60);
            }
            let drawn = 0;
            const watcher = new MutationObserver((all) => {
              if (all.some((one) => [...one.addedNodes].some((node) => node instanceof SVGSVGElement))) {
                drawn = performance.now();
              }
            });
            watcher.observe(document.getElementById("paper"), { childList: true, subtree: true });
            const start = performance.now();
            input.value = last;
            input.dispatchEvent(new Event("input", { bubbles: true }));
            // The newest drawing is there when none has come for a while.
            while (drawn === 0 || performance.now() - drawn < 1500) {
              await wait(50);
            }
            watcher.disconnect();
            times.push(drawn - start);
          }
          return times;
        }
        """;

    [Theory]
    [InlineData(10, 1, 25)]
    [InlineData(500, 1, 8)]
    [InlineData(500, 12, 6)]
    public async Task The_time_from_the_last_letter_to_the_new_drawing_is_told_where_asked_for(
        int pots,
        int letters,
        int rounds
    )
    {
        Assert.SkipWhen(
            Environment.GetEnvironmentVariable("DRIPWRIGHT_MEASURE") is null,
            "DRIPWRIGHT_MEASURE is not set."
        );
        await using var bench = await Bench.Open(withDemo: false);
        await bench.Garden.AddRigAsync(
            "Measured",
            string.Create(
                CultureInfo.InvariantCulture,
                $$"""{ "rows": [{ "pots": {{Math.Min(50, pots)}}, "count": {{Math.Max(1, pots / 50)}} }] }"""
            ),
            TestContext.Current.CancellationToken
        );
        await using var visit = await chromium.Visit(bench);
        await visit.Rig("row");
        await visit.Drawing.WaitForAsync();
        await visit.Page.WaitForTimeoutAsync(3000);
        var times = (await visit.Page.EvaluateAsync<double[]>(Typing, new[] { rounds, letters }))
            .Skip(2)
            .Order()
            .ToList();
        Console.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{pots} pots, {letters} letters, ms: least {times[0]:0}, median {times[times.Count / 2]:0}, 90 % {times[times.Count * 9 / 10]:0}, most {times[^1]:0}"
            )
        );
    }
}
