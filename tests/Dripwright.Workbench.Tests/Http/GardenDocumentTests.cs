namespace Dripwright.Workbench.Tests.Http;

public sealed class GardenDocumentTests
{
    [Fact]
    public async Task Ones_own_catalogue_is_kept_put_in_force_and_then_in_the_whole_one()
    {
        await using var caller = await Caller.Open();
        var empty = await caller.Get("catalogue");
        (await caller.Get("catalogue?revision=0")).IsProblem(404);
        const string own = """
            { "format": 1, "pots": [ { "key": "pot-mine", "basedOn": "pot-square-3-gal", "name": "My tub", "source": "its label" } ] }
            """;
        (await caller.Send(HttpMethod.Put, "catalogue", own)).IsProblem(428);
        var half = await caller.Send(HttpMethod.Put, "catalogue", "{ half", empty.Tag);
        Assert.Equal(200, half.Status);
        var refused = (await caller.Post("catalogue/revisions", "{}", half.Tag)).IsProblem(422);
        Assert.NotEmpty(refused.Json.GetProperty("faults").EnumerateArray());
        (await caller.Send(HttpMethod.Put, "catalogue", own, empty.Tag)).IsProblem(412);
        var kept = await caller.Send(HttpMethod.Put, "catalogue", own, half.Tag);
        var saved = await caller.Post("catalogue/revisions", """{ "note": "tubs" }""", kept.Tag);
        Assert.Equal(201, saved.Status);
        Assert.Equal(own, (await caller.Get(saved.Headers["Location"])).Text);
        Assert.Equal(own, (await caller.Get("catalogue?revision=0")).Text);
        Assert.Equal("tubs", (await caller.Get("catalogue/revisions")).Json[0].GetProperty("note").GetString());
        Assert.Contains("My tub", (await caller.Get("catalogue/all?kind=pots")).Text, StringComparison.Ordinal);
        (await caller.Get("catalogue?revision=9")).IsProblem(404);
    }

    [Fact]
    public async Task What_lies_in_the_garden_is_used_first_by_every_rig_of_it_and_by_no_file_that_is_sent()
    {
        await using var caller = await Caller.Open();
        var (id, _) = await caller.Add("Bench");
        Assert.Equal(0, await OnHand($"rigs/{id}/plan?draws=false"));
        var list = await caller.Get("on-hand");
        Assert.Equal("[]", list.Text.Trim());
        var kept = await caller.Send(
            HttpMethod.Put,
            "on-hand",
            """[ { "part": "pot-square-3-gal", "count": 4 } ]""",
            list.Tag
        );
        Assert.Equal(0, await OnHand($"rigs/{id}/plan?draws=false"));
        Assert.Equal(201, (await caller.Post("on-hand/revisions", "{}", kept.Tag)).Status);
        Assert.Equal(4, await OnHand($"rigs/{id}/plan?draws=false"));
        Assert.Equal(0, Pots(await caller.Post("plan?draws=false", Caller.TenPots)));

        async Task<int> OnHand(string address) => Pots(await caller.Get(address));

        static int Pots(Caller.Answer plan) =>
            plan
                .Json.GetProperty("parts")
                .EnumerateArray()
                .Single(line => line.GetProperty("part").GetString() == "pot-square-3-gal")
                .GetProperty("onHand")
                .GetInt32();
    }

    [Fact]
    public async Task Settings_are_changed_one_by_one_and_wrong_ones_refused()
    {
        await using var caller = await Caller.Open();
        var named = await caller.Send(HttpMethod.Patch, "garden", """{ "name": "South side" }""");
        Assert.Equal("South side", named.Json.GetProperty("name").GetString());
        await caller.Send(HttpMethod.Patch, "garden", """{ "units": "metric" }""");
        var now = (await caller.Get("garden")).Json;
        Assert.Equal("South side", now.GetProperty("name").GetString());
        Assert.Equal("metric", now.GetProperty("units").GetString());
        (await caller.Send(HttpMethod.Patch, "garden", """{ "units": "cubits" }""")).IsProblem(422);
        (await caller.Send(HttpMethod.Patch, "garden", """{ "name": "" }""")).IsProblem(422);
    }

