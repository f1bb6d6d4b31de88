using System.Text;

namespace Dripwright.Workbench.Tests.Http;

public sealed class SafetyTests
{
    private static readonly string[] s_posts =
    [
        "check",
        "plan",
        "summary",
        "sheets",
        "sheets/1",
        "pack.pdf",
        "pack.zip",
        "suggest?seconds=1",
        "rigs?name=x",
        "rigs",
        "rigs/RIG/revisions",
        "garden/import",
        "garden/restore",
    ];

    [Fact]
    public async Task Whatever_bytes_come_the_answer_is_no_failure_of_the_server()
    {
        await using var caller = await Caller.Open();
        var (id, _) = await caller.Add("Bench");
        var random = new Random(7);
        foreach (var seed in Enumerable.Range(0, 6))
        {
            var bytes = new byte[random.Next(0, 3000)];
            random.NextBytes(bytes);
            if (seed % 2 == 1)
            {
                // Half of them near to a rig file: that comes further.
                var near = Encoding.UTF8.GetBytes(Caller.TenPots);
                near[random.Next(near.Length)] = (byte)random.Next(256);
                bytes = near;
            }

            foreach (var address in s_posts.Select(post => post.Replace("RIG", id, StringComparison.Ordinal)))
            {
                using var content = new ByteArrayContent(bytes);
                var type = address == "garden/restore" ? "application/octet-stream" : "application/json";
                var answer = await caller.Send(HttpMethod.Post, address, content, "*", type);
                Assert.True(answer.Status < 500, $"{address}: {answer.Text}");
            }

            foreach (var method in (HttpMethod[])[HttpMethod.Put, HttpMethod.Patch])
            {
                using var content = new ByteArrayContent(bytes);
                var answer = await caller.Send(method, $"rigs/{id}", content, "*");
                Assert.True(answer.Status < 500, $"{method}: {answer.Text}");
            }

            var path = Uri.EscapeDataString(Encoding.Latin1.GetString(bytes.AsSpan(0, Math.Min(40, bytes.Length))));
            Assert.True((await caller.Get($"rigs/{path}")).Status < 500);
            Assert.True((await caller.Get($"catalogue/all?kind={path}")).Status < 500);
            Assert.True((await caller.Get($"rigs/{id}/plan?revision={path}")).Status < 500);
        }
    }

    [Theory]
    [InlineData("rigs/../../../etc/passwd")]
    [InlineData("rigs/..%2f..%2fetc%2fpasswd")]
    [InlineData("schema/..%2frig")]
    [InlineData("garden/export?path=/etc/passwd&name=/etc/passwd")]
    [InlineData("catalogue/all?kind=/etc/passwd")]
    public async Task No_address_reads_a_file_of_this_machine(string address)
    {
        await using var caller = await Caller.Open();
        var answer = await caller.Get(address);
        Assert.True(answer.Status < 500);
        Assert.DoesNotContain("root:", answer.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Origin", "https://elsewhere.example")]
    [InlineData("Origin", "null")]
    [InlineData("Origin", "http://127.0.0.1:1")]
    [InlineData("Sec-Fetch-Site", "cross-site")]
    [InlineData("Sec-Fetch-Site", "same-site")]
    public async Task What_a_page_of_another_site_sends_is_refused(string header, string value)
    {
        await using var caller = await Caller.Open();
        var (id, _) = await caller.Add("Bench");
        (
            await caller.Send(HttpMethod.Post, "check", Caller.TenPots, null, "application/json", (header, value))
        ).IsProblem(403);
        (await caller.Send(HttpMethod.Delete, $"rigs/{id}", (string?)null, null, "", (header, value))).IsProblem(403);
        Assert.Equal(
            403,
            (await caller.Send(HttpMethod.Get, "/_blazor", (string?)null, null, "", (header, value))).Status
        );
        Assert.Equal(200, (await caller.Get($"rigs/{id}")).Status);
    }

    [Fact]
    public async Task A_page_of_our_own_may_send_and_a_simple_form_of_elsewhere_is_no_file()
    {
        await using var caller = await Caller.Open();
        var own = ("Origin", caller.Bench.Url.TrimEnd('/'));
        Assert.Equal(
            200,
            (await caller.Send(HttpMethod.Post, "check", Caller.TenPots, null, "application/json", own)).Status
        );
        (
            await caller.Send(HttpMethod.Post, "check", Caller.TenPots, null, "application/x-www-form-urlencoded")
        ).IsProblem(415);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task A_foreign_host_name_is_refused(bool network)
    {
        await using var caller = await Caller.Open(network);
        foreach (var host in (string[])["elsewhere.example", "127.0.0.1.elsewhere.example", "192.168.77.77", "[::2]"])
        {
            var answer = await caller.Send(HttpMethod.Get, "rigs", (string?)null, null, "", ("Host", host));
            Assert.Equal(421, answer.Status);
        }
    }

    [Fact]
    public async Task Every_answer_carries_the_strict_policy()
    {
        await using var caller = await Caller.Open();
        var answers = new[]
        {
            await caller.Get("/"),
            await caller.Get("/no-such-page"),
            await caller.Get("/people"),
            await caller.Get("/styles/sheet.css"),
            await caller.Get("rigs"),
            await caller.Get("no-such-thing"),
            await caller.Post("check", "{"),
            await caller.Get("openapi.json"),
            await caller.Send(HttpMethod.Get, "rigs", (string?)null, null, "", ("Host", "elsewhere.example")),
            await caller.Send(HttpMethod.Get, "rigs", (string?)null, null, "", ("Origin", "https://elsewhere.example")),
        };
        foreach (var answer in answers)
        {
            var policy = answer.Headers["Content-Security-Policy"];
            Assert.StartsWith("default-src 'none'", policy, StringComparison.Ordinal);
            Assert.Contains("frame-ancestors 'none'", policy, StringComparison.Ordinal);
            Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
            Assert.Equal("nosniff", answer.Headers["X-Content-Type-Options"]);
            Assert.Equal("DENY", answer.Headers["X-Frame-Options"]);
            Assert.False(answer.Headers.ContainsKey("Access-Control-Allow-Origin"));
            Assert.False(answer.Headers.ContainsKey("Server"));
        }
    }

    [Fact]
    public async Task The_number_of_a_problem_stands_in_the_log()
    {
        await using var caller = await Caller.Open();
        var number = (await caller.Get("rigs/4711")).IsProblem(404).Json.GetProperty("number").GetString()!;
        var log = await File.ReadAllTextAsync(
            Path.Combine(caller.Bench.Folder, "workbench.log"),
            TestContext.Current.CancellationToken
        );
        Assert.Contains(number, log, StringComparison.Ordinal);
    }
}
