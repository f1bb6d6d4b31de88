using Dripwright.Terminal;

namespace Dripwright.Program.Tests;

public sealed class MistakeTests
{
    [Fact]
    public async Task A_mistake_in_the_program_is_one_clear_line_without_a_stack_trace()
    {
        using var output = new Failing(new InvalidOperationException("Two\nlines."));
        var call = await Call.Of(new Setting { Output = output }, "schema");

        Assert.Equal(Exit.Internal, call.Exit);
        Assert.Single(call.Error.TrimEnd().Split('\n'));
        Assert.Contains("Two lines.", call.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_stack_trace_is_shown_to_those_who_ask()
    {
        using var output = new Failing(new InvalidOperationException("Wrong."));
        var setting = new Setting { Output = output, Variables = { ["DRIPWRIGHT_TRACE"] = "1" } };
        var call = await Call.Of(setting, "schema");

        Assert.Contains("   at ", call.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_full_disk_behind_the_standard_output_gives_4()
    {
        using var output = new Failing(new IOException("No space left on device"));
        var call = await Call.Of(new Setting { Output = output }, "schema");

        Assert.Equal(Exit.NotWritten, call.Exit);
        Assert.Contains("No space left", call.Error, StringComparison.Ordinal);
    }

    private sealed class Failing(Exception failure) : StringWriter
    {
        public override void Write(string? value) => throw failure;
    }
}
