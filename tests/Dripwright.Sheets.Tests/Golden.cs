using System.Runtime.CompilerServices;

namespace Dripwright.Sheets.Tests;

/// <summary>Compares text with a committed file beside the test.</summary>
internal static class Golden
{
    public static void Matches(string actual, string name, [CallerFilePath] string test = "")
    {
        var folder = Path.Combine(Path.GetDirectoryName(test)!, "Golden");
        var accepted = Path.Combine(folder, name);
        var received = Path.ChangeExtension(accepted, ".received" + Path.GetExtension(name));
        if (File.Exists(accepted) && string.Equals(File.ReadAllText(accepted), actual, StringComparison.Ordinal))
        {
            File.Delete(received);
            return;
        }

        Directory.CreateDirectory(folder);
        File.WriteAllText(received, actual);
        Assert.Fail($"{name} changed. Look at {received}; to accept it: mv {received} {accepted}");
    }
}
