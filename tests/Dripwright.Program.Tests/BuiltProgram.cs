using System.Diagnostics;

namespace Dripwright.Program.Tests;

/// <summary>The built program as a process of its own.</summary>
internal static class BuiltProgram
{
    public static string Path { get; } = System.IO.Path.Combine(AppContext.BaseDirectory, "dripwright.dll");

    /// <summary>Runs it to its end.</summary>
    public static Task<(int Exit, string Out, string Error)> Run(params string[] args) => End(Start(args));

    /// <summary>Waits for a process that was started here, and disposes it.</summary>
    public static async Task<(int Exit, string Out, string Error)> End(Process started)
    {
        using var program = started;
        program.StandardInput.Close();
        var written = program.StandardOutput.ReadToEndAsync();
        var errors = program.StandardError.ReadToEndAsync();
        await program.WaitForExitAsync(TestContext.Current.CancellationToken);
        return (program.ExitCode, await written, await errors);
    }

    public static Process Start(params string[] args) => StartOf("dotnet", [Path, .. args]);

    public static Process StartOf(string command, params string[] args)
    {
        var start = new ProcessStartInfo(command)
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        foreach (var word in args)
        {
            start.ArgumentList.Add(word);
        }

        return Process.Start(start)!;
    }
}
