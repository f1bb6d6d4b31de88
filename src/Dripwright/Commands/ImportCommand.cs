using System.CommandLine;
using System.Text;
using System.Text.Json;
using Dripwright.Files;
using Dripwright.Language;
using Dripwright.Screen;
using Dripwright.Store;
using Dripwright.Terminal;

namespace Dripwright.Commands;

/// <summary><c>import</c>: a garden file or a rig file into the garden.</summary>
internal static class ImportCommand
{
    public static Command Of(Surroundings around)
    {
        var garden = new GardenOption(around);
        var file = RigArgument.Make(Words.Of("program.import.file"), Words.Of("program.name.file"));
        var command = new Command("import", Words.Of("program.import")) { file, garden.Option };
        command.SetAction(
            async (call, stop) =>
            {
                var path = call.GetRequiredValue(file);
                var isGarden = IsGardenFile(path);
                var rig = isGarden ? null : SmallFile.Read(path, around, stop);
                var open = await Garden.OpenAsync(garden.Place(call), stop: stop).ConfigureAwait(false);
                await using (open.ConfigureAwait(false))
                {
                    await (
                        rig is null ? ImportGarden(open, path, around, stop) : ImportRig(open, path, rig, around, stop)
                    ).ConfigureAwait(false);
                }

                return Exit.Good;
            }
        );
        return command;
    }

    private static async Task ImportGarden(Garden garden, string path, Surroundings around, CancellationToken stop)
    {
        var stream = File.OpenRead(path);
        await using (stream.ConfigureAwait(false))
        {
            var imported = await garden.ImportAsync(stream, path, stop).ConfigureAwait(false);
            var said = imported.Rigs == 1 ? "program.imported.one" : "program.imported.many";
            around.Out.WriteLine(Words.Of(said, path, imported.Rigs, garden.Place));
            foreach (var remark in imported.Remarks)
            {
                around.Out.WriteLine(Plain.Line(remark));
            }
        }
    }

    private static async Task ImportRig(
        Garden garden,
        string path,
        byte[] bytes,
        Surroundings around,
        CancellationToken stop
    )
    {
        var catalogue = await garden.CatalogueAsync(stop).ConfigureAwait(false);
        var reading = Engine.Rigs.RigReader.Read(bytes, path, catalogue.Catalogue);
        if (reading.Rig is not { } rig)
        {
            throw new Refusal(
                Exit.FaultyFile,
                [.. reading.Faults.Select(fault => fault.Told().ToString()), Words.Of("program.import.faults", path)]
            );
        }

        var start = bytes.AsSpan().StartsWith(Encoding.UTF8.Preamble) ? Encoding.UTF8.Preamble.Length : 0;
        var draft = await garden
            .AddRigAsync(rig.Name, Encoding.UTF8.GetString(bytes.AsSpan(start)), stop)
            .ConfigureAwait(false);
        await garden
            .SaveRevisionAsync(
                draft.Id,
                draft.Version,
                "",
                Words.Of("program.import.note", Path.GetFileName(path)),
                stop
            )
            .ConfigureAwait(false);
        around.Out.WriteLine(Plain.Line(Words.Of("program.import.rig", path, rig.Name, garden.Place)));
    }

    // A garden file says so in its first field; a rig file never does.
    private static bool IsGardenFile(string path)
    {
        var start = new byte[4096];
        if (path == "-" || !File.Exists(path))
        {
            return false;
        }

        using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read);
        var got = stream.ReadAtLeast(start, start.Length, throwOnEndOfStream: false);
        var bytes = start.AsSpan(0, got);
        var reader = new Utf8JsonReader(
            bytes.StartsWith(Encoding.UTF8.Preamble) ? bytes[Encoding.UTF8.Preamble.Length..] : bytes,
            isFinalBlock: false,
            new JsonReaderState(new JsonReaderOptions { CommentHandling = JsonCommentHandling.Skip })
        );
        try
        {
            return reader.Read()
                && reader.TokenType == JsonTokenType.StartObject
                && reader.Read()
                && reader.TokenType == JsonTokenType.PropertyName
                && reader.ValueTextEquals("gardenFormat");
        }
        catch (JsonException)
        {
            return false;
        }
    }
}
