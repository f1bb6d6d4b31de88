using System.Diagnostics;
using System.Text.RegularExpressions;

namespace Dripwright.Workbench.Tests.Http;

public sealed partial class HandbookTests
{
    [Fact]
    public async Task The_examples_of_the_handbook_run_as_they_stand()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The examples are for a Unix shell.");
        await using var caller = await Caller.Open();
        var repository = Repository();
        var page = await File.ReadAllTextAsync(
            Path.Combine(repository, "docs", "handbook", "http.md"),
            TestContext.Current.CancellationToken
        );
        var folder = Directory.CreateDirectory(Path.Combine(caller.Bench.Folder, "examples")).FullName;
        File.Copy(
            Path.Combine(repository, "demo", "school", "greenhouse.rig.json"),
            Path.Combine(folder, "greenhouse.rig.json")
        );
        var examples = Examples().Matches(page).Select(match => match.Groups["text"].Value).ToList();
        Assert.Equal(8, examples.Count);
        foreach (var example in examples)
        {
            var script = example.Replace("http://127.0.0.1:5117", caller.Bench.Url, StringComparison.Ordinal);
            await Run(script, folder);
        }

        Assert.True(new FileInfo(Path.Combine(folder, "pack.zip")).Length > 10_000);
    }

    private static async Task Run(string script, string folder)
    {
        var start = new ProcessStartInfo("sh")
        {
            WorkingDirectory = folder,
            UseShellExecute = false,
            RedirectStandardError = true,
            ArgumentList = { "-e", "-x", "-c", script },
        };
        using var shell = Process.Start(start)!;
        var said = await shell.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await shell.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.True(shell.ExitCode == 0, said);
    }

    private static string Repository()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "Dripwright.slnx")))
        {
            folder = Path.GetDirectoryName(folder)!;
        }

        return folder;
    }

    [GeneratedRegex("```sh\n(?<text>.*?)```", RegexOptions.Singleline | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Examples();
}
