using System.Net;
using Dripwright.Workbench.Encryption;
using Dripwright.Workbench.Tests.Browser;

namespace Dripwright.Workbench.Tests.Encryption;

/// <summary>A proxy that was named is believed; others that say the same are not.</summary>
public sealed class TrustedProxyTests
{
    private const string Outside = "garden.example.org";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_named_proxy_says_that_the_way_is_encrypted_and_by_which_name_it_was_called()
    {
        await using var bench = await Open("127.0.0.0/8");
        using var answer = await Ask(bench, "/", ("X-Forwarded-Proto", "https"), ("X-Forwarded-Host", Outside));
        Assert.Equal(HttpStatusCode.Found, answer.StatusCode);
        Assert.Equal(
            "/sign-in",
            answer.Headers.Location!.OriginalString.Replace($"https://{Outside}", "", StringComparison.Ordinal)
        );
        using var page = await Ask(bench, "/sign-in", ("X-Forwarded-Proto", "https"), ("X-Forwarded-Host", Outside));
        Assert.Contains("secure", Cookie(page), StringComparison.OrdinalIgnoreCase);
        // Where the way from the house to the proxy is plain, whoever signs in is told before.
        Assert.False(await SaysPlain("https"));
        Assert.True(await SaysPlain("http"));
        // A name that nobody said the machine has is refused from a proxy as well.
        using var strange = await Ask(bench, "/sign-in", ("X-Forwarded-Host", "elsewhere.example"));
        Assert.Equal(HttpStatusCode.MisdirectedRequest, strange.StatusCode);

        async Task<bool> SaysPlain(string scheme)
        {
            using var asked = await Ask(
                bench,
                "/sign-in",
                ("X-Forwarded-Proto", scheme),
                ("X-Forwarded-For", "192.168.1.77"),
                ("X-Forwarded-Host", Outside)
            );
            return (await asked.Content.ReadAsStringAsync(Stop)).Contains("id=\"plain\"", StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("192.168.1.4")]
    [InlineData("10.0.0.0/8")]
    [InlineData("::1")]
    public async Task What_is_said_by_somebody_who_was_not_named_is_passed_over(string other)
    {
        await using var bench = await Open(other);
        using var page = await Ask(
            bench,
            "/sign-in",
            ("X-Forwarded-Proto", "https"),
            ("X-Forwarded-Host", "elsewhere.example")
        );
        Assert.Equal(HttpStatusCode.OK, page.StatusCode);
        Assert.DoesNotContain("secure", Cookie(page), StringComparison.OrdinalIgnoreCase);
        Assert.False(await EachHasItsOwnTries(bench));
    }

    [Fact]
    public async Task Who_asks_through_a_named_proxy_is_told_apart_and_only_the_word_of_named_ones_counts()
    {
        await using (var bench = await Open("127.0.0.1"))
        {
            Assert.True(await EachHasItsOwnTries(bench));
        }

        // The proxy adds whom it heard; what that one said before is not believed.
        await using (var bench = await Open("127.0.0.1"))
        {
            Assert.False(await EachHasItsOwnTries(bench, ", 203.0.113.9"));
        }
    }

    [Fact]
    public async Task Without_a_named_proxy_nothing_of_the_kind_is_read()
    {
        await using var bench = await Open();
        using var page = await Ask(
            bench,
            "/sign-in",
            ("X-Forwarded-Proto", "https"),
            ("X-Forwarded-Host", "elsewhere.example")
        );
        Assert.Equal(HttpStatusCode.OK, page.StatusCode);
        Assert.DoesNotContain("secure", Cookie(page), StringComparison.OrdinalIgnoreCase);
        Assert.False(await EachHasItsOwnTries(bench));
    }

    [Theory]
    [InlineData("everybody")]
    [InlineData("0.0.0.0/0")]
    [InlineData("::/0")]
    [InlineData("10.0.0.0/33")]
    [InlineData("")]
    public void What_is_no_address_or_everybody_is_refused(string text)
    {
        var told = Assert.Throws<EncryptionException>(() => TrustedProxies.Read([text])).Message;
        Assert.Contains($"found \"{text}\"", told, StringComparison.Ordinal);
    }

    private static Task<Bench> Open(params string[] proxies) =>
        Bench.Open(
            network: true,
            withDemo: false,
            with: options => options with { KnownAs = [Outside], TrustedProxies = TrustedProxies.Read(proxies) }
        );

    /// <summary>Whether ten wrong tries of one do not take another's.</summary>
    private static async Task<bool> EachHasItsOwnTries(Bench bench, string more = "")
    {
        for (var i = 0; i <= Workbench.Hosting.Rates.MostTries; i++)
        {
            using var one = await Ask(bench, "/sign-in/enter", true, ("X-Forwarded-For", "203.0.113.7" + more));
        }

        using var other = await Ask(bench, "/sign-in/enter", true, ("X-Forwarded-For", "203.0.113.8" + more));
        return other.StatusCode != HttpStatusCode.TooManyRequests;
    }

    private static string Cookie(HttpResponseMessage page) => Assert.Single(page.Headers.GetValues("Set-Cookie"));

    private static Task<HttpResponseMessage> Ask(
        Bench bench,
        string address,
        params (string Name, string Value)[] headers
    ) => Ask(bench, address, false, headers);

    private static async Task<HttpResponseMessage> Ask(
        Bench bench,
        string address,
        bool isForm,
        params (string Name, string Value)[] headers
    )
    {
        using var client = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false, UseCookies = false });
        using var asked = new HttpRequestMessage(isForm ? HttpMethod.Post : HttpMethod.Get, bench.Url + address);
        if (isForm)
        {
            asked.Content = new FormUrlEncodedContent(new Dictionary<string, string> { ["name"] = "Ada" });
        }

        foreach (var (name, value) in headers)
        {
            asked.Headers.TryAddWithoutValidation(name, value);
        }

        return await client.SendAsync(asked, Stop);
    }
}
