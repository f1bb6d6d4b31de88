using System.Text;

namespace Dripwright.Workbench.Household;

/// <summary>Files that only the account under which the program runs can read.</summary>
/// <remarks>On Windows a file has the rights of its folder, which in a user's own folder are that user's alone.</remarks>
internal static class OwnFile
{
    /// <summary>Puts a text in the place of a file, whole or not at all.</summary>
    public static void Replace(string path, string text)
    {
        var draft = path + ".new";
        File.Delete(draft);
        using (var file = Open(draft, FileMode.CreateNew))
        {
            file.Write(Encoding.UTF8.GetBytes(text));
            file.Flush(flushToDisk: true);
        }

        File.Move(draft, path, overwrite: true);
    }

    /// <summary>Adds a text at the end of a file.</summary>
    public static void Append(string path, string text)
    {
        using var file = Open(path, FileMode.Append);
        file.Write(Encoding.UTF8.GetBytes(text));
    }

    public static FileStream Open(string path, FileMode mode, FileShare share = FileShare.Read)
    {
        var options = new FileStreamOptions
        {
            Mode = mode,
            Access = FileAccess.Write,
            Share = share,
        };
        if (!OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        }

        return new FileStream(path, options);
    }
}
