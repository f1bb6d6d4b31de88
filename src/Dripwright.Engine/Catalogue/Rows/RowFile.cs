using System.Buffers;
using Dripwright.Engine.Files;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Catalogue.Rows;

/// <summary>The frame of a file of rows with keys: <c>{ "format": 1, "salts": [ … ] }</c>.</summary>
internal static class RowFile
{
    private const int MostRows = 2000;

    private static readonly SearchValues<char> s_keyLetters = SearchValues.Create(
        "abcdefghijklmnopqrstuvwxyz0123456789-./"
    );

    /// <summary>The bytes of a file that is built into the engine.</summary>
    public static byte[] BuiltIn(string name)
    {
        using var stream =
            typeof(RowFile).Assembly.GetManifestResourceStream("Dripwright.Engine.Catalogue." + name)
            ?? throw new InvalidOperationException($"The file '{name}' is not built in.");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }

    /// <summary>Reads the file and hands each row of each shelf over; faults of the frame are noted.</summary>
    /// <param name="bytes">The file, JSON in UTF-8.</param>
    /// <param name="faults">Where faults go.</param>
    /// <param name="shelves">What to do with a row, by the name of its shelf.</param>
    public static void Read(byte[] bytes, FaultList faults, params (string Name, Action<RowReader> Row)[] shelves)
    {
        if (FileTree.Read(bytes, faults) is not { } root)
        {
            if (!faults.Any)
            {
                faults.Add("", 1, 1, "an empty file", "JSON that starts with {");
            }
            return;
        }
        if (root is not FileObject file)
        {
            faults.Add("", root, FaultList.Show(root), $"an object in {{ }} with the list \"{shelves[0].Name}\"");
            return;
        }
        string[] known = ["format", "$schema", .. shelves.Select(shelf => shelf.Name)];
        foreach (var member in file.Fields)
        {
            var shelf = Array.Find(shelves, shelf => shelf.Name == member.Name);
            if (shelf.Row is not null)
            {
                Rows(member, shelf.Row, faults);
            }
            else if (member.Name == "format")
            {
                if (member.Value is not FileNumber { Text: "1" })
                {
                    faults.Add(
                        "format",
                        member.Value,
                        FaultList.Show(member.Value),
                        "1, the only version of this format so far"
                    );
                }
            }
            else if (member.Name != "$schema")
            {
                faults.Add(
                    member.Name.Length > 60 ? "" : member.Name,
                    member.Line,
                    member.Column,
                    $"the field {FaultList.Quote(member.Name)}",
                    "one of " + string.Join(", ", known),
                    NearestName.Of(member.Name, known)
                );
            }
        }
    }

    /// <summary>The key of a row, or null after noting a fault.</summary>
    /// <param name="row">The row.</param>
    /// <param name="given">Keys that earlier rows of this file have.</param>
    public static string? Key(RowReader row, HashSet<string> given)
    {
        if (row.Text("key", 60, needed: true) is not { } key)
        {
            return null;
        }
        // "none" and "usual" are what a rig file writes for no acid and for the published target.
        if (key is "none" or "usual" || key.AsSpan().ContainsAnyExcept(s_keyLetters))
        {
            row.FaultAt("key", "a key in lower case such as \"my-salt\": letters, digits, dashes, points and slashes");
            return null;
        }
        if (!given.Add(key))
        {
            row.FaultAt("key", "a key that no earlier row of this file has");
            return null;
        }
        return key;
    }

    /// <summary>Hands each row of a shelf over; notes what is no row.</summary>
    /// <param name="member">The shelf.</param>
    /// <param name="row">What to do with a row.</param>
    /// <param name="faults">Where faults go.</param>
    public static void Rows(FileField member, Action<RowReader> row, FaultList faults)
    {
        if (member.Value is not FileList list || list.Items.Count > MostRows)
        {
            faults.Add(
                member.Name,
                member.Value,
                FaultList.Show(member.Value),
                FormattableString.Invariant($"a list in [ ] of at most {MostRows} rows")
            );
            return;
        }
        for (var i = 0; i < list.Items.Count; i++)
        {
            var path = FormattableString.Invariant($"{member.Name}[{i}]");
            if (list.Items[i] is FileObject item)
            {
                row(new RowReader(item, path, faults));
            }
            else
            {
                faults.Add(path, list.Items[i], FaultList.Show(list.Items[i]), "a row with fields in { }");
            }
        }
    }
}
