using System.CommandLine;
using System.CommandLine.Help;
using System.Globalization;
using Dripwright.Commands;
using Dripwright.Language;
using Dripwright.Screen;
using Dripwright.Solids;
using Dripwright.Store.Ground;
using Dripwright.Terminal;

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
        // Help is told before a call is understood. What is set here holds for this call and all that it starts.
        CultureInfo.CurrentUICulture = LanguageOption.Of(args, around);
        try
        {
            var root = Root(around);
            // Without a command it shows what there is.
            var call = root.Parse(args.Count == 0 ? ["--help"] : args);
            if (call.Errors.Count > 0)
            {
                throw new Refusal(Exit.WrongCall, [.. Wrong.Lines(call)]);
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
            await around.Error.WriteLineAsync(Words.Of("program.stopped")).ConfigureAwait(false);
            return Exit.Stopped;
        }
        catch (IOException wrong)
        {
            // Files have refusals of their own: what is left is the standard output, say onto a full disk.
            await around
                .Error.WriteLineAsync(Plain.Line(Wrong.Told(Words.Of("program.unwritten", SystemReason.Of(wrong)))))
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
        var root = new RootCommand(Words.Of("program.about"))
        {
            OpenCommand.Of(around),
            StartCommand.Of(around, shared),
            SuggestCommand.Of(around, shared),
            CheckCommand.Of(around, shared),
            CuresCommand.Of(around, shared),
            MakeItWorkCommand.Of(around, shared),
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
            EmptyBinCommand.Of(around),
            CertificateCommands.Make(around),
            CertificateCommands.Renew(around),
            CertificateCommands.Tell(around),
            PeopleCommand.Of(around),
            shared.Catalogue,
            shared.Colour,
            LanguageOption.Make(),
        };
        foreach (var help in root.Options.OfType<HelpOption>())
        {
            help.Description = Words.Of("program.help.help");
            help.Action = new HelpText(around.Width);
        }

        foreach (var version in root.Options.OfType<VersionOption>())
        {
            version.Description = Words.Of("program.help.version");
        }

        return root;
    }

    private static string Confession(Exception mistake) =>
        Wrong.Told(Words.Of("program.mistake", mistake.Message.ReplaceLineEndings(" ")));
}
