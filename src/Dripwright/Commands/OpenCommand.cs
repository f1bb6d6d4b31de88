using System.CommandLine;
using System.Globalization;
using System.Net.Sockets;
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
            Description = "Port of the page's address; 0 takes any free one.",
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
        var address = new Option<string>("--address")
        {
            Description = "Address to listen at; only this machine's own, such as 127.0.0.1.",
            HelpName = "address",
            DefaultValueFactory = _ => "127.0.0.1",
        };
        var command = new Command("open", "Open the workbench: design a rig on a page, see it at once, print it.")
        {
            garden.Option,
            port,
            address,
        };
        command.SetAction(
            async (call, stop) =>
            {
                await Serve(
                        new WorkbenchOptions
                        {
                            Address = call.GetRequiredValue(address),
                            Port = call.GetValue(port),
                            Garden = garden.Place(call),
                            DataFolder = DataFolder(around),
                        },
                        around,
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

            await around.Out.WriteLineAsync($"Dripwright is open at {app.Urls.First()}").ConfigureAwait(false);
            await around
                .Out.WriteLineAsync($"The garden is kept in {options.Garden}. Ctrl-C closes it.")
                .ConfigureAwait(false);
            await around.Out.FlushAsync(stop).ConfigureAwait(false);
            await WaitFor(stop).ConfigureAwait(false);
            using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(5));
            await app.StopAsync(patience.Token).ConfigureAwait(false);
        }
    }

    private static string Taken(WorkbenchOptions options) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"dripwright: port {options.Port} on {options.Address} cannot be had: another program, or another Dripwright, has it. Take another one with --port, or --port 0 for any."
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
