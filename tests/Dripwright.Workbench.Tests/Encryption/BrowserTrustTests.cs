using System.Globalization;
using System.Security.Cryptography.X509Certificates;
using Dripwright.Workbench.Encryption;
using Dripwright.Workbench.Tests.Browser;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;
using Microsoft.Playwright;

namespace Dripwright.Workbench.Tests.Encryption;

/// <summary>A real browser that trusts the garden's authority as a person's would: in the store of certificates of a fresh home.</summary>
public sealed class BrowserTrustTests(Chromium chromium)
{
    private const string Foreign = "bank.example";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Where_the_authority_is_trusted_the_pages_open_and_work_and_where_it_is_not_the_browser_refuses()
    {
        var folder = EncryptedHostTests.Made(out var own);
        await using var bench = await EncryptedHostTests.Open(folder, own);
        var code = WorkbenchHost.CodeForNewPerson(bench.App)!;
        var url = bench.Url.Replace("127.0.0.1", GardenAuthority.Name, StringComparison.Ordinal);
        using var stranger = new Home();
        await using (var browser = await chromium.Launch(stranger.Folder, GardenAuthority.Name))
        {
            var page = await browser.NewPageAsync();
            var refused = await Assert.ThrowsAsync<PlaywrightException>(() => page.GotoAsync(url));
            Assert.Contains("ERR_CERT_AUTHORITY_INVALID", refused.Message, StringComparison.Ordinal);
            // What tells how to trust it is there without encryption.
            // (In a page of its own: the refused one may still be on its way to saying so.)
            page = await browser.NewPageAsync();
            await page.GotoAsync(url.Replace("https:", "http:", StringComparison.Ordinal) + "/certificate");
            await Assertions
                .Expect(page.Locator("#fingerprint"))
                .ToHaveTextAsync(OwnCertificate.Fingerprint(own.Root()!));
            var download = await page.RunAndWaitForDownloadAsync(() => page.Locator("#authority").ClickAsync());
            using var given = X509CertificateLoader.LoadCertificateFromFile(await download.PathAsync());
            Assert.Equal(own.Root()!.Thumbprint, given.Thumbprint);
        }

        using var home = new Home();
        await home.Trust(own.AuthorityFile);
        await using (var browser = await chromium.Launch(home.Folder, GardenAuthority.Name))
        {
            var context = await browser.NewContextAsync();
            await using var visit = new Visit(context, await context.NewPageAsync());
            var page = visit.Page;
            List<string> channels = [];
            page.WebSocket += (_, channel) => channels.Add(channel.Url);
            // An old bookmark leads to the encrypted page.
            await page.GotoAsync(url.Replace("https:", "http:", StringComparison.Ordinal));
            Assert.Equal(url + "/sign-in", page.Url);
            Assert.True(await page.EvaluateAsync<bool>("isSecureContext"));
            await page.Locator("#join-code").FillAsync(code);
            await page.Locator("#join-name").FillAsync("Ada");
            await page.Locator("#join-passphrase").FillAsync("six plain tomatoes");
            await page.Keyboard.PressAsync("Enter");
            // What this page shows and does comes through the channel.
            await page.Locator("#new-name").FillAsync("Bench by the window");
            await page.Locator("#new-name").PressAsync("Enter");
            await page.Locator(".titleblock").WaitForAsync();
            Assert.Single(await bench.Garden.RigsAsync(Stop));
            Assert.All(channels, channel => Assert.StartsWith("wss://", channel, StringComparison.Ordinal));
            Assert.NotEmpty(channels);
            Assert.All(await context.CookiesAsync(), cookie => Assert.True(cookie.Secure, cookie.Name));
            await page.GotoAsync(url + "/garden");
            await Assertions.Expect(page.Locator("#encryption")).ToContainTextAsync(GardenAuthority.Name);
            Assert.Equal("", string.Join("\n", visit.Complaints));
        }
    }

    [Theory]
    [InlineData(GardenAuthority.Name, false, null)]
    [InlineData(GardenAuthority.Name, true, null)]
    [InlineData(Foreign, false, "ERR_CERT_")]
    [InlineData(Foreign, true, "ERR_CERT_")]
    public async Task A_foreign_name_that_the_trusted_authority_signed_is_refused_by_the_browser(
        string name,
        bool isByRoot,
        string? error
    )
    {
        using var authority = new GardenAuthority();
        using var leaf = Authority.Server(
            isByRoot ? authority.Root : authority.Signing,
            [name],
            [],
            GardenAuthority.Now
        );
        var certificate = new ServerCertificate(leaf, isByRoot ? [] : [authority.Signing]);
        await using var server = await Serve(certificate);
        var port = new Uri(server.Urls.First()).Port.ToString(CultureInfo.InvariantCulture);
        using var home = new Home();
        await home.Trust(authority.RootFile);
        await using var browser = await chromium.Launch(home.Folder, name);
        var page = await browser.NewPageAsync();
        var going = page.GotoAsync($"https://{name}:{port}/");
        if (error is null)
        {
            // The same server, keys and browser: only the name is another.
            Assert.Equal("hello", await (await going)!.TextAsync());
        }
        else
        {
            var refused = await Assert.ThrowsAsync<PlaywrightException>(() => going);
            Assert.Contains(error, refused.Message, StringComparison.Ordinal);
            TestContext.Current.TestOutputHelper?.WriteLine(refused.Message.Split('\n')[0]);
        }
    }

    private static async Task<WebApplication> Serve(ServerCertificate certificate)
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseKestrelHttpsConfiguration();
        builder.WebHost.ConfigureKestrel(server =>
            server.Listen(
                System.Net.IPAddress.Loopback,
                0,
                listen =>
                    listen.UseHttps(
                        new Microsoft.AspNetCore.Server.Kestrel.Https.TlsHandshakeCallbackOptions
                        {
                            OnConnection = _ =>
                                new(
                                    new System.Net.Security.SslServerAuthenticationOptions
                                    {
                                        ServerCertificateContext = certificate.Context,
                                    }
                                ),
                        }
                    )
            )
        );
        var app = builder.Build();
        app.MapGet("/", () => Results.Text("hello"));
        await app.StartAsync(Stop);
        return app;
    }

    /// <summary>A fresh home with a store of certificates in which nothing is trusted yet.</summary>
    private sealed class Home : IDisposable
    {
        public string Folder { get; } = Directory.CreateTempSubdirectory("dripwright-home-").FullName;

        public async Task Trust(string file)
        {
            var store = Directory.CreateDirectory(Path.Combine(Folder, ".pki", "nssdb")).FullName;
            foreach (
                var words in (string[][])
                    [
                        ["-N", "-d", "sql:" + store, "--empty-password"],
                        // For servers, and for nothing else.
                        ["-A", "-d", "sql:" + store, "-n", "garden", "-t", "C,,", "-i", file],
                    ]
            )
            {
                var (exit, said) = await Tool.Run("certutil", "libnss3-tools", words);
                Assert.True(exit == 0, said);
            }
        }

        public void Dispose() => Directory.Delete(Folder, recursive: true);
    }
}
