using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Parsing;
using Dripwright.Commands;
using Dripwright.Engine.Units;
using Dripwright.Language;
using Dripwright.Screen;
using Dripwright.Solids;
using Dripwright.Store;

namespace Dripwright;

/// <summary>The program's commands, and what happens around each of them.</summary>
internal static class CommandLine
{
    /// <summary>Runs one call.</summary>
    /// <param name="args">The words after the program's name.</param>
    /// <param name="around">Where it reads and writes.</param>
    /// <param name="stop">Asks for a clean end.</param>
    /// <returns>One of <see cref="Exit"/>.</returns>
    public static async Task<int> Run(IReadOnlyList<string> args, Surroundings around, CancellationToken stop)
    {
        try
        {
            var root = Root(around);
            // Without a command it shows what there is.
            var call = root.Parse(args.Count == 0 ? ["--help"] : args);
            if (call.Errors.Count > 0)
            {
                throw new Refusal(Exit.WrongCall, [.. WrongCall(call)]);
            }

            var exit = await call.InvokeAsync(
                    new InvocationConfiguration
                    {
                        Output = around.Out,
                        Error = around.Error,
                        EnableDefaultExceptionHandler = false,
                        ProcessTerminationTimeout = null,
                    },
                    stop
                )
                .ConfigureAwait(false);
            await around.Out.FlushAsync(CancellationToken.None).ConfigureAwait(false);
            return exit;
        }
        catch (Refusal refusal)
        {
            foreach (var message in refusal.Messages)
            {
                await around.Error.WriteLineAsync(Plain.Line(message)).ConfigureAwait(false);
            }

            return refusal.ExitCode;
        }
        catch (GardenException trouble)
        {
            await around.Error.WriteLineAsync(Plain.Line(trouble.Message)).ConfigureAwait(false);
            return trouble.Kind is TroubleKind.NotWritable or TroubleKind.Busy or TroubleKind.Locked
                ? Exit.NotWritten
                : Exit.FaultyFile;
        }
        catch (SolidsMissingException)
        {
            await around.Error.WriteLineAsync(Words.Of("solids.missing")).ConfigureAwait(false);
            return Exit.NotWritten;
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            await around.Error.WriteLineAsync("Stopped. Nothing was written.").ConfigureAwait(false);
            return Exit.Stopped;
        }
        catch (IOException wrong)
        {
            // Files have refusals of their own: what is left is the standard output, say onto a full disk.
            await around
                .Error.WriteLineAsync(Plain.Line($"dripwright: the result cannot be written: {wrong.Message}"))
                .ConfigureAwait(false);
            return Exit.NotWritten;
        }
#pragma warning disable CA1031 // The last net: whatever it is, the person gets one clear line, not a stack trace.
        catch (Exception mistake)
#pragma warning restore CA1031
        {
            await around.Error.WriteLineAsync(Plain.Line(Confession(mistake))).ConfigureAwait(false);
            if (around.Variable("DRIPWRIGHT_TRACE") == "1")
            {
                await around.Error.WriteLineAsync(mistake.ToString()).ConfigureAwait(false);
            }

            return Exit.Internal;
        }
    }

    private static RootCommand Root(Surroundings around)
    {
        var shared = new SharedOptions();
        var root = new RootCommand(
            "Plans recirculating drip rows: pots on a stand, fed by drip from a reservoir that they drain back into."
                + " From a rig file it computes the plan and writes the build pack."
        )
        {
            OpenCommand.Of(around),
            StartCommand.Of(around, shared),
            SuggestCommand.Of(around, shared),
            CheckCommand.Of(around, shared),
            PlanCommand.Of(around, shared),
            PackCommand.Of(around, shared),
            NutrientCommands.Mix(around, shared),
            NutrientTankCommands.Adjust(around, shared),
            NutrientTankCommands.Uptake(around, shared),
            NutrientCommands.WeeksAhead(around, shared),
            PrintPartsCommand.Of(around, shared),
            SchemaCommand.Of(around, shared),
            CatalogueCommand.Of(around, shared),
            BackupCommand.Of(around),
            RestoreCommand.Of(around),
            ExportCommand.Of(around),
            ImportCommand.Of(around),
            UnlockCommand.Of(around),
            shared.Catalogue,
            shared.Colour,
        };
        foreach (var help in root.Options.OfType<HelpOption>())
        {
            help.Action = new HelpAction { MaxWidth = around.Width };
        }

        return root;
    }

    private static IEnumerable<string> WrongCall(ParseResult call)
    {
        var command = call.CommandResult.Command;
        // Where an option is misspelt, the words after it are not at fault.
        var misspelt = call.Errors.Where(error => error.Message.StartsWith("Unknown option", StringComparison.Ordinal));
        foreach (var error in misspelt.Any() ? misspelt : call.Errors)
        {
            yield return $"dripwright: {error.Message}{Nearest(call, error)}";
        }

        var path = command is RootCommand ? "" : command.Name + " ";
        yield return $"See: dripwright {path}--help";
    }

    // "--jsno" is told apart from a surplus word, and what was most likely meant is named.
    private static string Nearest(ParseResult call, ParseError error)
    {
        var word = call
            .Tokens.Select(token => token.Value)
            .FirstOrDefault(token => error.Message.Contains($"'{token}'", StringComparison.Ordinal));
        if (word is null)
        {
            return "";
        }

        var command = call.CommandResult.Command;
        var known = word.StartsWith('-')
            ? command.Options.Concat(call.RootCommandResult.Command.Options).Select(option => option.Name)
            : command.Subcommands.Select(sub => sub.Name);
        return NearestName.Of(word, known) is { } nearest && nearest != word ? $" Did you mean '{nearest}'?" : "";
    }

    private static string Confession(Exception mistake) =>
        $"dripwright: a mistake in the program: {mistake.Message.ReplaceLineEndings(" ")}"
        + " Please report it with the rig file; DRIPWRIGHT_TRACE=1 shows where it happened.";
}
