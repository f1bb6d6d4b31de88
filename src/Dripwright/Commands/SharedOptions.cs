using System.CommandLine;
using Dripwright.Engine.Catalogue;
using Dripwright.Files;

namespace Dripwright.Commands;

/// <summary>Options that every command knows.</summary>
internal sealed class SharedOptions
{
    public Option<string?> Catalogue { get; } =
        new("--catalogue")
        {
            Description = "Your own catalogue file: its parts are added to the built-in ones, or replace them.",
            HelpName = "file",
            Recursive = true,
        };

    public Option<string> Colour { get; } = MakeColour();

    /// <summary>The catalogue of this call: ours, with the user's laid over it.</summary>
    public PartsCatalogue ReadCatalogue(ParseResult call, Surroundings around, CancellationToken stop)
    {
        if (call.GetValue(Catalogue) is not { } path)
        {
            return PartsCatalogue.Default;
        }

        var reading = CatalogueReader.Read(SmallFile.Read(path, around, stop), path, PartsCatalogue.Default);
        return reading.Catalogue ?? throw Faults.Refusal(path, reading.Faults);
    }

    /// <summary>Whether this call shows colour.</summary>
    public bool ShowsColour(ParseResult call, Surroundings around) =>
        call.GetValue(Colour) switch
        {
            "always" => true,
            "never" => false,
            _ => around.OutIsTerminal
                && string.IsNullOrEmpty(around.Variable("NO_COLOR"))
                && around.Variable("TERM") != "dumb",
        };

    private static Option<string> MakeColour()
    {
        var colour = new Option<string>("--colour")
        {
            Description = "Colour: auto (only on a terminal, and not where NO_COLOR is set), always or never.",
            HelpName = "when",
            Recursive = true,
            DefaultValueFactory = _ => "auto",
        };
        return colour.AcceptOnlyFromAmong("auto", "always", "never");
    }
}
