using System.CommandLine;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Units;
using Dripwright.Files;
using Dripwright.Language;
using Dripwright.Terminal;

namespace Dripwright.Commands;

/// <summary>Options that every command knows.</summary>
internal sealed class SharedOptions
{
    public Option<string?> Catalogue { get; } =
        new("--catalogue")
        {
            Description = Words.Of("program.option.catalogue"),
            HelpName = Words.Of("program.name.file"),
            Recursive = true,
        };

    public Option<string> Colour { get; } = MakeColour();

    /// <summary>Units to show a plan in, where a command shows one; null for the rig's.</summary>
    public static Option<string?> Units() =>
        new Option<string?>("--units")
        {
            Description = Words.Of("program.option.units"),
            HelpName = Words.Of("program.name.system"),
        }.OneOf("us", "metric");

    /// <summary>The system of units that an option asks for; null where it asks for none.</summary>
    public static UnitSystem? UnitsOf(string? asked) =>
        asked switch
        {
            "us" => UnitSystem.Us,
            "metric" => UnitSystem.Metric,
            _ => null,
        };

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
            Description = Words.Of("program.option.colour"),
            HelpName = Words.Of("program.name.when"),
            Recursive = true,
            DefaultValueFactory = _ => "auto",
        };
        return colour.OneOf("auto", "always", "never");
    }
}
