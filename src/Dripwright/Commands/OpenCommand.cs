using System.CommandLine;
using System.Globalization;
using System.Net.Sockets;
using Dripwright.Language;
using Dripwright.Screen;
using Dripwright.Terminal;
using Dripwright.Workbench;
using Dripwright.Workbench.Encryption;
using Dripwright.Workbench.Setup;

namespace Dripwright.Commands;

/// <summary><c>open</c>: the workbench in a browser.</summary>
internal static class OpenCommand
{
    public static Command Of(Surroundings around)
    {
        var garden = new GardenOption(around);
        var port = new Option<int>("--port")
        {
            Description = Words.Of("program.open.port"),
            HelpName = Words.Of("program.name.number"),
            DefaultValueFactory = _ => WorkbenchOptions.UsualPort,
        };
        port.Validators.Add(result =>
        {
            if (
                result.Tokens is [{ Value: var text }]
                && !ushort.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out _)
            )
            {
                result.Refuse(Words.Of("program.option.wrong", "--port", text, Words.Of("program.open.port.range")));
            }
        });
        var address = new Option<string?>("--address")
        {
            Description = Words.Of("program.open.address"),
            HelpName = Words.Of("program.name.address"),
        };
        var network = new Option<bool>("--network") { Description = Words.Of("program.open.network") };
        var onlyMe = new Option<bool>("--only-me") { Description = Words.Of("program.open.only-me") };
        var knownAs = new Option<string[]>("--known-as")
        {
            Description = Words.Of("program.open.known-as"),
            HelpName = Words.Of("program.name.name"),
        };
        var copiesTo = new Option<string?>("--copies-to")
        {
            Description = Words.Of("program.open.copies-to"),
            HelpName = Words.Of("program.name.folder"),
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
                result.Refuse(
                    Words.Of("program.option.wrong", "--metrics", text ?? "", Words.Of("open.metrics.expected"))
                );
            }
        });
        var encryption = new EncryptionOptions(around);
        var command = new Command("open", Words.Of("program.open"))
        {
            garden.Option,
            port,
            address,
            network,
            onlyMe,
            knownAs,
            copiesTo,
            service,
            metrics,
        };
        foreach (var option in encryption.All)
        {
            command.Options.Add(option);
        }

        command.SetAction(
            async (call, stop) =>
            {
                var proxies = encryption.Proxies(call, call.GetValue(network));
                var data = CertificateCommands.DataFolder(around);
                await Serve(
                        new WorkbenchOptions
                        {
                            Address = call.GetValue(address) ?? (call.GetValue(network) ? "0.0.0.0" : "127.0.0.1"),
                            Network = call.GetValue(network),
                            OnlyMe = call.GetValue(onlyMe),
                            KnownAs = call.GetValue(knownAs) ?? [],
                            Port = call.GetValue(port),
                            Garden = garden.Place(call),
                            MetricsTo = call.GetValue(metrics) is { } to ? new Uri(to) : null,
                            CopiesTo = SecondPlace(call.GetValue(copiesTo)),
                            DataFolder = data,
                            TrustedProxies = proxies,
                            Certificate = encryption.Certificate(call, data, call.GetValue(network), proxies.Count > 0),
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
            throw new Refusal(Exit.WrongCall, Wrong.Told(wrong.Message.Split(" (Parameter")[0]));
        }
        catch (EncryptionException wrong)
        {
            throw new Refusal(Exit.FaultyFile, Wrong.Told(wrong.Message));
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

            await around.Out.WriteLineAsync(Words.Of("program.open.at", Reached(app, options))).ConfigureAwait(false);
            await around.Out.WriteLineAsync(Words.Of("program.open.garden", options.Garden)).ConfigureAwait(false);
            await TellOfOlder(app, around).ConfigureAwait(false);
            await TellOfNetwork(app, options, around).ConfigureAwait(false);
            var page = await TellOfAccounts(app, options, around).ConfigureAwait(false);
            await around.Out.FlushAsync(stop).ConfigureAwait(false);
            around.Browse?.Invoke(page is null ? Reached(app, options) : new Uri(page).AbsoluteUri);
            await WaitFor(stop).ConfigureAwait(false);
            using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(5));
            await app.StopAsync(patience.Token).ConfigureAwait(false);
        }
    }

    // The page lies in a file that only this account can read: its name may be an argument and stand on the terminal.
    private static async Task<string?> TellOfAccounts(WebApplication app, WorkbenchOptions options, Surroundings around)
    {
        if (WorkbenchHost.PageToOpen(app, new Uri(app.Urls.First()).ToString().TrimEnd('/')) is { } page)
        {
            await around.Out.WriteLineAsync(Words.Of("program.open.only-me.page", page)).ConfigureAwait(false);
            return page;
        }

        if (!options.AsksWho && OtherAccounts.AreHere())
        {
            await around.Out.WriteLineAsync(Words.Of("program.open.others")).ConfigureAwait(false);
        }

        return null;
    }

    private static string? SecondPlace(string? given) =>
        given is null || Directory.Exists(given)
            ? given
            : throw new Refusal(Exit.WrongCall, Words.Of("program.open.no-folder", given));

    private static Task TellOfOlder(WebApplication app, Surroundings around) =>
        WorkbenchHost.GardenOf(app).Older is { } older
            ? around.Out.WriteLineAsync(
                Words.Of(
                    "program.open.older",
                    older.Found,
                    older.Known,
                    older.KnownAt.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture)
                )
            )
            : Task.CompletedTask;

    private static string Reached(WebApplication app, WorkbenchOptions options)
    {
        var url = new Uri(app.Urls.First());
        if (WorkbenchHost.CertificateOf(app) is { } certificate)
        {
            // Only under a name that the certificate has does a browser show the page without a word.
            return string.Create(CultureInfo.InvariantCulture, $"https://{certificate.BestName}:{url.Port}");
        }

        return options.Network && url.Host is "0.0.0.0" or "[::]"
            ? string.Create(CultureInfo.InvariantCulture, $"http://{Environment.MachineName}:{url.Port}")
            : url.ToString().TrimEnd('/');
    }

    private static async Task TellOfNetwork(WebApplication app, WorkbenchOptions options, Surroundings around)
    {
        foreach (var concern in WorkbenchHost.ConcernsOf(app))
        {
            await around.Out.WriteLineAsync(Words.Of("program.certificate.concern", concern)).ConfigureAwait(false);
        }

        if (!options.Network)
        {
            return;
        }

        var how =
            options.Certificate is { IsOwn: true } ? "program.open.network.own"
            : options.Certificate is not null ? "program.open.network.encrypted"
            : options.TrustedProxies.Count > 0 ? "program.open.network.proxy"
            : "program.open.network.now";
        await around.Out.WriteLineAsync(Words.Of(how, Reached(app, options) + "/certificate")).ConfigureAwait(false);
        if (WorkbenchHost.CodeForNewPerson(app) is { } code)
        {
            await around.Out.WriteLineAsync(Words.Of("program.open.code", code)).ConfigureAwait(false);
        }
    }

    private static string Taken(WorkbenchOptions options) =>
        Wrong.Told(Words.Of("program.open.taken", options.Port, options.Address));

    private static Task WaitFor(CancellationToken stop)
    {
        var asked = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        stop.Register(() => asked.TrySetResult());
        return asked.Task;
    }
}
