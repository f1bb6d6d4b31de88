using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using Dripwright.Tests.Package;

namespace Dripwright.Engine.Tests.Package;

public sealed partial class ReadMeTests
{
    [Fact]
    public void The_example_that_is_compiled_here_is_the_one_in_the_README()
    {
        var code = Block("csharp");
        var here = File.ReadAllText(Beside("ReadMeExample.cs"));
        foreach (var line in code.Split('\n').Where(line => line.Length > 0))
        {
            Assert.Contains(line, here, StringComparison.Ordinal);
        }

        var body = here[
            here.IndexOf("const string", StringComparison.Ordinal)..here.LastIndexOf(
                "    }\n}",
                StringComparison.Ordinal
            )
        ];
        Assert.Equal(Bare(code[code.IndexOf("const string", StringComparison.Ordinal)..]), Bare(body));
    }

    [Fact]
    public void The_example_of_the_README_runs_and_prints_what_the_README_says()
    {
        using var printed = new StringWriter(CultureInfo.InvariantCulture) { NewLine = "\n" };
        var before = CultureInfo.CurrentCulture;
        try
        {
            // The README's reader has a decimal point.
            CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
            ReadMeExample.Run(printed);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }

        Assert.Equal(Block("text"), printed.ToString());
    }

    private static string Block(string language)
    {
        var text = File.ReadAllText(Beside("../../../src/Dripwright.Engine/README.md"));
        return Regex
            .Match(text, $"```{language}\n(.*?)```", RegexOptions.Singleline, TimeSpan.FromSeconds(1))
            .Groups[1]
            .Value;
    }

    // The formatter breaks and indents lines of code in its own way; what they say is compared.
    private static string Bare(string code) => White().Replace(code, "");

    private static string Beside(string name, [CallerFilePath] string here = "") =>
        Path.Combine(Path.GetDirectoryName(here)!, name);

    [GeneratedRegex(@"\s+")]
    private static partial Regex White();
}
