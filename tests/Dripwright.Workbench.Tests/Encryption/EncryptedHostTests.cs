using System.Net;
using System.Net.Security;
using System.Security.Cryptography.X509Certificates;
using Dripwright.Workbench.Encryption;
using Dripwright.Workbench.Hosting;
using Dripwright.Workbench.Setup;
using Dripwright.Workbench.Tests.Browser;
using Microsoft.Extensions.DependencyInjection;

namespace Dripwright.Workbench.Tests.Encryption;

/// <summary>The workbench with a certificate: what is encrypted, what is led there, and what is told ahead.</summary>
public sealed class EncryptedHostTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task With_the_gardens_own_certificate_everything_is_encrypted_and_its_cookies_are_secure()
    {
        var folder = Made(out var own);
        await using var bench = await Open(folder, own);
        using var client = Trusting(own, bench.Url);
        using var page = await client.GetAsync("/sign-in", Stop);
        Assert.Equal((HttpStatusCode.OK, "https"), (page.StatusCode, new Uri(bench.Url).Scheme));
        var cookie = Assert.Single(page.Headers.GetValues("Set-Cookie"));
        Assert.Contains("secure", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.False(page.Headers.Contains("Strict-Transport-Security"));
        // The whole way to the authority is shown, but not the authority, which each has.
        Assert.Equal(HttpVersion.Version20, (await Version20(client)).Version);
        // Who does not trust the authority gets nothing.
        using var stranger = new HttpClient { BaseAddress = new Uri(bench.Url) };
        await Assert.ThrowsAsync<HttpRequestException>(() => stranger.GetAsync("/sign-in", Stop));
    }

    [Fact]
    public async Task A_session_that_was_signed_in_with_encryption_has_a_secure_cookie()
    {
        var folder = Made(out var own);
        await using var bench = await Open(folder, own);
        var code = WorkbenchHost.CodeForNewPerson(bench.App)!;
        using var client = Trusting(own, bench.Url);
        var page = await client.GetStringAsync("/sign-in", Stop);
        var token = System.Text.RegularExpressions.Regex.Match(page, "Token\" value=\"([^\"]+)\"").Groups[1].Value;
        using var form = new FormUrlEncodedContent(
            new Dictionary<string, string>
            {
                ["__RequestVerificationToken"] = token,
                ["name"] = "Ada",
                ["code"] = code,
                ["passphrase"] = "six plain tomatoes",
            }
        );
        using var answer = await client.PostAsync("/sign-in/join", form, Stop);
        var cookie = answer
            .Headers.GetValues("Set-Cookie")
            .Single(one => one.StartsWith("dripwright=", StringComparison.Ordinal));
        Assert.Contains("secure", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("samesite=strict", cookie, StringComparison.OrdinalIgnoreCase);
    }

    [Theory]
    [InlineData("/", 307)]
    [InlineData("/sign-in?said=wrong", 307)]
    [InlineData("/rigs/1/row?view=front%20x", 307)]
    [InlineData("/certificate", 200)]
    [InlineData("/certificate/authority.crt", 200)]
    [InlineData("/styles/sheet.css", 200)]
    [InlineData("/health", 200)]
    [InlineData("/api/v1/rigs", 403)]
    [InlineData("/_blazor/negotiate", 307)]
    public async Task Without_encryption_the_same_port_leads_there_and_shows_nothing_of_the_garden(
        string address,
        int status
    )
    {
        var folder = Made(out var own);
        await using var bench = await Open(folder, own);
        var plain = bench.Url.Replace("https:", "http:", StringComparison.Ordinal);
        using var client = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false });
        using var answer = await client.GetAsync(new Uri(plain + address), Stop);
        Assert.Equal(status, (int)answer.StatusCode);
        if (status == 307)
        {
            Assert.Equal(bench.Url + address, answer.Headers.Location!.AbsoluteUri);
            // Never for good: a certificate that is given up must not shut anybody out.
            Assert.Null(answer.Headers.CacheControl?.MaxAge);
        }

        Assert.False(answer.Headers.Contains("Strict-Transport-Security"));
        // Something else than a browser that trusts too much: the name must be one of ours.
        using var asked = new HttpRequestMessage(HttpMethod.Get, plain) { Headers = { Host = "elsewhere.example" } };
        using var elsewhere = await client.SendAsync(asked, Stop);
        Assert.Equal(HttpStatusCode.MisdirectedRequest, elsewhere.StatusCode);
        Assert.Null(elsewhere.Headers.Location);
    }

    [Fact]
    public async Task What_is_sent_without_encryption_is_refused_and_not_sent_on()
    {
        var folder = Made(out var own);
        await using var bench = await Open(folder, own);
        var plain = bench.Url.Replace("https:", "http:", StringComparison.Ordinal);
        using var client = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false });
        using var form = new FormUrlEncodedContent(new Dictionary<string, string> { ["name"] = "Ada" });
        using var answer = await client.PostAsync(new Uri(plain + "/sign-in/enter"), form, Stop);
        Assert.Equal((HttpStatusCode.Forbidden, null), (answer.StatusCode, answer.Headers.Location));
        using var body = new StringContent("{}", null, "application/json");
        using var api = await client.PostAsync(new Uri(plain + "/api/v1/check"), body, Stop);
        Assert.Equal(HttpStatusCode.Forbidden, api.StatusCode);
        Assert.Contains("begins with https", await api.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Connections_that_say_nothing_or_rubbish_hold_nobody_up()
    {
        var folder = Made(out var own);
        await using var bench = await Open(folder, own);
        var at = new Uri(bench.Url);
        List<System.Net.Sockets.TcpClient> silent = [];
        for (var i = 0; i < 40; i++)
        {
            silent.Add(new System.Net.Sockets.TcpClient(at.Host, at.Port));
        }

        await silent[0].GetStream().WriteAsync(new byte[] { 0x16, 3, 1, 255, 255, 1, 2, 3 }, Stop);
        await silent[1].GetStream().WriteAsync(new byte[] { 0, 0, 0, 0 }, Stop);
        silent[2].Close();
        using var client = Trusting(own, bench.Url);
        Assert.Equal("Healthy", await client.GetStringAsync("/health", Stop));
        silent.ForEach(one => one.Dispose());
    }

    [Fact]
    public async Task The_page_for_phones_gives_the_authority_and_nothing_secret_to_who_has_not_signed_in()
    {
        var folder = Made(out var own);
        await using var bench = await Open(folder, own);
        using var client = Trusting(own, bench.Url);
        using var file = await client.GetAsync("/certificate/authority.crt", Stop);
        Assert.Equal("application/x-x509-ca-cert", file.Content.Headers.ContentType!.MediaType);
        var bytes = await file.Content.ReadAsByteArrayAsync(Stop);
        using var given = X509CertificateLoader.LoadCertificate(bytes);
        using var root = own.Root()!;
        Assert.Equal(root.RawData, bytes);
        Assert.False(given.HasPrivateKey);
        var page = await client.GetStringAsync("/certificate", Stop);
        Assert.Contains(OwnCertificate.Fingerprint(root), page, StringComparison.Ordinal);
        Assert.Contains("https://greenhouse.test:", page, StringComparison.Ordinal);
        Assert.DoesNotContain("PRIVATE", page, StringComparison.Ordinal);
        foreach (var secret in (string[])["signing.pem", "server.pem", "..%2fserver.pem"])
        {
            using var none = await client.GetAsync("/certificate/" + secret, Stop);
            // Whoever has not signed in is sent to do so, as from any page that he may not see.
            Assert.Equal(HttpStatusCode.Found, none.StatusCode);
            Assert.Equal("/sign-in", none.Headers.Location!.OriginalString.Split('?')[0]);
            Assert.Empty(await none.Content.ReadAsByteArrayAsync(Stop));
        }
    }

    [Fact]
    public async Task A_renewed_file_is_taken_up_by_the_next_connection_and_a_faulty_one_changes_nothing()
    {
        var folder = Made(out var own);
        await using var bench = await Open(folder, own);
        var first = await Shown(bench.Url);
        own.Renew();
        var watch = Watch(bench);
        watch.Look();
        var second = await Shown(bench.Url);
        Assert.NotEqual(first, second);

        await File.WriteAllTextAsync(own.Place.File, "half a fi", Stop);
        watch.Look();
        watch.Look();
        Assert.Equal(second, await Shown(bench.Url));
        var concern = Assert.Single(WorkbenchHost.ConcernsOf(bench.App));
        Assert.Contains("the old one is still shown", concern, StringComparison.Ordinal);
        own.Renew(addresses: []);
        watch.Look();
        Assert.Empty(WorkbenchHost.ConcernsOf(bench.App));
        Assert.NotEqual(second, await Shown(bench.Url));
    }

    [Fact]
    public async Task The_gardens_own_renews_itself_ahead_and_without_its_key_the_end_is_told_ahead()
    {
        foreach (var isDiscarded in new[] { false, true })
        {
            var folder = Made(out var own, isDiscarded);
            var clock = new SetClock(DateTimeOffset.UtcNow);
            await using var bench = await Open(folder, own, clock);
            var first = await Shown(bench.Url);
            var watch = Watch(bench);
            using var client = Trusting(own, bench.Url);
            var log = "";
            foreach (
                var (day, health) in new[]
                {
                    (300, "Healthy"),
                    (345, "Degraded"),
                    (380, "Degraded"),
                    (400, "Unhealthy"),
                }
            )
            {
                clock.Now = DateTimeOffset.UtcNow.AddDays(day);
                watch.Look();
                // A renewed one needs no looking after.
                Assert.Equal(isDiscarded ? health : "Healthy", await Health(client));
                Assert.Equal(!isDiscarded && day > 353, first != await Shown(bench.Url));
                var today = Path.Combine(folder, LogFile.Name);
                // Only a week of it is kept.
                log += File.Exists(today) ? await File.ReadAllTextAsync(today, Stop) : "";
            }

            if (isDiscarded)
            {
                Assert.Contains("what signed it was discarded", log, StringComparison.Ordinal);
                Assert.Contains("browsers refuse the workbench", log, StringComparison.Ordinal);
                var renewing = Assert.Throws<EncryptionException>(() => own.Renew());
                Assert.Contains("make-certificate --replace", renewing.Message, StringComparison.Ordinal);
            }
            else
            {
                Assert.Contains("was renewed", log, StringComparison.Ordinal);
            }
        }
    }

    [Fact]
    public async Task An_address_that_is_not_in_the_certificate_is_told_in_log_health_and_until_it_is_renewed()
    {
        var folder = Made(out var own);
        var address = IPAddress.Parse("192.168.1.20");
        await using var bench = await Bench.Open(
            folder,
            network: true,
            withDemo: false,
            with: options =>
                options with
                {
                    Certificate = own.Place,
                    KnownAs = [GardenAuthority.Name],
                    Addresses = () => [address],
                }
        );
        using var client = Trusting(own, bench.Url);
        var watch = Watch(bench);
        Assert.Equal("Healthy", await Health(client));
        address = IPAddress.Parse("192.168.7.33");
        watch.Look();
        watch.Look();
        Assert.Equal("Degraded", await Health(client));
        var log = await File.ReadAllTextAsync(Path.Combine(folder, LogFile.Name), Stop);
        // Once a day is enough; the host's own watch may have said it once as well.
        Assert.InRange(log.Split("192.168.7.33").Length - 1, 1, 2);
        own.Renew(addresses: [address]);
        watch.Look();
        Assert.Equal("Healthy", await Health(client));
    }

    [Fact]
    public async Task A_name_that_the_certificate_lacks_is_told_and_an_ended_one_still_opens_the_workbench()
    {
        using var authority = new GardenAuthority();
        using var leaf = Authority.Server(authority.Signing, [GardenAuthority.Name], [], GardenAuthority.Now);
        using var key = leaf.GetECDsaPrivateKey()!;
        var file = authority.Write("one.pem", leaf.ExportCertificatePem() + "\n" + key.ExportPkcs8PrivateKeyPem());
        await using var bench = await Bench.Open(
            network: true,
            withDemo: false,
            with: options =>
                options with
                {
                    Certificate = new CertificatePlace(file),
                    KnownAs = [GardenAuthority.Name, "shed.test"],
                    Time = new SetClock(DateTimeOffset.UtcNow.AddDays(500)),
                }
        );
        var concerns = WorkbenchHost.ConcernsOf(bench.App);
        Assert.Equal(2, concerns.Count);
        Assert.Contains("browsers refuse the workbench", concerns[0], StringComparison.Ordinal);
        Assert.Contains("not for shed.test", concerns[1], StringComparison.Ordinal);
        // Whatever watches over it asks without encryption, and need not believe the certificate.
        using var client = new HttpClient
        {
            BaseAddress = new Uri(bench.Url.Replace("https:", "http:", StringComparison.Ordinal)),
        };
        Assert.Equal("Unhealthy", await Health(client));
        // It is somebody else's certificate: there is nothing of ours to trust.
        using var none = await client.GetAsync("/certificate/authority.crt", Stop);
        Assert.Equal(HttpStatusCode.NotFound, none.StatusCode);
    }

    [Fact]
    public void Keys_are_for_their_owner_only_and_the_key_of_the_root_is_nowhere()
    {
        if (OperatingSystem.IsWindows())
        {
            Assert.Skip("Windows keeps a profile's files by other means.");
            return;
        }

        var folder = Made(out var own);
        var files = Directory.GetFiles(Path.Combine(folder, "certificate"));
        Assert.Equal(
            ["authority.crt", "server.pem", "signing.pem"],
            files.Select(file => Path.GetFileName(file)).Order(StringComparer.Ordinal)
        );
        Assert.Equal(
            UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute,
            File.GetUnixFileMode(Path.Combine(folder, "certificate"))
        );
        using var root = own.Root()!;
        foreach (var file in files)
        {
            var text = File.ReadAllText(file);
            var isSecret = text.Contains("PRIVATE KEY", StringComparison.Ordinal);
            Assert.Equal(!file.EndsWith("authority.crt", StringComparison.Ordinal), isSecret);
            if (isSecret)
            {
                Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(file));
                using var key = System.Security.Cryptography.ECDsa.Create();
                key.ImportFromPem(text);
                Assert.NotEqual(root.PublicKey.ExportSubjectPublicKeyInfo(), key.ExportSubjectPublicKeyInfo());
            }
        }

        own.Make([GardenAuthority.Name], [], isKeyDiscarded: true);
        Assert.False(File.Exists(Path.Combine(folder, "certificate", "signing.pem")));
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public void Only_names_and_addresses_that_the_authority_may_sign_for_are_signed()
    {
        var folder = Made(out var own);
        Assert.Throws<EncryptionException>(() => own.Make(["greenhouse"], [], false));
        var outside = IPAddress.Parse("203.0.113.5");
        Assert.Throws<EncryptionException>(() => own.Make([GardenAuthority.Name], [outside], false));
        Assert.Throws<EncryptionException>(() => own.Renew(addresses: [outside]));
        var foreign = Assert.Throws<EncryptionException>(() => own.Renew(["bank.example"]));
        Assert.Contains("bank.example", foreign.Message, StringComparison.Ordinal);
        own.Renew(["shed.greenhouse.test"]);
        Assert.Contains("shed.greenhouse.test", CertificateFile.Read(own.Place).Names);
        Directory.Delete(folder, recursive: true);
    }

    internal static string Made(out OwnCertificate own, bool isKeyDiscarded = false)
    {
        var folder = Directory.CreateTempSubdirectory("dripwright-own-").FullName;
        own = new OwnCertificate(folder);
        own.Make([GardenAuthority.Name], [IPAddress.Parse("192.168.1.20")], isKeyDiscarded);
        return folder;
    }

    internal static Task<Bench> Open(string folder, OwnCertificate own, TimeProvider? clock = null) =>
        Bench.Open(
            folder,
            network: true,
            withDemo: false,
            time: clock,
            with: options =>
                options with
                {
                    Certificate = own.Place,
                    KnownAs = [GardenAuthority.Name],
                    Addresses = () => [],
                }
        );

    private static CertificateWatch Watch(Bench bench) =>
        new(
            bench.App.Services.GetRequiredService<ServedCertificate>(),
            bench.App.Services.GetRequiredService<WorkbenchOptions>(),
            bench.App.Services.GetRequiredService<Microsoft.Extensions.Logging.ILogger<CertificateWatch>>()
        );

    private static async Task<string> Health(HttpClient client)
    {
        using var answer = await client.GetAsync("/health", Stop);
        var said = await answer.Content.ReadAsStringAsync(Stop);
        Assert.Equal(said == "Unhealthy" ? 503 : 200, (int)answer.StatusCode);
        return said;
    }

    private static async Task<HttpResponseMessage> Version20(HttpClient client)
    {
        using var asked = new HttpRequestMessage(HttpMethod.Get, "/sign-in") { Version = HttpVersion.Version20 };
        return await client.SendAsync(asked, Stop);
    }

    /// <summary>A client that trusts the garden's authority, and nothing else, by the platform's own rules.</summary>
    private static HttpClient Trusting(OwnCertificate own, string url)
    {
        var root = own.Root()!;
        var handler = new SocketsHttpHandler
        {
            AllowAutoRedirect = false,
            SslOptions = new SslClientAuthenticationOptions
            {
                CertificateChainPolicy = new X509ChainPolicy
                {
                    TrustMode = X509ChainTrustMode.CustomRootTrust,
                    RevocationMode = X509RevocationMode.NoCheck,
                    CustomTrustStore = { root },
                },
            },
        };
        return new HttpClient(handler) { BaseAddress = new Uri(url) };
    }

    private static async Task<string> Shown(string url)
    {
        var at = new Uri(url);
        using var client = new System.Net.Sockets.TcpClient();
        await client.ConnectAsync(at.Host, at.Port, Stop);
        var shown = "";
        await using var secure = new SslStream(
            client.GetStream(),
            false,
            (_, certificate, _, _) =>
            {
                shown = certificate!.GetCertHashString();
                // It is only looked at.
                return false;
            }
        );
        await Assert.ThrowsAsync<System.Security.Authentication.AuthenticationException>(() =>
            secure.AuthenticateAsClientAsync("localhost")
        );
        return shown;
    }
}