    [Fact]
    public async Task A_first_rig_file_comes_from_a_few_answers_and_checks_sound()
    {
        await using var caller = await Caller.Open();
        var made = await caller.Get(
            "start?name=Long&units=metric&rows=2&pots=6&spacing=35%20cm&crop=pepper&staggered=true"
        );
        Assert.Equal(200, made.Status);
        Assert.Matches("\"spacing\": *\"(35 cm|350 mm)\"", made.Text);
        var check = (await caller.Post("check", made.Text)).Json;
        Assert.True(check.GetProperty("sound").GetBoolean());
        Assert.Equal(200, (await caller.Get("start")).Status);
        (await caller.Get("start?units=cubits")).IsProblem(400);
        var spacing = (await caller.Get("start?spacing=35%20foots")).IsProblem(422);
        Assert.Contains("35 foots", spacing.Text, StringComparison.Ordinal);
        (await caller.Get("start?rows=100&pots=5000")).IsProblem(422);
    }

    [Fact]
    public async Task From_one_revision_to_the_next_it_is_told_what_to_buy()
    {
        await using var caller = await Caller.Open();
        var (id, tag) = await caller.Add("Bench");
        await caller.Post($"rigs/{id}/revisions", "{}", tag);
        var more = Caller.TenPots.Replace("10", "12", StringComparison.Ordinal);
        await caller.Send(HttpMethod.Put, $"rigs/{id}", more, "*");
        var steps = (await caller.Get($"rigs/{id}/compare?from=1")).Json;
        Assert.NotEmpty(steps.GetProperty("changes").EnumerateArray());
        var pots = steps
            .GetProperty("buy")
            .EnumerateArray()
            .Single(line => line.GetProperty("part").GetString() == "pot-square-3-gal");
        Assert.Equal(2, pots.GetProperty("buy").GetInt32());
        var same = (await caller.Get($"rigs/{id}/compare?from=1&to=1")).Json;
        Assert.Empty(same.GetProperty("changes").EnumerateArray());
        Assert.Empty(same.GetProperty("buy").EnumerateArray());
        (await caller.Get($"rigs/{id}/compare?from=7")).IsProblem(404);
        (await caller.Get($"rigs/{id}/compare")).IsProblem(400);
    }

    [Fact]
    public async Task Printed_parts_plots_and_steps_of_a_rig_are_fetched()
    {
        await using var caller = await Caller.Open();
        var (id, tag) = await caller.Add("Bench", """{ "format": 1, "rows": [ { "pots": 2 } ] }""");
        var parts = await caller.Get($"rigs/{id}/print-parts.zip");
        Assert.Equal("application/zip", parts.Type);
        using (var zip = new System.IO.Compression.ZipArchive(new MemoryStream(parts.Bytes)))
        {
            Assert.Contains(zip.Entries, entry => entry.FullName.EndsWith(".3mf", StringComparison.Ordinal));
        }

        const string flat = """{ "format": 1, "rows": [ { "pots": 2, "standHeight": "0 in" } ] }""";
        (await caller.Post("print-parts.zip", flat)).IsProblem(422);

        var plots = (await caller.Get($"rigs/{id}/plots?draws=false")).Json;
        var key = plots[0].GetProperty("key").GetString();
        foreach (var (kind, type) in new[] { ("svg", "image/svg+xml"), ("png", "image/png"), ("csv", "text/csv") })
        {
            var plot = await caller.Get($"rigs/{id}/plots/{key}.{kind}?draws=false");
            Assert.Equal(type, plot.Type);
            Assert.NotEmpty(plot.Bytes);
        }

        (await caller.Get($"rigs/{id}/plots/nothing.svg?draws=false")).IsProblem(404);

        await caller.Send(HttpMethod.Put, $"rigs/{id}?what=more", Caller.TenPots, tag);
        var steps = (await caller.Get($"rigs/{id}/steps")).Json;
        Assert.Equal("more", steps[0].GetProperty("what").GetString());
        var first = steps[steps.GetArrayLength() - 1].GetProperty("number").GetRawText();
        (await caller.Post($"rigs/{id}/steps/{first}", null, tag)).IsProblem(412);
        Assert.Equal(200, (await caller.Post($"rigs/{id}/steps/{first}", null, "*")).Status);
        Assert.DoesNotContain("10", (await caller.Get($"rigs/{id}")).Text, StringComparison.Ordinal);
    }
}
