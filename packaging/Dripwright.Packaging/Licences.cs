using System.Text;
using System.Xml.Linq;

namespace Dripwright.Packaging;

/// <summary>The licences that travel with a program: one file for each package, and the texts that the packages only name.</summary>
internal static class Licences
{
    private static readonly string[] s_beginnings = ["licen", "notice", "third-party", "thirdparty", "copying"];

    /// <summary>Writes them into a folder, which is made new.</summary>
    /// <param name="shipped">The packages.</param>
    /// <param name="committed">What lies in the repository.</param>
    /// <param name="packages">Where restored packages lie.</param>
    /// <param name="root">Root of the repository.</param>
    /// <param name="folder">Where to write.</param>
    /// <exception cref="InvalidDataException">A package has neither a licence's text nor a name whose text is known.</exception>
    public static void Write(
        IReadOnlyList<Shipped> shipped,
        IReadOnlyList<Committed> committed,
        string packages,
        string root,
        string folder
    )
    {
        if (Directory.Exists(folder))
        {
            Directory.Delete(folder, recursive: true);
        }

        Directory.CreateDirectory(folder);
        var named = new SortedSet<string>(StringComparer.Ordinal);
        foreach (var one in shipped)
        {
            var text = new StringBuilder();
            var head = Head.Read(one.FolderIn(packages), one);
            text.AppendLine($"{one.Name} {one.Version}").AppendLine(head.Copyright).AppendLine(head.Home);
            text.AppendLine($"Licence: {head.Licence}").AppendLine();
            var files = Texts(one.FolderIn(packages));
            foreach (var file in files)
            {
                text.AppendLine($"---- {Path.GetFileName(file)}").AppendLine(File.ReadAllText(file)).AppendLine();
            }

            // Where the author lets us choose, one whose text is at hand is chosen.
            var known = head.Licence.Split(" OR ").FirstOrDefault(choice => Known(root, choice));
            if (known is not null)
            {
                named.UnionWith(Names(known));
            }
            else if (files.Count == 0)
            {
                throw new InvalidDataException(
                    $"{one.Name} {one.Version}: found no licence's text in the package and none for \"{head.Licence}\" in packaging/licences; add it there as a text file."
                );
            }

            File.WriteAllText(Path.Combine(folder, $"{one.Name}.txt"), text.ToString());
        }

        foreach (var name in named)
        {
            File.Copy(Standard(root, name), Path.Combine(folder, $"_{name}.txt"));
        }

        foreach (var one in committed)
        {
            File.Copy(Path.Combine(root, one.Text), Path.Combine(folder, $"{one.Name}.txt"));
        }
    }

    private static bool Known(string root, string choice) =>
        Names(choice).All(name => File.Exists(Standard(root, name)));

    private static string[] Names(string choice) => choice.Split(" AND ", StringSplitOptions.TrimEntries);

    private static string Standard(string root, string name) =>
        Path.Combine(root, "packaging", "licences", name + ".txt");

    private static List<string> Texts(string package) =>
        [
            .. Directory
                .EnumerateFiles(package, "*", SearchOption.AllDirectories)
                .Where(file =>
                    Path.GetExtension(file).ToUpperInvariant() is ".TXT" or ".MD" or ""
                    && s_beginnings.Any(word =>
                        Path.GetFileName(file).StartsWith(word, StringComparison.OrdinalIgnoreCase)
                    )
                )
                .Order(StringComparer.Ordinal),
        ];

    /// <summary>What a package says of itself.</summary>
    internal sealed record Head(string Licence, string Copyright, string Home)
    {
        /// <summary>Reads it from a restored package.</summary>
        public static Head Read(string folder, Shipped package)
        {
            var file = Path.Combine(folder, package.Name.ToLowerInvariant() + ".nuspec");
            if (!File.Exists(file))
            {
                throw new InvalidDataException(
                    $"{file}: expected the head of a restored package; restore and try again."
                );
            }

            var said = XDocument.Load(file).Root!.Elements().Single(one => one.Name.LocalName == "metadata").Elements();
            string Say(string name) => said.FirstOrDefault(one => one.Name.LocalName == name)?.Value.Trim() ?? "";
            var licence = said.FirstOrDefault(one => one.Name.LocalName == "license");
            return new Head(
                licence?.Attribute("type")?.Value == "expression"
                    ? licence.Value.Trim('(', ')', ' ')
                    : "see the text below",
                Say("copyright"),
                Say("projectUrl")
            );
        }
    }
}
