using System.CommandLine;
using Dripwright.Language;
using Dripwright.Store;
using Dripwright.Store.Ground;
using Dripwright.Terminal;

namespace Dripwright.Commands;

/// <summary>Which garden a command is about.</summary>
internal sealed class GardenOption(Surroundings around)
{
    /// <summary>The environment's word on it.</summary>
    public const string Variable = "DRIPWRIGHT_GARDEN";

    public Option<string?> Option { get; } =
        new("--garden")
        {
            Description = Words.Of("program.garden.option", Variable),
            HelpName = Words.Of("program.name.place"),
        };

    /// <summary>The place that the call or the environment says; else the usual one.</summary>
    public GardenPlace Place(ParseResult call)
    {
        var text = call.GetValue(Option) ?? around.Variable(Variable);
        if (string.IsNullOrWhiteSpace(text))
        {
            return GardenPlace.Usual();
        }

        try
        {
            return GardenPlace.Of(text);
        }
        catch (ArgumentException)
        {
            throw new Refusal(Exit.WrongCall, Words.Of("program.garden.path", text));
        }
    }

    /// <summary>Works in a garden that is there; a misspelt place must not become an empty garden.</summary>
    public async Task<int> In(ParseResult call, Func<Garden, Task> work, CancellationToken stop)
    {
        var place = Place(call);
        if (place.Path is { } path && !File.Exists(path))
        {
            throw new Refusal(Exit.FaultyFile, Words.Of("program.garden.none", path));
        }

        var open = await Garden.OpenAsync(place, stop: stop).ConfigureAwait(false);
        await using (open.ConfigureAwait(false))
        {
            await work(open).ConfigureAwait(false);
        }

        return Exit.Good;
    }
}
