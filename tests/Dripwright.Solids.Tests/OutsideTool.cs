using System.ComponentModel;
using System.Diagnostics;

namespace Dripwright.Solids.Tests;

/// <summary>Programs of others that check our meshes. A test whose program is missing skips and says so; CI must have them.</summary>
internal static class OutsideTool
{
    /// <summary>What a program says, both streams together; its exit code is no use, as it is 0 even for broken meshes.</summary>
    public static string Run(string name, params string[] arguments)
    {
        try
        {
            using var process = Process.Start(
                new ProcessStartInfo(name, arguments)
                {
                    UseShellExecute = false,
                    RedirectStandardOutput = true,
                    RedirectStandardError = true,
                }
            )!;
            var errors = process.StandardError.ReadToEndAsync();
            var output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return output + errors.GetAwaiter().GetResult();
        }
        catch (Win32Exception notFound)
        {
            var missing = $"The {name} command (Debian package {name}) is not installed.";
            Assert.SkipUnless(Environment.GetEnvironmentVariable("CI") == "true", missing);
            throw new InvalidOperationException(missing, notFound);
        }
    }
}
