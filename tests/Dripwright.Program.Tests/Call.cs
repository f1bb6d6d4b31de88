using System.Text;
using Dripwright.Terminal;

namespace Dripwright.Program.Tests;

/// <summary>One call of the program within the test, with its exit code and both streams.</summary>
internal sealed record Call(int Exit, string Out, string Error)
{
    public static Task<Call> Of(params string[] args) => Of(new Setting(), args);

    public static async Task<Call> Of(Setting setting, params string[] args)
    {
        using var written = setting.Output ?? new StringWriter();
        using var errors = new StringWriter();
        var around = new Surroundings
        {
            InBytes = new MemoryStream(Encoding.UTF8.GetBytes(setting.Input)),
            In = new StringReader(setting.Input),
            Out = written,
            Error = errors,
            InIsTerminal = setting.IsTerminal,
            OutIsTerminal = setting.IsTerminal,
            ErrorIsTerminal = setting.IsTerminal,
            Width = setting.Width,
            Browse = setting.Browse,
            Variable = name => setting.Variables.GetValueOrDefault(name),
        };
        var exit = await CommandLine.Run(args, around, setting.Stop);
        return new Call(exit, written.ToString()!, errors.ToString());
    }
}

/// <summary>Around a call.</summary>
internal sealed record Setting
{
    public string Input { get; init; } = "";

    /// <summary>Writes in the place of a plain one.</summary>
    public StringWriter? Output { get; init; }

    public bool IsTerminal { get; init; }

    public int Width { get; init; } = 80;

    public Dictionary<string, string> Variables { get; init; } = [];

    /// <summary>Takes the addresses that would be shown in a browser.</summary>
    public Action<string>? Browse { get; init; }

    public CancellationToken Stop { get; init; } = CancellationToken.None;
}
