using System.Text.RegularExpressions;
using Dripwright.Screen;
using Dripwright.Terminal;

namespace Dripwright.Program.Tests;

public sealed partial class OpenServiceTests
{
    [Fact]
    public async Task A_service_answers_at_its_health_address_and_ends_well_when_it_is_asked_to()
    {
        var folder = Directory.CreateTempSubdirectory("dripwright-service-").FullName;
        var stop = TestContext.Current.CancellationToken;
        using var program = BuiltProgram.Start(
            "open",
            "--service",
            "--port",
            "0",
            "--garden",
            Path.Combine(folder, "g.dripwright")
        );
        try
        {
            var line = await program.StandardOutput.ReadLineAsync(stop);
            var address = Address().Match(line ?? "").Value;
            Assert.NotEqual("", address);
            using var asking = new HttpClient();
            Assert.Equal("Healthy", await asking.GetStringAsync(new Uri(address + "/health"), stop));
        }
        finally
        {
            using var ask = BuiltProgram.StartOf("kill", "-TERM", $"{program.Id}");
            await ask.WaitForExitAsync(stop);
        }

        await program.WaitForExitAsync(stop);
        Assert.Equal("", await program.StandardError.ReadToEndAsync(stop));
        Assert.Equal(Exit.Good, program.ExitCode);
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task Open_shows_its_address_in_the_browser_and_a_service_does_not()
    {
        Assert.Single(await Shown());
        Assert.Empty(await Shown("--service"));
    }

    [Theory]
    [InlineData(PlatformID.Unix, "DISPLAY", "xdg-open")]
    [InlineData(PlatformID.Unix, "WAYLAND_DISPLAY", "xdg-open")]
    [InlineData(PlatformID.MacOSX, "HOME", "open")]
    [InlineData(PlatformID.Win32NT, "HOME", "http://here")]
    public void Each_system_has_its_own_way_to_a_browser(PlatformID system, string set, string command)
    {
        Assert.Equal(command, Browser.Start("http://here", system, name => name == set ? "1" : null)?.FileName);
        Assert.Null(Browser.Start("http://here", system, name => name == "SSH_CONNECTION" ? "1" : null));
    }

    [Fact]
    public void Without_a_screen_no_browser_is_started() =>
        Assert.Null(Browser.Start("http://here", PlatformID.Unix, _ => null));

    [Fact]
    public async Task A_place_for_metrics_that_is_no_address_is_refused()
    {
        var call = await Call.Of("open", "--metrics", "collector");
        Assert.Equal(Exit.WrongCall, call.Exit);
        Assert.Contains("found \"collector\"; expected the address", call.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Counts_and_times_reach_the_collector_that_was_named()
    {
        using var free = new System.Net.Sockets.TcpListener(System.Net.IPAddress.Loopback, 0);
        free.Start();
        var address = $"http://{free.LocalEndpoint}";
        free.Stop();
        using var collector = new System.Net.HttpListener();
        collector.Prefixes.Add(address + "/");
        collector.Start();
        var running = Shown("--service", "--metrics", address);
        // The last are sent when the program ends.
        var sent = await collector
            .GetContextAsync()
            .WaitAsync(TimeSpan.FromSeconds(60), TestContext.Current.CancellationToken);
        using var body = new MemoryStream();
        await sent.Request.InputStream.CopyToAsync(body, TestContext.Current.CancellationToken);
        sent.Response.Close();
        await running;
        Assert.Equal("/v1/metrics", sent.Request.Url!.AbsolutePath);
        var text = System.Text.Encoding.Latin1.GetString(body.ToArray());
        Assert.Contains("dotnet.process.cpu.time", text, StringComparison.Ordinal);
        Assert.Contains("dripwright", text, StringComparison.Ordinal);
    }

    private static async Task<List<string>> Shown(params string[] more)
    {
        var folder = Directory.CreateTempSubdirectory("dripwright-browser-").FullName;
        List<string> shown = [];
        using var stop = new CancellationTokenSource();
        using var written = new Watched(text =>
        {
            if (text.Contains("The garden is kept", StringComparison.Ordinal))
            {
                stop.CancelAfter(TimeSpan.FromSeconds(1));
            }
        });
        var setting = new Setting
        {
            Variables = new() { ["DRIPWRIGHT_DATA"] = folder },
            Output = written,
            Browse = shown.Add,
            Stop = stop.Token,
        };
        var call = await Call.Of(
            setting,
            ["open", "--port", "0", "--garden", Path.Combine(folder, "g.dripwright"), .. more]
        );
        Assert.Equal("", call.Error);
        Directory.Delete(folder, recursive: true);
        Assert.All(shown, address => Assert.Contains($"open at {address}", call.Out, StringComparison.Ordinal));
        return shown;
    }

    [GeneratedRegex(@"http://127\.0\.0\.1:\d+")]
    private static partial Regex Address();
}
