using System.IO.Compression;
using System.Text;

namespace Dripwright.Workbench.Tests.Http;

public sealed class PlanTests
{
    private const string Faulty = """
        { "format": 1,
          "rows": [ { "pots": 10, "spacing": "1 foots" } ] }
        """;

    [Fact]
    public async Task A_rig_file_is_checked_planned_drawn_and_packed()
    {
        await using var caller = await Caller.Open();
        var check = await caller.Post("check", Caller.TenPots);
        Assert.True(check.Json.GetProperty("sound").GetBoolean());
        var plan = await caller.Post("plan?draws=false", Caller.TenPots);
        Assert.Equal(200, plan.Status);
        Assert.Equal(1, plan.Json.GetProperty("format").GetInt32());
        var summary = await caller.Post("summary?draws=false", Caller.TenPots);
        Assert.NotEmpty(summary.Json.GetProperty("groups").EnumerateArray());
        var sheets = await caller.Post("sheets?draws=false&paper=a4", Caller.TenPots);
        Assert.True(sheets.Json.GetArrayLength() > 8);
        var sheet = await caller.Post("sheets/2?draws=false", Caller.TenPots);
        Assert.Equal("image/svg+xml", sheet.Type);
        Assert.StartsWith("<svg", sheet.Text, StringComparison.Ordinal);
        var pdf = await caller.Post("pack.pdf?draws=false&date=2026-03-01", Caller.TenPots);
        Assert.Equal("application/pdf", pdf.Type);
        Assert.Equal("%PDF"u8.ToArray(), pdf.Bytes[..4]);
        var zip = await caller.Post("pack.zip?draws=false", Caller.TenPots);
        using var files = new ZipArchive(new MemoryStream(zip.Bytes));
        Assert.NotNull(files.GetEntry("plan.json"));
    }

    [Fact]
    public async Task Faults_come_with_path_line_and_column()
    {
        await using var caller = await Caller.Open();
        var check = await caller.Post("check", Faulty);
        Assert.Equal(200, check.Status);
        Assert.False(check.Json.GetProperty("sound").GetBoolean());
        var fault = check.Json.GetProperty("faults")[0];
        Assert.Equal("rows[0].spacing", fault.GetProperty("path").GetString());
        Assert.Equal(2, fault.GetProperty("line").GetInt32());
        foreach (var verb in (string[])["plan", "summary", "sheets", "sheets/1", "pack.pdf", "pack.zip"])
        {
            var refused = (await caller.Post(verb, Faulty)).IsProblem(422);
            Assert.Equal("rows[0].spacing", refused.Json.GetProperty("faults")[0].GetProperty("path").GetString());
        }
    }

    [Fact]
    public async Task What_cannot_be_asked_is_refused_in_words()
    {
        await using var caller = await Caller.Open();
        (await caller.Post("sheets/9999?draws=false", Caller.TenPots)).IsProblem(404);
        (await caller.Post("pack.pdf?paper=a0", Caller.TenPots)).IsProblem(400);
        (await caller.Post("pack.pdf?date=tomorrow", Caller.TenPots)).IsProblem(400);
        (await caller.Post("suggest?seconds=900", "{}")).IsProblem(400);
        (await caller.Post("suggest", """{ "crops": 5 }""")).IsProblem(422);
        (await caller.Get("no-such-thing")).IsProblem(404);
        (await caller.Send(HttpMethod.Delete, "plan", (string?)null)).IsProblem(405);
        (await caller.Send(HttpMethod.Post, "plan", Caller.TenPots, null, "text/plain")).IsProblem(415);
    }

    [Fact]
    public async Task A_brief_gives_rigs_within_its_seconds()
    {
        await using var caller = await Caller.Open();
        var answer = await caller.Post(
            "suggest?seconds=5",
            """{ "site": { "roomLength": "20 ft", "roomWidth": "10 ft" }, "crops": [ { "crop": "basil", "plants": 4 } ] }"""
        );
        Assert.Equal(200, answer.Status);
        Assert.True(answer.Json.TryGetProperty("proposals", out _), answer.Text[..Math.Min(200, answer.Text.Length)]);
    }

