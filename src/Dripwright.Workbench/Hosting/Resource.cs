using System.Reflection;

namespace Dripwright.Workbench.Hosting;

/// <summary>Files built into this assembly.</summary>
internal static class Resource
{
    private static readonly Assembly s_here = typeof(Resource).Assembly;

    /// <summary>Names that begin so.</summary>
    public static IEnumerable<string> Names(string start) =>
        s_here.GetManifestResourceNames().Where(name => name.StartsWith(start, StringComparison.Ordinal)).Order();

    /// <summary>The text of a file; throws where it is not there.</summary>
    public static string Text(string name) => TryText(name) ?? throw new FileNotFoundException($"No resource {name}.");

    /// <summary>The text of a file; null where it is not there.</summary>
    public static string? TryText(string name)
    {
        using var stream = s_here.GetManifestResourceStream(name);
        if (stream is null)
        {
            return null;
        }

        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
