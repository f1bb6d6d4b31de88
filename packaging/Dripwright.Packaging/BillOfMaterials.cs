using System.Text.Json;
using System.Text.Json.Nodes;

namespace Dripwright.Packaging;

/// <summary>
/// The bill of materials (CycloneDX). The maintained tool writes what the restored packages are; it does not know which of them a
/// platform's folder holds, nor the platform's own runtime, nor what lies in the repository.
/// </summary>
internal static class BillOfMaterials
{
    private static readonly JsonSerializerOptions s_writing = new() { WriteIndented = true };

    /// <summary>Leaves out what is not in the folder and adds what the tool cannot know.</summary>
    /// <param name="file">The bill as the tool wrote it; it is written anew.</param>
    /// <param name="shipped">What is in the folder.</param>
    /// <param name="committed">What lies in the repository.</param>
    /// <param name="packages">Where restored packages lie.</param>
    public static void Complete(
        string file,
        IReadOnlyList<Shipped> shipped,
        IReadOnlyList<Committed> committed,
        string packages
    )
    {
        var bill = JsonNode.Parse(File.ReadAllText(file))!.AsObject();
        var listed = bill["components"]!.AsArray();
        var kept = new JsonArray();
        foreach (var one in shipped)
        {
            var known = listed.FirstOrDefault(part =>
                string.Equals((string?)part!["name"], one.Name, StringComparison.OrdinalIgnoreCase)
                && (string?)part["version"] == one.Version
            );
            var part =
                known?.DeepClone().AsObject()
                ?? Part(one.Name, one.Version, $"pkg:nuget/{one.Name}@{one.Version}", LicenceOf(one, packages));
            part["scope"] = "required";
            kept.Add((JsonNode)part);
        }

        foreach (var one in committed)
        {
            kept.Add((JsonNode)Part(one.Name, one.Version, one.Purl, one.Licence));
        }

        bill["components"] = kept;
        var names = kept.Select(part => (string)part!["bom-ref"]!).ToHashSet(StringComparer.Ordinal);
        var root = (string)bill["metadata"]!["component"]!["bom-ref"]!;
        bill["dependencies"] = Dependencies(bill["dependencies"]!.AsArray(), names, root);
        File.WriteAllText(file, bill.ToJsonString(s_writing) + "\n");
    }

    // A package that brings no files may stand between two that do: what is reached through it is named in its place.
    private static JsonArray Dependencies(JsonArray found, HashSet<string> names, string root)
    {
        var needs = found.ToDictionary(
            one => (string)one!["ref"]!,
            one => (one!["dependsOn"]?.AsArray().Select(name => (string)name!) ?? []).ToList(),
            StringComparer.Ordinal
        );
        IEnumerable<string> Reached(string from) =>
            (needs.GetValueOrDefault(from) ?? []).SelectMany(to => names.Contains(to) ? [to] : Reached(to));

        var all = new JsonArray();
        foreach (var name in names.Prepend(root))
        {
            var to = Reached(name);
            if (name == root)
            {
                // What nothing else asks for belongs to the program itself.
                var asked = names.SelectMany(Reached).ToHashSet(StringComparer.Ordinal);
                to = to.Concat(names.Where(one => !asked.Contains(one)));
            }

            all.Add(
                (JsonNode)
                    new JsonObject
                    {
                        ["ref"] = name,
                        ["dependsOn"] = new JsonArray([
                            .. to.Distinct().Order(StringComparer.Ordinal).Select(one => (JsonNode)one),
                        ]),
                    }
            );
        }

        return all;
    }

    private static string? LicenceOf(Shipped one, string packages) =>
        Licences.Head.Read(one.FolderIn(packages), one).Licence is var said
        && said.Contains(' ', StringComparison.Ordinal)
            ? null
            : said;

    private static JsonObject Part(string name, string version, string? purl, string? licence)
    {
        var part = new JsonObject
        {
            ["type"] = "library",
            ["bom-ref"] = purl ?? $"{name}@{version}",
            ["name"] = name,
            ["version"] = version,
            ["scope"] = "required",
        };
        if (licence is not null)
        {
            part["licenses"] = new JsonArray(new JsonObject { ["license"] = new JsonObject { ["id"] = licence } });
        }

        if (purl is not null)
        {
            part["purl"] = purl;
        }

        return part;
    }
}
