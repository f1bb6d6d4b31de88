using System.CommandLine;
using System.CommandLine.Parsing;
using Dripwright.Engine.Units;
using Dripwright.Language;

namespace Dripwright.Commands;

/// <summary>Tells what is wrong with a call.</summary>
/// <remarks>
/// The library that reads calls has texts of its own that cannot be replaced, so nothing of them is shown: what it found is told anew.
/// A fault that one of our own options found begins with the program's name.
/// </remarks>
internal static class Wrong
{
    private const string Start = "dripwright: ";

    /// <summary>A line of the program.</summary>
    public static string Told(string text) => Start + text;

    /// <summary>An option that nobody knows.</summary>
    public static string UnknownOption(string word) => Words.Of("program.wrong.option", word);

    /// <summary>Notes a fault in the reader's language.</summary>
    public static void Refuse(this SymbolResult result, string text) => result.AddError(Told(text));

    /// <summary>Lets an option take only some words.</summary>
    public static Option<T> OneOf<T>(this Option<T> option, params string[] words)
    {
        option.CompletionSources.Add(words);
        option.Validators.Add(result => Judge(result, option.Name, result.Tokens, words));
        return option;
    }

    /// <summary>Lets an argument take only some words.</summary>
    public static void OneOf<T>(this Argument<T> argument, IReadOnlyList<string> words)
    {
        argument.CompletionSources.Add([.. words]);
        argument.Validators.Add(result =>
            Judge(result, $"<{argument.HelpName ?? argument.Name}>", result.Tokens, words)
        );
    }

    /// <summary>Every fault of a call, one line each, and where to look.</summary>
    public static IEnumerable<string> Lines(ParseResult call)
    {
        var command = call.CommandResult.Command;
        // Where an option is misspelt, the words after it are not at fault.
        var misspelt = Misspelt(call).ToList();
        var lines = misspelt.Count > 0 ? misspelt : [.. Others(call, command)];
        foreach (var line in lines.DefaultIfEmpty(Told(Words.Of("program.wrong.call"))).Distinct())
        {
            yield return line;
        }

        var path = string.Concat(Path(command).Select(name => name + " "));
        yield return Words.Of("program.wrong.see", $"dripwright {path}--help");
    }

    private static IEnumerable<string> Path(Command command) =>
        command is RootCommand ? [] : [.. command.Parents.OfType<Command>().Take(1).SelectMany(Path), command.Name];

    private static void Judge(
        SymbolResult result,
        string name,
        IReadOnlyList<Token> tokens,
        IReadOnlyList<string> words
    )
    {
        foreach (var token in tokens.Where(token => !words.Contains(token.Value)))
        {
            var expected = Words.Of("program.ask.one-of", string.Join(", ", words));
            var nearest = NearestName.Of(token.Value, words) is { } near ? " " + Words.Of("form.nearest", near) : "";
            result.Refuse(Words.Of("program.option.wrong", name, token.Value, expected) + nearest);
        }
    }

    private static IEnumerable<string> Misspelt(ParseResult call)
    {
        var known = call
            .CommandResult.Command.Options.Concat(call.RootCommandResult.Command.Options)
            .Select(option => option.Name)
            .ToList();
        return call
            .CommandResult.Children.OfType<ArgumentResult>()
            .SelectMany(argument => argument.Tokens.Select(token => token.Value))
            .Concat(call.UnmatchedTokens)
            .Where(word => word is ['-', _, ..])
            .Select(word => Told(UnknownOption(word) + Nearest(word, known)));
    }

    private static IEnumerable<string> Others(ParseResult call, Command command)
    {
        foreach (var word in call.UnmatchedTokens.Take(1))
        {
            var known = command.Subcommands.Select(sub => sub.Name).ToList();
            yield return Told(
                Words.Of(known.Count > 0 ? "program.wrong.command" : "program.wrong.word", word) + Nearest(word, known)
            );
        }

        foreach (
            var argument in command.Arguments.Where(argument =>
                argument.Arity.MinimumNumberOfValues > 0 && call.GetResult(argument) is not { Tokens.Count: > 0 }
            )
        )
        {
            yield return Told(Words.Of("program.wrong.missing", $"<{argument.HelpName ?? argument.Name}>"));
        }

        foreach (var option in command.Options.Concat(call.RootCommandResult.Command.Options).Distinct())
        {
            if (OfOption(call, option) is { } text)
            {
                yield return Told(text);
            }
        }

        foreach (var own in call.Errors.Where(IsOwn))
        {
            yield return own.Message;
        }

        if (call.Errors.Count > 0 && command.Subcommands.Count > 0 && call.UnmatchedTokens.Count == 0)
        {
            yield return Told(Words.Of("program.wrong.none"));
        }
    }

    // What is wrong with an option that it did not say itself.
    private static string? OfOption(ParseResult call, Option option)
    {
        if (call.GetResult(option) is not { Implicit: false } given)
        {
            return option.Required ? Words.Of("program.wrong.missing", option.Name) : null;
        }

        var errors = call.Errors.Where(error => error.SymbolResult == given).ToList();
        if (errors.Count == 0 || errors.Any(IsOwn))
        {
            return null;
        }

        var words = given.Tokens;
        return words.Count < option.Arity.MinimumNumberOfValues ? Words.Of("program.wrong.value", option.Name)
            : words.Count > option.Arity.MaximumNumberOfValues ? Words.Of("program.wrong.twice", option.Name)
            : Words.Of(
                "program.option.wrong",
                option.Name,
                words.Count == 0 ? "" : words[0].Value,
                Words.Of(IsYesOrNo(option) ? "program.ask.true-false" : "program.ask.number")
            );
    }

    private static bool IsYesOrNo(Option option) =>
        option.ValueType == typeof(bool) || option.ValueType == typeof(bool?);

    private static bool IsOwn(ParseError error) => error.Message.StartsWith(Start, StringComparison.Ordinal);

    private static string Nearest(string word, IReadOnlyList<string> known) =>
        NearestName.Of(word, known) is { } nearest && nearest != word
            ? " " + Words.Of("program.wrong.nearest", nearest)
            : "";
}
