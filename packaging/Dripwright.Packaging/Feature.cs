namespace Dripwright.Packaging;

/// <summary>Something that needs a native library, which not every platform has.</summary>
/// <param name="Name">As a grower would say it.</param>
/// <param name="Library">How the library's name begins, after "lib".</param>
/// <param name="Without">What the program does without it.</param>
internal sealed record Feature(string Name, string Library, string Without)
{
    private static readonly Feature[] s_all =
    [
        new(
            "printed parts",
            "ClearScriptV8",
            "Plans, sheets, lists and cuts are whole; STL and 3MF files of the printed parts cannot be made, and the program says so where you ask for them."
        ),
        new(
            "the proven cut plan",
            "google-ortools-native",
            "Cuts are planned by the simpler method, and the plan says that they are not proven."
        ),
        new("sheets as PDF", "SkiaSharp", "The build pack cannot be written."),
        new("the garden", "e_sqlite3", "The workbench opens only on a PostgreSQL server."),
    ];

    /// <summary>What a folder cannot do.</summary>
    public static IReadOnlyList<Feature> LackingIn(IReadOnlyList<NativeLibrary> natives) =>
        [.. s_all.Where(one => !natives.Any(file => one.IsIn(file.Name)))];

    private bool IsIn(string file) =>
        (file.StartsWith("lib", StringComparison.Ordinal) ? file[3..] : file).StartsWith(
            Library,
            StringComparison.Ordinal
        );
}
