namespace Dripwright.Workbench.Tests.Http;

public sealed class FiftyTests
{
    /// <summary>How fast is for bench/ to say; here only that it goes well.</summary>
    [Fact]
    public async Task Fifty_people_edit_at_once_without_an_error()
    {
        await using var caller = await Caller.Open();
        var times = await Fifty.Edit(caller, people: 50, edits: 2);
        Assert.Equal(50 * 2 * 2, times.Count);
        if (Environment.GetEnvironmentVariable("DRIPWRIGHT_TIMES") == "1")
        {
            Tell("cold", times);
            await Fifty.Edit(caller, people: 50, edits: 6);
            Tell("warm", await Fifty.Edit(caller, people: 50, edits: 3));
        }
    }

    private static void Tell(string when, List<double> times)
    {
        times.Sort();
        TestContext.Current.TestOutputHelper?.WriteLine(
            string.Create(
                System.Globalization.CultureInfo.InvariantCulture,
                $"{when}: median {times[times.Count / 2]:0} ms, 95th percentile {times[times.Count * 95 / 100]:0} ms, longest {times[^1]:0} ms"
            )
        );
    }
}

/// <summary>People who each edit a rig of their own.</summary>
internal static class Fifty
{
    /// <summary>Each keeps a draft of a ten-pot rig and has it planned, again and again. Gives the milliseconds of each answer.</summary>
    public static async Task<List<double>> Edit(Caller caller, int people, int edits)
    {
        var rigs = new List<(string Id, string Tag)>();
        for (var i = 0; i < people; i++)
        {
            rigs.Add(await caller.Add("Bench " + i.ToString(System.Globalization.CultureInfo.InvariantCulture)));
        }

        var all = await Task.WhenAll(rigs.Select((rig, who) => OneEdits(caller, who, rig.Id, rig.Tag, edits)));
        return [.. all.SelectMany(times => times)];
    }

    private static async Task<List<double>> OneEdits(Caller caller, int who, string id, string tag, int edits)
    {
        List<double> times = [];
        for (var i = 0; i < edits; i++)
        {
            // Each has a rig unlike all others: no answer is one that was made for somebody else.
            var spacing = (300 + (50 * i) + who).ToString(System.Globalization.CultureInfo.InvariantCulture);
            var text = $$"""{ "format": 1, "rows": [ { "pots": 10, "spacing": "{{spacing}} mm" } ] }""";
            var kept = await Timed(times, () => caller.Send(HttpMethod.Put, $"rigs/{id}", text, tag));
            Assert.True(kept.Status == 200, kept.Text);
            tag = kept.Tag;
            var plan = await Timed(times, () => caller.Get($"rigs/{id}/plan?draws=false"));
            Assert.True(plan.Status == 200, plan.Text);
            Assert.Equal(tag, plan.Tag);
        }

        return times;
    }

    private static async Task<Caller.Answer> Timed(List<double> times, Func<Task<Caller.Answer>> ask)
    {
        var watch = System.Diagnostics.Stopwatch.StartNew();
        var answer = await ask();
        times.Add(watch.Elapsed.TotalMilliseconds);
        return answer;
    }
}
