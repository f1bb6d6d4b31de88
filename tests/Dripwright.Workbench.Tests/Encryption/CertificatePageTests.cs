using System.Globalization;
using Dripwright.Workbench.Encryption;
using Dripwright.Workbench.Tests.Browser;

namespace Dripwright.Workbench.Tests.Encryption;

/// <summary>The page that tells how a phone trusts the garden; a phone opens it before it trusts, so without encryption.</summary>
public sealed class CertificatePageTests(Chromium chromium)
{
    [Theory]
    [InlineData(1280, false)]
    [InlineData(390, true)]
    public async Task The_page_shuts_nobody_out_and_fits_a_phone(int width, bool dark)
    {
        var folder = EncryptedHostTests.Made(out var own);
        await using var bench = await EncryptedHostTests.Open(folder, own);
        await using var visit = await chromium.Visit(Plain(bench), width, 844, dark);
        await visit.Page.GotoAsync("/certificate");
        await visit.Page.Locator("#fingerprint").WaitForAsync();
        await PeopleTests.Judge(visit, "certificate", width);
        if (Environment.GetEnvironmentVariable("DRIPWRIGHT_PICTURES") is { } pictures)
        {
            Directory.CreateDirectory(pictures);
            var name = width.ToString(CultureInfo.InvariantCulture);
            await visit.Page.ScreenshotAsync(
                new() { Path = Path.Combine(pictures, $"certificate-{name}.png"), FullPage = true }
            );
        }
    }

    [Fact]
    public async Task Every_word_of_the_page_comes_from_the_texts_or_is_data()
    {
        var folder = EncryptedHostTests.Made(out var own);
        await using var bench = await EncryptedHostTests.Open(folder, own);
        await using var visit = await chromium.Visit(Plain(bench), language: LanguageTests.Pseudo);
        await visit.Page.GotoAsync("/certificate");
        string[] data = [OwnCertificate.Fingerprint(own.Root()!), "https", GardenAuthority.Name];
        Assert.Equal("", string.Join("\n", await LanguageTests.Own(visit.Page, data)));
        Assert.Equal(LanguageTests.Pseudo, await visit.Page.Locator("html").GetAttributeAsync("lang"));
    }

    private static string Plain(Bench bench) => bench.Url.Replace("https:", "http:", StringComparison.Ordinal);
}
