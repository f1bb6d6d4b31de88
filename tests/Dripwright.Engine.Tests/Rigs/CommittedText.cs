namespace Dripwright.Engine.Tests.Rigs;

/// <summary>Files of the repository that are made by the program and must stay in step with it.</summary>
public static class CommittedText
{
    /// <summary>The repository's root.</summary>
    public static string Root
    {
        get
        {
            var folder = new DirectoryInfo(AppContext.BaseDirectory);
            while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Dripwright.slnx")))
            {
                folder = folder.Parent;
            }
            return folder?.FullName ?? throw new InvalidOperationException("The tests must run inside the repository.");
        }
    }

    /// <summary>Asserts that the file holds the text; else writes the new text beside it and says how to accept it.</summary>
    public static void Is(string path, string expected)
    {
        var file = Path.Combine(Root, path);
        var stands = File.Exists(file) ? File.ReadAllText(file) : "";
        if (stands == expected)
        {
            return;
        }
        var extension = Path.GetExtension(file);
        var received = Path.ChangeExtension(file, ".received" + extension);
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        File.WriteAllText(received, expected);
        Assert.Fail($"{path} is out of step with the program. To accept the new text: mv {received} {file}");
    }
}