    [Fact]
    public async Task Catalogue_and_schemas_are_there()
    {
        await using var caller = await Caller.Open();
        var pumps = await caller.Get("catalogue/all?kind=pumps");
        Assert.NotEmpty(pumps.Json.GetProperty("pumps").EnumerateArray());
        Assert.False(pumps.Json.TryGetProperty("pots", out _));
        (await caller.Get("catalogue/all?kind=cars")).IsProblem(400);
        Assert.True((await caller.Get("schema/rig")).Json.TryGetProperty("$schema", out _));
        Assert.True((await caller.Get("schema/brief")).Json.TryGetProperty("$schema", out _));
        Assert.True((await caller.Get("schema/catalogue")).Json.TryGetProperty("$schema", out _));
    }

    [Fact]
    public async Task The_feed_is_mixed_mended_and_looked_ahead()
    {
        await using var caller = await Caller.Open();
        const string Fed = """
            { "rows": [ { "pots": 10, "planting": [ { "crop": "tomato" } ] } ],
              "nutrients": { "crop": "tomato", "pureShare": "100 %" } }
            """;
        var mix = await caller.Post("mix", Fed);
        Assert.NotEmpty(mix.Json.GetProperty("weigh").EnumerateArray());
        var mend = await caller.Post("adjust-tank?ec=900+ppm&meterScale=500&ph=6.4&volume=20+gal&days=30", Fed);
        Assert.NotEmpty(mend.Json.GetProperty("steps").EnumerateArray());
        Assert.NotEmpty(mend.Json.GetProperty("renewal").EnumerateArray());
        var uptake = await caller.Post(
            "uptake?firstEc=1.9+dS/m&firstVolume=30+gal&secondEc=2.1+dS/m&secondVolume=20+gal&days=3",
            Fed
        );
        // By hand: (30 · 1.9 - 20 · 2.1) / 10.
        Assert.Equal(1.5, uptake.Json.GetProperty("takenDecisiemensPerMetre").GetDouble(), 1e-6);
        var weeks = await caller.Post("weeks-ahead", Fed);
        Assert.Equal(12, weeks.Json.GetProperty("drift")[0].GetProperty("weeks").GetArrayLength());

        var wrong = (await caller.Post("adjust-tank?ec=900+ppm&meterScale=600&ph=6,4,0&volume=20", Fed)).IsProblem(400);
        foreach (var field in (string[])["meterScale", "ph", "volume"])
        {
            Assert.Contains(field, wrong.Json.GetProperty("detail").GetString(), StringComparison.Ordinal);
        }

        (await caller.Post("adjust-tank?ec=40+dS/m&ph=6.4&volume=20+gal", Fed)).IsProblem(422);
        (await caller.Post("weeks-ahead", Caller.TenPots)).IsProblem(422);
    }

    [Fact]
    public async Task A_body_larger_than_a_rig_file_may_be_is_refused()
    {
        await using var caller = await Caller.Open();
        caller.Client.DefaultRequestHeaders.ExpectContinue = true;
        var large = new string(' ', Store.Ground.Limits.TextBytes + 1) + "{}";
        foreach (var verb in (string[])["check", "plan", "suggest", "rigs?name=large"])
        {
            (await caller.Post(verb, large)).IsProblem(413);
        }

        // Without a length told beforehand it is cut off where it becomes too much.
        using var stream = new MemoryStream(Encoding.UTF8.GetBytes(large));
        using var chunked = new StreamContent(stream);
        (
            await caller.Send(
                HttpMethod.Post,
                "check",
                chunked,
                null,
                "application/json",
                ("Transfer-Encoding", "chunked")
            )
        ).IsProblem(413);
    }

    [Fact]
    public async Task A_rig_of_five_thousand_pots_does_not_keep_others_waiting()
    {
        await using var caller = await Caller.Open();
        caller.Client.DefaultRequestHeaders.ExpectContinue = true;
        var large = Enumerable
            .Range(0, 4)
            .Select(_ => caller.Post("plan", """{ "format": 1, "rows": [ { "pots": 5000 } ] }"""))
            .ToList();
        for (var i = 0; i < 3; i++)
        {
            Assert.Equal(200, (await caller.Post("plan?draws=false", Caller.TenPots)).Status);
        }

        // Small ones were answered while large ones still wait for their one lane.
        Assert.Contains(large, waiting => !waiting.IsCompleted);
        foreach (var answer in await Task.WhenAll(large))
        {
            Assert.Contains(answer.Status, (int[])[200, 422, 503]);
        }
    }
}
