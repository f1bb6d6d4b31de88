using System.CommandLine;
using System.Globalization;
using Dripwright.Language;
using Dripwright.Terminal;

namespace Dripwright.Commands;

/// <summary>The language that a call is answered in. What is written into files for programs does not change with it.</summary>
internal static class LanguageOption
{
    private const string Name = "--language";

    public static Option<string?> Make()
    {
        var option = new Option<string?>(Name)
        {
            Description = Words.Of("program.option.language"),
            HelpName = Words.Of("program.name.language"),
            Recursive = true,
        };
        option.CompletionSources.Add([.. Languages.All]);
        option.Validators.Add(result =>
        {
            if (result.Tokens is [{ Value: var asked }] && Languages.Find(asked) is null)
            {
                var expected = Words.Of("program.ask.one-of", string.Join(", ", Languages.All));
                result.Refuse(Words.Of("program.option.wrong", Name, asked, expected));
            }
        });
        return option;
    }

    /// <summary>The language of a call that is not read yet: what it says itself, else what the environment says.</summary>
    public static CultureInfo Of(IReadOnlyList<string> args, Surroundings around)
    {
        var asked = args.Zip(args.Skip(1).Append(""))
            .Select(pair =>
                pair.First == Name ? pair.Second
                : pair.First.StartsWith(Name + "=", StringComparison.Ordinal) ? pair.First[(Name.Length + 1)..]
                : null
            )
            .FirstOrDefault(asked => asked is not null);
        return (asked is null ? null : Languages.Find(asked)) ?? Languages.OfEnvironment(around.Variable);
    }
}
