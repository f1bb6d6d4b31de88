using System.Diagnostics;

namespace Dripwright.Workbench.Tests.Encryption;

/// <summary>A program of others that judges what we made. Where it is missing the test skips and says so; on CI it fails.</summary>
internal static class Tool
{
    public static async Task<(int Exit, string Said)> Run(string command, string package, params string[] words)
    {
        var found = (Environment.GetEnvironmentVariable("PATH") ?? "")
            .Split(Path.PathSeparator)
            .Any(folder => File.Exists(Path.Combine(folder, command)));
        if (!found)
        {
            var missing = $"{command} (Debian package {package}) is not installed: not checked by it.";
            Assert.SkipWhen(Environment.GetEnvironmentVariable("CI") != "true", missing);
            Assert.Fail(missing);
        }

        using var process = Process.Start(
            new ProcessStartInfo(command, words)
            {
                UseShellExecute = false,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            }
        )!;
        var output = process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        var errors = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        return (process.ExitCode, await output + await errors);
    }
}
