using System.Net;
using Dripwright.Store.Ground;
using Dripwright.Workbench.Setup;
using Dripwright.Workbench.Tests.Browser;

namespace Dripwright.Workbench.Tests;

public sealed class HostTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("0.0.0.0")]
    [InlineData("192.168.1.20")]
    [InlineData("::")]
    [InlineData("example.org")]
    public async Task It_does_not_open_to_the_network(string address)
    {
        var folder = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName());
        var refused = await Assert.ThrowsAsync<ArgumentException>(() =>
            WorkbenchHost.BuildAsync(
                new WorkbenchOptions
                {
                    Address = address,
                    Garden = GardenPlace.File(Path.Combine(folder, "g.dripwright")),
                    DataFolder = folder,
                },
                Stop
            )
        );
        Assert.Contains("loopback", refused.Message, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder));
    }

    [Fact]
    public async Task Pages_come_with_a_strict_policy_and_only_to_this_machine()
    {
        await using var bench = await Bench.Open();
        using var client = new HttpClient { BaseAddress = new Uri(bench.Url) };
        using var page = await client.GetAsync("/", Stop);
        Assert.Equal(HttpStatusCode.OK, page.StatusCode);
        var policy = string.Join("; ", page.Headers.GetValues("Content-Security-Policy"));
        Assert.Contains("script-src 'self'", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        Assert.Equal("nosniff", page.Headers.GetValues("X-Content-Type-Options").Single());
        using var asked = new HttpRequestMessage(HttpMethod.Get, "/") { Headers = { Host = "elsewhere.example" } };
        using var elsewhere = await client.SendAsync(asked, Stop);
        Assert.Equal(HttpStatusCode.MisdirectedRequest, elsewhere.StatusCode);
    }

    [Theory]
    [InlineData("/no-such-page")]
    [InlineData("/methods/../../etc/passwd")]
    [InlineData("/methods/%2e%2e%2fREADME")]
    [InlineData("/downloads/00/x.zip")]
    public async Task What_is_not_there_is_said_to_be_not_there(string address)
    {
        await using var bench = await Bench.Open();
        using var client = new HttpClient { BaseAddress = new Uri(bench.Url) };
        using var answer = await client.GetAsync(address, Stop);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    [Fact]
    public async Task A_first_view_takes_under_300_kB_over_the_wire()
    {
        await using var bench = await Bench.Open();
        using var handler = new HttpClientHandler { AutomaticDecompression = DecompressionMethods.None };
        using var client = new HttpClient(handler) { BaseAddress = new Uri(bench.Url) };
        client.DefaultRequestHeaders.Add("Accept-Encoding", "br, gzip");
        var page = await Plain(bench, "/");
        var sum = 0L;
        foreach (var address in Parts(page).Append("/").Append("/styles/regular.ttf").Append("/styles/bold.ttf"))
        {
            sum += (await client.GetByteArrayAsync(address, Stop)).Length;
        }

        Assert.InRange(sum, 100_000, 300_000);
        TestContext.Current.TestOutputHelper?.WriteLine(
            $"First view: {sum.ToString(System.Globalization.CultureInfo.InvariantCulture)} bytes"
        );
    }

    [Fact]
    public async Task A_demo_that_was_thrown_away_does_not_come_back()
    {
        var bench = await Bench.Open();
        foreach (var rig in await bench.Garden.RigsAsync(Stop))
        {
            await bench.Garden.RemoveRigAsync(rig.Id, Stop);
        }

        await using var again = await Bench.Open(await bench.Stop());
        Assert.Empty(await again.Garden.RigsAsync(Stop));
    }

    private static async Task<string> Plain(Bench bench, string address)
    {
        using var client = new HttpClient { BaseAddress = new Uri(bench.Url) };
        return await client.GetStringAsync(address, Stop);
    }

    private static IEnumerable<string> Parts(string page) =>
        System
            .Text.RegularExpressions.Regex.Matches(
                page,
                """(?:src|href)="([^"]+\.(?:css|js|svg))" """.TrimEnd(),
                System.Text.RegularExpressions.RegexOptions.None,
                TimeSpan.FromSeconds(1)
            )
            .Select(match => match.Groups[1].Value)
            .Select(address => address.StartsWith('/') ? address : "/" + address);
}
