using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using System.Globalization;
using System.Text;
using Dripwright.Language;
using Dripwright.Terminal;

namespace Dripwright.Screen;

/// <summary>The help of a command, with its headings in the reader's language.</summary>
/// <param name="width">Columns.</param>
internal sealed class HelpText(int width) : SynchronousCommandLineAction
{
    private const int MostLeft = 30;

    /// <summary>Help is shown for a call that is not complete.</summary>
    public override bool ClearsParseErrors => true;

    public override int Invoke(ParseResult parseResult)
    {
        ArgumentNullException.ThrowIfNull(parseResult);
        parseResult.InvocationConfiguration.Output.Write(Of(parseResult.CommandResult.Command, parseResult));
        return Exit.Good;
    }

    private string Of(Command command, ParseResult call)
    {
        var text = new StringBuilder();
        Section(text, "program.help.description", [("", command.Description ?? "")]);
        Section(text, "program.help.usage", [("", Usage(command))]);
        Section(
            text,
            "program.help.arguments",
            [.. command.Arguments.Select(argument => (Name(argument), argument.Description ?? ""))]
        );
        var root = call.RootCommandResult.Command;
        var options = command.Options.Concat(command == root ? [] : root.Options.Where(option => option.Recursive));
        Section(
            text,
            "program.help.options",
            [.. options.Where(option => !option.Hidden).Select(option => (Name(option), Says(option)))]
        );
        Section(
            text,
            "program.help.commands",
            [.. command.Subcommands.Select(sub => (Name(sub), sub.Description ?? ""))]
        );
        return text.ToString();
    }

    private static string Usage(Command command) =>
        string.Join(
            ' ',
            [
                "dripwright",
                .. command is RootCommand ? [] : new[] { command.Name },
                .. command.Arguments.Select(argument =>
                    argument.Arity.MinimumNumberOfValues > 0 ? Name(argument) : $"[{Name(argument)}]"
                ),
                .. command.Subcommands.Count > 0 ? new[] { $"[{Words.Of("program.help.command")}]" } : [],
                $"[{Words.Of("program.help.option")}]",
            ]
        );

    private static string Name(Argument argument) => $"<{argument.HelpName ?? argument.Name}>";

    private static string Name(Command command) => string.Join(' ', [command.Name, .. command.Arguments.Select(Name)]);

    private static string Name(Option option)
    {
        var names = string.Join(
            ", ",
            option.Aliases.Append(option.Name).Where(name => name[0] is '-').OrderBy(name => name.Length)
        );
        return
            option.ValueType == typeof(bool)
            || option.ValueType == typeof(bool?)
            || option is HelpOption or VersionOption
            ? names
            : $"{names} <{option.HelpName ?? Words.Of("program.name.text")}>";
    }

    private static string Says(Option option) =>
        string.Join(
            ' ',
            [
                .. new[] { option.Description ?? "" }.Where(says => says.Length > 0),
                .. option.Required ? new[] { Words.Of("program.help.required") } : [],
                .. option.HasDefaultValue && option.GetDefaultValue() is { } usual and not (bool or Array)
                    ? new[] { Words.Of("program.help.usual", Convert.ToString(usual, CultureInfo.InvariantCulture)!) }
                    : [],
            ]
        );

    private void Section(StringBuilder text, string heading, IReadOnlyList<(string Left, string Right)> rows)
    {
        if (rows.Count == 0)
        {
            return;
        }

        text.Append(Words.Of(heading)).Append('\n');
        var left = Math.Min(MostLeft, rows.Max(row => row.Left.Length));
        foreach (var row in rows)
        {
            Row(text, row.Left, row.Right, left == 0 ? 2 : left + 4);
        }

        text.Append('\n');
    }

    // A name that is too long for its column has a line of its own.
    private void Row(StringBuilder text, string name, string says, int indent)
    {
        var line = new StringBuilder("  ").Append(name);
        if (line.Length > indent - (name.Length > 0 ? 2 : 0))
        {
            text.Append(line).Append('\n');
            line.Clear();
        }

        line.Append(' ', Math.Max(0, indent - line.Length));
        var isFirst = true;
        foreach (var word in Plain.Line(says).Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (!isFirst && line.Length + 1 + word.Length > width)
            {
                text.Append(line).Append('\n');
                line.Clear().Append(' ', indent);
                isFirst = true;
            }

            line.Append(isFirst ? "" : " ").Append(word);
            isFirst = false;
        }

        text.Append(line.ToString().TrimEnd()).Append('\n');
    }
}
