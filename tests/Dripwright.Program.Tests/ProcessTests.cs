using System.Diagnostics;
using Dripwright.Terminal;

namespace Dripwright.Program.Tests;

/// <summary>The built program as a process of its own.</summary>
public sealed class ProcessTests
{
    [Fact]
    public async Task The_built_program_keeps_its_streams_apart()
    {
        var (exit, written, errors) = await BuiltProgram.Run("plan", Repository.School, "--json", "--no-simulation");

        Assert.Equal(Exit.Good, exit);
        Assert.Empty(errors);
        Assert.StartsWith("{", written, StringComparison.Ordinal);
        Assert.EndsWith("}\n", written, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_built_program_gives_its_exit_code()
    {
        var (exit, written, errors) = await BuiltProgram.Run("plan", "--jsno");

        Assert.Equal(Exit.WrongCall, exit);
        Assert.Empty(written);
        Assert.Contains("--json", errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_request_to_end_ends_the_program_cleanly()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux() || OperatingSystem.IsMacOS(), "Signals are sent by the kill tool.");
        // Not Ctrl-C's own signal: a test run in the background has that ignored, and its children inherit it. Both
        // take the same way through the program.
        using var program = BuiltProgram.Start("plan", "-");
        // It waits for its standard input, so the signal surely comes before the end.
        await Task.Delay(TimeSpan.FromSeconds(1.5), TestContext.Current.CancellationToken);
        using var kill = Process.Start(
            "kill",
            ["-TERM", program.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)]
        );
        await kill.WaitForExitAsync(TestContext.Current.CancellationToken);
        // Its input stays open: it must end by itself.
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(30));
        try
        {
            await program.WaitForExitAsync(patience.Token);
        }
        catch (OperationCanceledException)
        {
            program.Kill();
            program.WaitForExit();
        }

        Assert.Equal(Exit.Stopped, program.ExitCode);
        Assert.Contains(
            "Stopped",
            await program.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken),
            StringComparison.Ordinal
        );
    }
}
