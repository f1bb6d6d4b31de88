using Dripwright.Workbench.Tests.Browser;
using Microsoft.Playwright;

[assembly: AssemblyFixture(typeof(Chromium))]

namespace Dripwright.Workbench.Tests.Browser;

/// <summary>One browser for all tests of the assembly. Where there is none, tests skip; on CI they fail.</summary>
public sealed class Chromium : IAsyncLifetime
{
    private static readonly string[] s_quiet =
    [
        // No graphics card is needed: what is drawn in three dimensions is computed.
        "--use-angle=swiftshader",
        "--enable-unsafe-swiftshader",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
    ];

    private IPlaywright? _playwright;
    private IBrowser? _browser;

    public async ValueTask InitializeAsync()
    {
        if (Find() is not { } path)
        {
            return;
        }

        // A machine that builds and tests at once is slow; a page that never answers is found all the same.
        Assertions.SetDefaultExpectTimeout(20_000);
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(new() { ExecutablePath = path, Args = s_quiet });
    }

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null)
        {
            await _browser.CloseAsync();
        }

        _playwright?.Dispose();
    }

    /// <summary>A browser of its own, whose person has this home: it trusts what is trusted there.</summary>
    /// <param name="home">The home folder.</param>
    /// <param name="names">Names that lead to this machine.</param>
    internal async Task<IBrowser> Launch(string home, params string[] names)
    {
        Require(_playwright);
        return await _playwright!.Chromium.LaunchAsync(
            new()
            {
                ExecutablePath = Find(),
                Args =
                [
                    .. s_quiet,
                    $"--host-resolver-rules={string.Join(',', names.Select(name => $"MAP {name} 127.0.0.1"))}",
                ],
                Env = new Dictionary<string, string>
                {
                    ["HOME"] = home,
                    ["PATH"] = Environment.GetEnvironmentVariable("PATH") ?? "",
                },
            }
        );
    }

    internal Task<Visit> Visit(Bench bench, int width = 1280, int height = 900, bool dark = false) =>
        Visit(bench.Url, width, height, dark);

    internal async Task<Visit> Visit(
        string url,
        int width = 1280,
        int height = 900,
        bool dark = false,
        string? language = null
    )
    {
        Require(_browser);
        var context = await _browser!.NewContextAsync(
            new()
            {
                BaseURL = url,
                ViewportSize = new() { Width = width, Height = height },
                ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light,
                AcceptDownloads = true,
                HasTouch = width < 500,
                ExtraHTTPHeaders = language is null
                    ? null
                    : new Dictionary<string, string> { ["Accept-Language"] = language },
            }
        );
        context.SetDefaultTimeout(20_000);
        return new Visit(context, await context.NewPageAsync());
    }

    private static void Require(object? there)
    {
        if (there is null)
        {
            Assert.SkipWhen(
                Environment.GetEnvironmentVariable("CI") != "true",
                "There is no chromium on the path: the pages are not tried in a browser."
            );
            Assert.Fail("On CI there must be a chromium on the path.");
        }
    }

    private static string? Find()
    {
        var names = OperatingSystem.IsWindows()
            ? ["chrome.exe", "chromium.exe"]
            : new[] { "chromium", "chromium-browser", "google-chrome" };
        return (Environment.GetEnvironmentVariable("PATH") ?? "")
            .Split(Path.PathSeparator)
            .SelectMany(folder => names.Select(name => Path.Combine(folder, name)))
            .FirstOrDefault(File.Exists);
    }
}
