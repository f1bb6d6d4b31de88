namespace Dripwright.Program.Tests;

/// <summary>Tells each line as it is written.</summary>
internal sealed class Watched(Action<string> told) : StringWriter
{
    public override async Task WriteLineAsync(string? value)
    {
        await base.WriteLineAsync(value);
        told(value ?? "");
    }
}
