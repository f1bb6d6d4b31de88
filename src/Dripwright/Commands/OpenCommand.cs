using System.CommandLine;
using System.Globalization;
using System.Net.Sockets;
using Dripwright.Language;
using Dripwright.Store;
using Dripwright.Workbench;

namespace Dripwright.Commands;

/// <summary><c>open</c>: the workbench in a browser.</summary>
internal static class OpenCommand
{
    public static Command Of(Surroundings around)
    {
        var garden = new GardenOption(around);
        var port = new Option<int>("--port")
        {
            Description = "Port of the workbench's address; 0 for any free one.",
            HelpName = "number",
            DefaultValueFactory = _ => WorkbenchOptions.UsualPort,
        };
        port.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<int>() is < 0 or > 65535)
            {
                result.AddError("Option '--port': expected a number from 0 to 65535.");
            }
        });
        var address = new Option<string?>("--address")
        {
            Description = "Address to listen on. Without --network only this machine's own, such as 127.0.0.1.",
            HelpName = "address",
        };
        var network = new Option<bool>("--network")
        {
            Description = "Open to the house network too. Everybody then signs in, also on this machine.",
        };
        var knownAs = new Option<string[]>("--known-as")
        {
            Description = "With --network: another name that the network has for this machine.",
            HelpName = "name",
        };
        var copiesTo = new Option<string?>("--copies-to")
        {
            Description = "A second folder for the daily backups, such as one on another disk; it must be there.",
            HelpName = "folder",
        };
        var service = new Option<bool>("--service") { Description = Words.Of("open.service") };
        var metrics = new Option<string?>("--metrics")
        {
            Description = Words.Of("open.metrics"),
            HelpName = Words.Of("open.metrics.name"),
        };
        metrics.Validators.Add(result =>
        {
            var text = result.GetValueOrDefault<string?>();
            if (!Uri.TryCreate(text, UriKind.Absolute, out var to) || to.Scheme is not ("http" or "https"))
            {
                result.AddError(Words.Of("open.metrics.expected", text ?? ""));
            }
        });
        var command = new Command("open", "Open the workbench in the browser: design a rig, see it at once, print it.")
        {
            garden.Option,
            port,
            address,
            network,
            knownAs,
            copiesTo,
            service,
            metrics,
        };
        command.SetAction(
            async (call, stop) =>
            {
                await Serve(
                        new WorkbenchOptions
                        {
                            Address = call.GetValue(address) ?? (call.GetValue(network) ? "0.0.0.0" : "127.0.0.1"),
                            Network = call.GetValue(network),
                            KnownAs = call.GetValue(knownAs) ?? [],
                            Port = call.GetValue(port),
                            Garden = garden.Place(call),
                            MetricsTo = call.GetValue(metrics) is { } to ? new Uri(to) : null,
                            CopiesTo = SecondPlace(call.GetValue(copiesTo)),
                            DataFolder = DataFolder(around),
                        },
                        call.GetValue(service) ? around with { Browse = null } : around,
                        stop
                    )
                    .ConfigureAwait(false);
                return Exit.Good;
            }
        );
        return command;
    }

    private static async Task Serve(WorkbenchOptions options, Surroundings around, CancellationToken stop)
    {
        WebApplication app;
        try
        {
            app = await WorkbenchHost.BuildAsync(options, stop).ConfigureAwait(false);
        }
        catch (ArgumentException wrong) when (wrong.ParamName == "address")
        {
            throw new Refusal(Exit.WrongCall, $"dripwright: {wrong.Message.Split(" (Parameter")[0]}");
        }

        await using (app.ConfigureAwait(false))
        {
            try
            {
                await app.StartAsync(stop).ConfigureAwait(false);
            }
            catch (IOException taken)
                when (taken.InnerException is Microsoft.AspNetCore.Connections.AddressInUseException)
            {
                throw new Refusal(Exit.NotWritten, Taken(options));
            }
            catch (SocketException refused)
            {
                throw new Refusal(Exit.NotWritten, $"{Taken(options)} ({refused.Message})");
            }

            await around.Out.WriteLineAsync($"Dripwright is open at {Reached(app, options)}").ConfigureAwait(false);
            await around
                .Out.WriteLineAsync($"The garden is kept in {options.Garden}. Ctrl-C closes it.")
                .ConfigureAwait(false);
            await TellOfOlder(app, around).ConfigureAwait(false);
            await TellOfNetwork(app, options, around).ConfigureAwait(false);
            await around.Out.FlushAsync(stop).ConfigureAwait(false);
            around.Browse?.Invoke(Reached(app, options));
            await WaitFor(stop).ConfigureAwait(false);
            using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(5));
            await app.StopAsync(patience.Token).ConfigureAwait(false);
        }
    }

    private static string? SecondPlace(string? given) =>
        given is null || Directory.Exists(given)
            ? given
            : throw new Refusal(
                Exit.WrongCall,
                $"{given}: there is no such folder for backups: make it, or plug its disk in, and open again."
            );

    private static Task TellOfOlder(WebApplication app, Surroundings around) =>
        WorkbenchHost.GardenOf(app).Older is { } older
            ? around.Out.WriteLineAsync(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"This garden's file is older than the one last used here: it ends with change {older.Found}, the other with change {older.Known} of {older.KnownAt:yyyy-MM-dd HH:mm} UTC. If you did not put it here on purpose, close the workbench and look for the newer file, or restore a backup."
                )
            )
            : Task.CompletedTask;

    private static string Reached(WebApplication app, WorkbenchOptions options)
    {
        var url = new Uri(app.Urls.First());
        return options.Network && url.Host is "0.0.0.0" or "[::]"
            ? string.Create(CultureInfo.InvariantCulture, $"http://{Environment.MachineName}:{url.Port}")
            : url.ToString().TrimEnd('/');
    }

    private static async Task TellOfNetwork(WebApplication app, WorkbenchOptions options, Surroundings around)
    {
        if (!options.Network)
        {
            return;
        }

        await around
            .Out.WriteLineAsync(
                "It answers the house network, and everybody signs in. The connection is not encrypted: use it only in a network you trust."
            )
            .ConfigureAwait(false);
        if (WorkbenchHost.CodeForNewPerson(app) is { } code)
        {
            await around
                .Out.WriteLineAsync(
                    $"Nobody has an account yet. Code for the first account, for one use within a day: {code}"
                )
                .ConfigureAwait(false);
        }
    }

    private static string Taken(WorkbenchOptions options) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"dripwright: port {options.Port} on {options.Address} is in use by another program or another Dripwright. Choose another with --port, or --port 0 for any free one."
        );

    private static Task WaitFor(CancellationToken stop)
    {
        var asked = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        stop.Register(() => asked.TrySetResult());
        return asked.Task;
    }

    // The log and the keys stay where the usual garden is kept, wherever this one lies.
    private static string DataFolder(Surroundings around) =>
        around.Variable("DRIPWRIGHT_DATA") is { Length: > 0 } given
            ? Path.GetFullPath(given)
            : Path.GetDirectoryName(GardenPlace.Usual().Path)!;
}
